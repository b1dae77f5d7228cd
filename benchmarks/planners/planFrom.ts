// A schedule of another planner read back as a plan of ours, by the program's own read-back.
import { type PlanOrigin, planOf } from '../../src/compile/planOf.ts';
import type { Compiled } from '../../src/compile/shopProblem.ts';
import type { Plan } from '../../src/model/plan.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import type { Schedule } from '../../src/solver/problem.ts';
import { priceOf } from './price.ts';

export type Outcome = {
  readonly schedule: Schedule;
  /** The floor the planner proved; 0: none. */
  readonly lowerBound: number;
  /** What the planner says the schedule costs at most; null: it does not say. */
  readonly cost: number | null;
  readonly stopped: Plan['stopped'];
};

/** The plan of a schedule. Throws when the schedule costs more than its planner says. */
export function planFrom(scenario: Scenario, compiled: Compiled, outcome: Outcome, origin: PlanOrigin): Plan {
  const { schedule, lowerBound, stopped } = outcome;
  const cost = priceOf(compiled.problem, schedule);
  if (outcome.cost !== null && cost.total > outcome.cost + 1e-6)
    throw new Error(`${scenario.name}: the planner says ${outcome.cost}, its schedule costs ${cost.total}`);
  const solution = {
    schedule,
    cost,
    changes: cost.changes,
    bound: { value: lowerBound, argument: { kind: 'none' as const } },
    stopped,
    rounds: 0,
    packing: { packing: null, because: 'no-chambers' as const },
    isStartWhole: true,
    records: [],
  };
  return planOf(scenario, compiled, solution, origin, () => false);
}
