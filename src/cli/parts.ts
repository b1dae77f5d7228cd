// What the command is put together from. main.ts hands in the real parts; a test may hand in others.
import type { Verdict } from '../check/finding.ts';
import type { Happened } from '../model/happened.ts';
import type { HowSure } from '../model/howSure.ts';
import type { InputError, Reading } from '../model/inputError.ts';
import type { Plan } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { WrittenPlan } from '../model/writtenPlan.ts';
import type { PlanningOptions } from '../planning.ts';
import type { HowSureOptions } from '../questions/howSure/howSure.ts';
import type { replan } from '../questions/replan.ts';

/** At once, or when what does it has been loaded. */
export type Later<T> = T | Promise<T>;

export type Parts = {
  readonly readScenario: (text: string, fileName?: string) => Reading<Scenario>;
  readonly readPlan: (text: string) => Later<Reading<Plan>>;
  readonly readWrittenPlan: (text: string, scenario: Scenario) => Later<Reading<WrittenPlan>>;
  readonly readHappened: (text: string, scenario: Scenario, plan: Plan, now: number) => Later<Reading<Happened>>;
  /** Errors of what has happened, with their lines in its text. */
  readonly placedInHappened: (text: string, errors: readonly InputError[]) => Later<readonly InputError[]>;
  readonly replan: typeof replan;
  readonly makePlan: (scenario: Scenario, options: PlanningOptions) => Promise<Plan>;
  /** Rounds of search when the person sets no limit. */
  readonly defaultEffort: number;
  readonly judge: (scenario: Scenario, plan: WrittenPlan) => Verdict;
  readonly drawPlan: (plan: Plan) => Later<readonly string[]>;
  readonly howSure: (scenario: Scenario, plan: Plan, options: HowSureOptions) => Promise<HowSure>;
  readonly carefulScenario: (scenario: Scenario) => Scenario;
};
