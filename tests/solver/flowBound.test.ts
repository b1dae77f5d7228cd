// Floors under the makespan from work that passes one resource after another, against sums done by hand beside each.
import { describe, expect, it } from 'vitest';
import { argue, withPacking } from '../../src/solver/bounds/bestBound.ts';
import { Paths } from '../../src/solver/bounds/headsAndTails.ts';
import { MostJobs } from '../../src/solver/bounds/mostJobs.ts';
import type { Link, ShopProblem, ShopTask } from '../../src/solver/problem.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { EMPTY, mandatory, solved, whole } from './shops.ts';

type Step = { readonly minutes: number; readonly pools: readonly number[] };

const HORIZON = 300;

/** The same steps for every job, each at most `wait` after the one before; a step takes one of each of its pools. */
function line(jobs: number, steps: readonly Step[], capacities: readonly number[], wait: readonly number[]): ShopProblem {
  const tasks: ShopTask[] = [];
  const links: Link[] = [];
  const units = Array.from({ length: jobs }, (_, j) => {
    const own = steps.map(({ minutes, pools }, s) => {
      const task = tasks.length;
      const demands = pools.map((pool) => whole([pool]));
      tasks.push({ id: `${j}.${s}`, minDuration: minutes, maxDuration: minutes, earliestStart: 0, latestEnd: HORIZON, demands });
      if (s > 0) links.push({ from: task - 1, fromEdge: 'end', to: task, toEdge: 'start', min: 0, max: wait[s - 1] ?? HORIZON });
      return task;
    });
    return { ...mandatory(`job ${j}`, own.at(-1) as number), tasks: own };
  });
  const pools = capacities.map((capacity, p) => ({ id: `pool ${p}`, capacity, open: [[0, HORIZON]] as const }));
  return { ...EMPTY, horizon: HORIZON, tasks, links, units, pools };
}

function boundOf(problem: ShopProblem): ReturnType<typeof withPacking> {
  const shop = shopOf(problem);
  return withPacking(problem, argue(shop, new Paths(shop, problem)), 0);
}

describe('work that passes one resource after another', () => {
  it('counts what can have come in by each minute', async () => {
    // One minute each at a gate, ten on two places, six jobs: 60 minutes of work, one place busy from minute 1 and both from 2.
    const problem = line(
      6,
      [
        { minutes: 1, pools: [0] },
        { minutes: 10, pools: [1] },
      ],
      [1, 2],
      [],
    );
    expect(boundOf(problem)).toMatchObject({ value: 32, argument: { kind: 'flow' } });
    expect((await solved(problem, 200)).cost.total).toBe(32);
  });

  it('counts whole jobs on each place', () => {
    // Twenty minutes each on three places, then ten on two. By minute 40 only three of six jobs can have left the first places
    // before it, and so 30 of the 60 minutes on the second can be done by then: 40 + 30 / 2. Counting the three places as one
    // three times as fast would give less.
    const problem = line(
      6,
      [
        { minutes: 20, pools: [0] },
        { minutes: 10, pools: [1] },
      ],
      [3, 2],
      [0],
    );
    expect(boundOf(problem)).toMatchObject({ value: 55, argument: { kind: 'flow', at: { ids: [1] }, through: { ids: [0] } } });
  });

  it('counts what one pair of hands can do in the last minutes beside the oven', async () => {
    // Hands shape for 5, load for 1 and unload for 1 minute; 20 minutes on two places between. In the last 41 minutes two whole
    // bakes fit and two more end: at most 2 * (5 + 1 + 1) + 2 * 1 = 16 of the 28 minutes of hands, and 12 + 41 = 53.
    const steps = [
      { minutes: 5, pools: [0] },
      { minutes: 1, pools: [0] },
      { minutes: 20, pools: [1] },
      { minutes: 1, pools: [0] },
    ];
    const problem = line(4, steps, [1, 2], [HORIZON, 0, 0]);
    expect(boundOf(problem)).toMatchObject({ value: 53, argument: { kind: 'flow', at: { ids: [0] }, to: { ids: [1] } } });
    expect((await solved(problem, 400)).cost.total).toBeGreaterThanOrEqual(53);
  });
});

describe('jobs in a given time', () => {
  it('counts by Moore’s rule and by places', () => {
    const most = (
      jobs: readonly (readonly [work: number, due: number])[],
      lengths: readonly number[],
      places: number,
      span: number,
    ) => {
      const counter = new MostJobs(jobs.length);
      for (const [work, due] of jobs) counter.add(work, due);
      for (const length of lengths) counter.addLength(length);
      return counter.most(places, span);
    };
    const unknown = [0, 0, 0];
    expect(
      most(
        [
          [4, 4],
          [3, 6],
          [5, 9],
        ],
        unknown,
        1,
        9,
      ),
    ).toBe(2);
    const four = [
      [10, 99],
      [10, 99],
      [10, 99],
      [10, 99],
    ] as const;
    const ten = [10, 10, 10, 10];
    expect(most(four, ten, 2, 19)).toBe(2);
    expect(most(four, ten, 2, 20)).toBe(4);
    expect(most(four.slice(1), ten.slice(1), 2, 20)).toBe(3);
    expect(most(four, [2, 9, 9, 9], 1, 9)).toBe(2);
  });
});
