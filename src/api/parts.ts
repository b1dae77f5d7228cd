// What the service is put together from. `ovenward serve` hands in the real parts; a test may hand in others.
import type { Verdict } from '../check/finding.ts';
import type { Doing } from '../draw/doing.ts';
import type { Reading } from '../model/inputError.ts';
import type { Plan } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { WrittenPlan } from '../model/writtenPlan.ts';
import type { PlanningOptions } from '../planning.ts';

export type ApiParts = {
  readonly readScenario: (text: string, fileName?: string) => Reading<Scenario>;
  readonly readScenarioValue: (value: unknown) => Reading<Scenario>;
  readonly readWrittenPlan: (text: string, scenario: Scenario) => Reading<WrittenPlan>;
  readonly makePlan: (scenario: Scenario, options: PlanningOptions) => Promise<Plan>;
  readonly judge: (scenario: Scenario, plan: WrittenPlan) => Verdict;
  readonly drawPlan: (plan: Plan) => readonly string[];
  readonly whatToDo: (plan: Plan) => readonly Doing[];
  /** A clock in milliseconds. */
  readonly now: () => number;
  /** Lets other requests be answered between two rounds of search. */
  readonly pause: () => Promise<void>;
  /** Version of this program. */
  readonly version: string;
  /** Told of every fault of ours; the client learns only that there was one. */
  readonly report: (fault: unknown) => void;
};
