// The one way the tests plan: no clock, so many rounds, and the judge asked once more whatever planning says of itself.
import { expect } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import type { Plan } from '../../src/model/plan.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import { makePlan, type PlanningOptions } from '../../src/planning.ts';

export async function planned(
  scenario: Scenario,
  effort: number,
  seed = 1,
  more: Pick<PlanningOptions, 'startFrom' | 'workers' | 'isAudited'> = {},
): Promise<Plan> {
  const plan = await makePlan(scenario, { effort, seed, now: () => 0, version: 'test', ...more });
  const { breaches, figures } = judge(scenario, plan);
  expect(breaches).toEqual([]);
  expect(plan.score.cost).toBeCloseTo(figures.cost, 6);
  expect(plan.score.lowerBound).toBeLessThanOrEqual(plan.score.cost + 1e-6);
  return plan;
}
