// A lane where a schedule of all units exists and costs more than leaving one out.
import { describe, expect, it } from 'vitest';
import { Lane } from '../../src/solver/lane.ts';
import type { ShopProblem } from '../../src/solver/problem.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { EMPTY, solved, whole } from './shops.ts';

/** Two tasks of five on one machine, both due after five; the second costs 15 late and 10 left out. */
const BETTER_LEFT_OUT: ShopProblem = {
  ...EMPTY,
  horizon: 10,
  tasks: [0, 1].map((i) => ({
    id: `${i}`,
    minDuration: 5,
    maxDuration: 5,
    earliestStart: 0,
    latestEnd: 10,
    demands: [whole([0])],
  })),
  pools: [{ id: 'machine', capacity: 1, open: [[0, 10]] }],
  units: [0, 1].map((i) => ({
    id: `${i}`,
    tasks: [i],
    parent: null,
    omissionPrice: 10,
    ready: { task: i, edge: 'end', offset: 0 },
    family: 0,
  })),
  families: [{ dues: [5, 5], latePrice: 3 }],
  prices: { makespan: 0, stateChange: 0, fromFirstMark: false },
};

describe('a lane that proves', () => {
  it('shows that no schedule of all units is as cheap as one that leaves some out', async () => {
    expect((await solved(BETTER_LEFT_OUT, 500)).cost).toMatchObject({ total: 10, omitted: 1 });
    const lane = new Lane(shopOf(BETTER_LEFT_OUT), 1, 'prove', true);
    const layout = {
      start: Int32Array.of(0, -1),
      end: Int32Array.of(5, -1),
      pool: Int32Array.of(0, -1),
      chamber: new Int32Array(0),
    };
    const news = { layout, total: 10, isComplete: false, floor: 0 };
    const stretch = { rounds: 500, untilMs: Number.POSITIVE_INFINITY, heat: 0.01, isScouted: false };
    expect(lane.run(news, stretch, () => 0)).toMatchObject({ floor: 10, total: 10, isComplete: false });
  });
});
