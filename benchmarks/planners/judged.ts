// The one door to the tables: a plan enters as figures the judge recounted, or the run ends.
import { judge } from '../../src/check/judge.ts';
import type { Plan } from '../../src/model/plan.ts';
import type { Scenario } from '../../src/model/scenario.ts';

/** What the tables know of a plan. */
export type Figures = {
  readonly cost: number;
  readonly lowerBound: number;
  readonly lateTrayMinutes: number;
  readonly leftOutTrays: number;
  readonly finishMinute: number;
};

/** Figures of a plan that keeps every rule; an error that names the breaches otherwise. */
export function judgedFigures(scenario: Scenario, plan: Plan, planner: string): Figures {
  const { breaches, figures } = judge(scenario, plan);
  if (breaches.length > 0) {
    const says = breaches.slice(0, 5).map((breach) => `  ${breach.rule}: ${breach.says}`);
    throw new Error(`${planner} on ${scenario.name}: ${breaches.length} breaches\n${says.join('\n')}`);
  }
  const { cost, lateTrayMinutes, leftOutTrays, finishMinute } = figures;
  return { cost, lowerBound: plan.score.lowerBound, lateTrayMinutes, leftOutTrays, finishMinute };
}
