// One thread or two: where rounds are counted the plan is the same to the last byte.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Plan } from '../../src/model/plan.ts';
import { anyScenario } from './anyScenario.ts';
import { planned } from './planned.ts';

/** The plan without what depends on the clock. */
const timeless = (plan: Plan): string => JSON.stringify({ ...plan, solver: { ...plan.solver, seconds: 0 } });

it('same seed and effort, same bytes on one and on two workers', async () => {
  let searched = 0;
  await fc.assert(
    fc.asyncProperty(anyScenario, fc.integer({ min: 1, max: 1000 }), async (scenario, seed) => {
      const alone = await planned(scenario, 700, seed, { workers: 1 });
      if (alone.solver.effort > 350) searched++;
      expect(timeless(await planned(scenario, 700, seed, { workers: 2 }))).toBe(timeless(alone));
    }),
    { numRuns: 15, seed: 20 },
  );
  expect(searched).toBeGreaterThan(5);
}, 240_000);
