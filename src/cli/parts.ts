// What the command is put together from. main.ts hands in the real parts; a test may hand in others.
import type { Verdict } from '../check/finding.ts';
import type { Reading } from '../model/inputError.ts';
import type { Plan } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { WrittenPlan } from '../model/writtenPlan.ts';
import type { PlanningOptions } from '../planning.ts';

export type Parts = {
  readonly readScenario: (text: string, fileName?: string) => Reading<Scenario>;
  readonly readPlan: (text: string) => Reading<Plan>;
  readonly readWrittenPlan: (text: string, scenario: Scenario) => Reading<WrittenPlan>;
  readonly makePlan: (scenario: Scenario, options: PlanningOptions) => Promise<Plan>;
  /** Rounds of search when the person sets no limit. */
  readonly defaultEffort: number;
  readonly judge: (scenario: Scenario, plan: WrittenPlan) => Verdict;
  readonly drawPlan: (plan: Plan) => readonly string[];
};
