// A chamber that begins below its limits and is kept full for a while in whatever state: that asks for no state, and proves nothing left out.
import { expect, it } from 'vitest';
import { ShopModel } from '../../src/solver/learning/shopModel.ts';
import type { ShopProblem, ShopTask } from '../../src/solver/problem.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { EMPTY, mandatory, solved } from './shops.ts';

const HORIZON = 200;

/** A chamber at 60, of at least 100, closed for the first 20; a stay at 200 to 220 for 10 comes later. It rises by 4 in a unit of time. */
function coldChamber(): ShopProblem {
  const closed: ShopTask = {
    id: 'closed',
    minDuration: 20,
    maxDuration: 20,
    earliestStart: 0,
    latestStart: 0,
    latestEnd: 20,
    demands: [],
    stay: { chambers: [0], low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY, room: 1, before: 0, after: 0 },
  };
  const stay: ShopTask = {
    id: 'stay',
    minDuration: 10,
    maxDuration: 10,
    earliestStart: 0,
    latestEnd: HORIZON,
    demands: [],
    stay: { chambers: [0], low: 200, high: 220, room: 1, before: 0, after: 0 },
  };
  const chamber = { id: 'chamber', room: 1, min: 100, max: 300, initial: 60, riseRate: 4, fallRate: 1.5, together: false };
  return {
    ...EMPTY,
    horizon: HORIZON,
    tasks: [closed, stay],
    chambers: [chamber],
    units: [{ ...mandatory('unit', 1), omissionPrice: 5000 }],
    prices: { makespan: 1, stateChange: 0, fromFirstMark: false },
  };
}

it('the stay comes as soon as the state is there, and no floor is above it', async () => {
  // 140 to rise at 4 in a unit of time takes 35, closed or not; the stay takes ten.
  const { cost, bound } = await solved(coldChamber(), 2000);
  expect(cost.omitted).toBe(0);
  expect(cost.total).toBe(45);
  expect(bound.value).toBe(45);
});

it('the learning model has a schedule of it', () => {
  const model = new ShopModel(shopOf(coldChamber()), 1, () => true, true);
  expect(model.isPossible).toBe(true);
  expect(model.engine.search([], 1000, () => true)).toBe('solution');
});
