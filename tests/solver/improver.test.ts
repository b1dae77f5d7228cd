// Improving by the learning solver where the clock breaks its steps off.
import { describe, expect, it } from 'vitest';
import { scheduleOfLayout } from '../../src/solver/audit.ts';
import { checkSchedule } from '../../src/solver/checkSchedule.ts';
import { Improver } from '../../src/solver/learning/improver.ts';
import { ShopModel } from '../../src/solver/learning/shopModel.ts';
import type { ShopProblem } from '../../src/solver/problem.ts';
import { randomOf } from '../../src/solver/random.ts';
import { Search } from '../../src/solver/search.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { jobShop, solved } from './shops.ts';

/** Ten jobs of four operations whose machines and lengths follow from their numbers. */
const TEN_JOBS = jobShop(
  Array.from({ length: 10 }, (_, j) =>
    [0, 1, 2, 3].map((o) => [(o * (1 + 2 * (j % 2)) + j) % 4, 1 + ((j * 7 + o * 5) % 9)] as const),
  ),
);

describe('the improver, broken off by the clock', () => {
  /** Improves for so many steps at most, each stopped when it has asked the clock so often. */
  const improved = (problem: ShopProblem, asks: number, steps: number): { total: number; isDone: boolean } => {
    const shop = shopOf(problem);
    const search = new Search(shop, randomOf(3));
    for (const _ of search.construct());
    const start = { layout: search.bestLayout(), total: search.bestCost.total, isComplete: true };
    const improver = new Improver(new ShopModel(shop, 1, () => true, false, true), randomOf(5), start, 0);
    for (let i = 0; i < steps && !improver.isDone; i++) {
      let left = asks;
      improver.improve(() => left-- > 0);
    }
    expect(checkSchedule(problem, scheduleOfLayout(shop, improver.layout))).toEqual([]);
    return { total: improver.total, isDone: improver.isDone };
  };

  it('goes on where it was and comes to the same proof', async () => {
    const best = (await solved(TEN_JOBS, 4000)).cost.total;
    const unbroken = improved(TEN_JOBS, Number.POSITIVE_INFINITY, 5000);
    const broken = improved(TEN_JOBS, 1, 50_000);
    expect(unbroken).toMatchObject({ total: best, isDone: true });
    expect(broken).toMatchObject({ total: best, isDone: true });
  });
});

it('it says of every step whether the schedule got cheaper by it', () => {
  const shop = shopOf(TEN_JOBS);
  let steps = 0;
  for (let seed = 1; seed <= 15; seed++) {
    const search = new Search(shop, randomOf(seed));
    for (const _ of search.construct());
    const start = { layout: search.bestLayout(), total: search.bestCost.total, isComplete: true };
    const improver = new Improver(new ShopModel(shop, 1, () => true, false, true), randomOf(seed), start, 0);
    for (let i = 0; i < 60 && !improver.isDone; i++) {
      const before = improver.total;
      expect(improver.improve(() => true)).toBe(improver.total < before);
      steps++;
    }
  }
  expect(steps).toBeGreaterThan(150);
});
