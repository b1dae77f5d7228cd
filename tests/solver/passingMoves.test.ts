// A slow change of state may pass through a stay while it lasts: no floor may count a change for every range left behind.
import { expect, it } from 'vitest';
import type { ShopProblem, ShopTask } from '../../src/solver/problem.ts';
import { EMPTY, mandatory, solved } from './shops.ts';

const HORIZON = 120;

/** Three stays in one chamber that starts at 240 and falls by at most 1.5 in a unit of time; a change costs 50. */
function fallingChamber(): ShopProblem {
  const ranges = [
    [235, 245],
    [200, 220],
    [170, 180],
  ] as const;
  const tasks: ShopTask[] = ranges.map(([low, high], i) => ({
    id: `stay ${i}`,
    minDuration: 10,
    maxDuration: 10,
    earliestStart: 0,
    latestEnd: HORIZON,
    demands: [],
    stay: { chambers: [0], low, high, room: 1, before: 0, after: 0 },
  }));
  const chamber = { id: 'chamber', room: 1, min: 100, max: 300, initial: 240, riseRate: 4, fallRate: 1.5, together: false };
  return {
    ...EMPTY,
    horizon: HORIZON,
    tasks,
    chambers: [chamber],
    units: tasks.map((_, i) => mandatory(`unit ${i}`, i)),
    prices: { makespan: 1, stateChange: 50, fromFirstMark: false },
  };
}

it('one move from the first range to the last, through the second, and no floor above it', async () => {
  // Falling all the while it stands below 220 ten after it left 235, below 180 forty after it left 240, and the last stay takes
  // ten: one change and some sixty units of time. Two changes alone cost 100.
  const { cost, bound } = await solved(fallingChamber(), 2000);
  expect(cost.changes).toBe(1);
  expect(cost.total).toBeLessThan(50 + 70);
  expect(bound.value).toBeLessThanOrEqual(cost.total);
  expect(bound.value).toBeGreaterThan(50);
});
