// The beam: schedules of a day with one pair of hands, built piece by piece of their work.
import { describe, expect, it } from 'vitest';
import { audit } from '../../../src/solver/audit.ts';
import { type Beam, beamOf } from '../../../src/solver/beam/beam.ts';
import { beamShopOf } from '../../../src/solver/beam/beamShop.ts';
import type { Layout } from '../../../src/solver/layout.ts';
import type { ShopTask } from '../../../src/solver/problem.ts';
import { randomOf } from '../../../src/solver/random.ts';
import { Search } from '../../../src/solver/search.ts';
import { shopOf } from '../../../src/solver/shop.ts';
import { EMPTY, jobShop, mandatory, permutations, solved, whole } from '../shops.ts';
import { handsDay, JOBS } from './handsDay.ts';

function schedulesOf(beam: Beam, mostSteps: number): Layout[] {
  const found: Layout[] = [];
  for (const layout of beam.schedules()) {
    if (layout !== null) found.push(layout);
    if (beam.steps >= mostSteps) break;
  }
  return found;
}

const endOf = (layout: Layout): number => layout.end.reduce((end, at) => Math.max(end, at), 0);

describe('beam', () => {
  const problem = handsDay(JOBS);
  const shop = shopOf(problem);

  it('finds whole schedules that break no rule, each ending sooner than the one before', () => {
    const found = schedulesOf(beamOf(shop, randomOf(1)) as Beam, 6000);
    expect(found.length).toBeGreaterThan(0);
    for (const layout of found) {
      const cost = new Search(shop, randomOf(1)).adopt(layout);
      audit(shop, layout, cost);
      expect(cost.missing).toBe(0);
    }
    const ends = found.map(endOf);
    expect(ends).toEqual([...new Set(ends)].sort((a, b) => b - a));
  });

  it('comes within three of a hundred of the best schedule of a small day', async () => {
    const best = await solved(problem, 4000);
    expect(best.stopped).toBe('proved');
    const found = schedulesOf(beamOf(shop, randomOf(2)) as Beam, 30_000).map(endOf);
    expect(Math.min(...found)).toBeGreaterThanOrEqual(best.cost.total);
    expect(Math.min(...found)).toBeLessThanOrEqual(1.03 * best.cost.total);
  });

  it('gives the same schedules for the same seed', () => {
    const [one, other] = [3, 3].map((seed) => schedulesOf(beamOf(shop, randomOf(seed)) as Beam, 3000));
    expect(one).toEqual(other);
  });

  it('leaves alone a day whose beginnings would need too much memory', () => {
    const many = Array.from({ length: 600 }, () => JOBS[0]);
    expect(beamShopOf(shopOf(handsDay(many)))).not.toBeNull();
    expect(beamOf(shopOf(handsDay(many)), randomOf(1))).toBeNull();
  });

  it('counts its steps even where none leads on', () => {
    const beam = beamOf(shop, randomOf(1)) as Beam;
    beam.limit = 0;
    expect(schedulesOf(beam, 50)).toEqual([]);
  });

  it('finds the longest-tail-first order of one machine with tails, as good as any order', () => {
    const jobs = [
      [4, 20],
      [7, 2],
      [3, 31],
      [6, 12],
      [5, 25],
    ] as const;
    const horizon = 100;
    const tail = { edge: 'end' as const, offset: 0 };
    const tasks = jobs.map(
      ([length], j): ShopTask => ({
        id: `job ${j}`,
        minDuration: length,
        maxDuration: length,
        earliestStart: 0,
        latestEnd: horizon,
        demands: [whole([0])],
      }),
    );
    const units = jobs.map(([, after], j) => ({ ...mandatory(`job ${j}`, j), ready: { task: j, ...tail, offset: after } }));
    const oneMachine = {
      ...EMPTY,
      horizon,
      tasks,
      units,
      pools: [{ id: 'machine', capacity: 1, open: [[0, horizon]] as const }],
    };
    const lengthOf = (order: readonly number[]): number => {
      let time = 0;
      return order.reduce((end, j) => {
        const [length, after] = jobs[j] as (typeof jobs)[number];
        time += length;
        return Math.max(end, time + after);
      }, 0);
    };
    const best = Math.min(...permutations(jobs.length).map(lengthOf));
    const machine = shopOf(oneMachine);
    const costs = schedulesOf(beamOf(machine, randomOf(1)) as Beam, 500).map(
      (layout) => new Search(machine, randomOf(1)).adopt(layout).total,
    );
    expect(Math.min(...costs)).toBe(best);
  });

  it('leaves alone what it cannot deal with: machines that share the work, stays that come and go together, fixed times, times beyond its own', () => {
    const twoMachines = jobShop([
      [
        [0, 3],
        [1, 4],
      ],
      [
        [1, 2],
        [0, 5],
      ],
    ]);
    const [chamber] = problem.chambers;
    const [first, ...rest] = problem.tasks;
    if (chamber === undefined || first === undefined) throw new Error('the day has an oven and work');
    const together = { ...problem, chambers: [{ ...chamber, together: true }] };
    const fixed = { ...problem, tasks: [{ ...first, earliestStart: 20, latestEnd: 20 + first.minDuration }, ...rest] };
    const endless = { ...problem, horizon: 1_000_000 };
    for (const other of [twoMachines, together, fixed, endless]) expect(beamOf(shopOf(other), randomOf(1))).toBeNull();
  });
});
