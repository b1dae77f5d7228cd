// Improving by the learning solver where the clock breaks its steps off, and room made for what is left out.
import { describe, expect, it } from 'vitest';
import { scheduleOfLayout } from '../../src/solver/audit.ts';
import { checkSchedule } from '../../src/solver/checkSchedule.ts';
import { emptyLayout, type Layout } from '../../src/solver/layout.ts';
import { Improver } from '../../src/solver/learning/improver.ts';
import { Inserter } from '../../src/solver/learning/inserter.ts';
import { ShopModel } from '../../src/solver/learning/shopModel.ts';
import type { ShopProblem } from '../../src/solver/problem.ts';
import { randomOf } from '../../src/solver/random.ts';
import { Search } from '../../src/solver/search.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { EMPTY, jobShop, solved, whole } from './shops.ts';

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

describe('making room', () => {
  /** Tasks of one machine, each a unit that may be left out. */
  const onOneMachine = (lengths: readonly number[], horizon: number): ShopProblem => ({
    ...EMPTY,
    horizon,
    tasks: lengths.map((length, i) => ({
      id: `${i}`,
      minDuration: length,
      maxDuration: length,
      earliestStart: 0,
      latestEnd: horizon,
      demands: [whole([0])],
    })),
    pools: [{ id: 'machine', capacity: 1, open: [[0, horizon]] }],
    units: lengths.map((_, i) => ({
      id: `${i}`,
      tasks: [i],
      parent: null,
      omissionPrice: 100,
      ready: { task: i, edge: 'end', offset: 0 },
      family: -1,
    })),
  });

  const layoutAt = (problem: ShopProblem, starts: readonly number[]): Layout => {
    const layout = emptyLayout(shopOf(problem));
    starts.forEach((start, i) => {
      layout.start[i] = start;
      layout.end[i] = start < 0 ? -1 : start + (problem.tasks[i]?.minDuration ?? 0);
      layout.pool[i] = start < 0 ? -1 : 0;
    });
    return layout;
  };

  const inserted = (problem: ShopProblem, starts: readonly number[], tries: number) => {
    const shop = shopOf(problem);
    const inserter = new Inserter(shop, 1, randomOf(1));
    const layout = layoutAt(problem, starts);
    let found: Layout | null = null;
    for (let i = 0; i < tries && found === null && !inserter.isVain(layout); i++) found = inserter.insert(layout, () => true);
    return { found, isVain: inserter.isVain(layout), shop };
  };

  it('moves others aside for what then fits', () => {
    const problem = onOneMachine([4, 5], 9);
    const { found, shop } = inserted(problem, [3, -1], 50);
    expect(found?.start.every((at) => at >= 0)).toBe(true);
    expect(checkSchedule(problem, scheduleOfLayout(shop, found as Layout))).toEqual([]);
  });

  it('says when nothing fits beside the planned ones, and says it of those only', () => {
    const problem = onOneMachine([6, 6, 6], 10);
    const { found, isVain, shop } = inserted(problem, [2, -1, -1], 50);
    expect({ found, isVain }).toEqual({ found: null, isVain: true });
    const other = new Inserter(shop, 1, randomOf(1));
    expect(other.isVain(layoutAt(problem, [2, -1, -1]))).toBe(false);
  });

  it('says it whatever the times of the planned ones, and not of other units', () => {
    const problem = onOneMachine([6, 6, 2], 10);
    const inserter = new Inserter(shopOf(problem), 1, randomOf(1));
    const full = layoutAt(problem, [0, -1, 7]);
    for (let i = 0; i < 20; i++) inserter.insert(full, () => true);
    expect(inserter.isVain(full)).toBe(true);
    expect(inserter.isVain(layoutAt(problem, [2, -1, 0]))).toBe(true);
    expect(inserter.isVain(layoutAt(problem, [0, -1, -1]))).toBe(false);
    const roomy = layoutAt(problem, [0, -1, -1]);
    let found: Layout | null = null;
    for (let i = 0; i < 20 && found === null; i++) found = inserter.insert(roomy, () => true);
    expect(found?.start[2]).toBeGreaterThanOrEqual(0);
  });
});
