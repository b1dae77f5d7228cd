// Small neutral problems of the scheduling literature, and one way to solve them that always checks the schedule.
import { expect } from 'vitest';
import { checkSchedule } from '../../src/solver/checkSchedule.ts';
import type { Demand, Link, ShopProblem, ShopTask, Unit } from '../../src/solver/problem.ts';
import { type Solution, solve } from '../../src/solver/solve.ts';

export const whole = (pools: readonly number[], amount = 1): Demand => ({
  pools,
  amount,
  from: { edge: 'start', offset: 0 },
  until: { edge: 'end', offset: 0 },
  oncePerLoad: false,
});

export const EMPTY: ShopProblem = {
  horizon: 1,
  tasks: [],
  links: [],
  bursts: [],
  pools: [],
  chambers: [],
  units: [],
  families: [],
  firstMarks: [],
  prices: { makespan: 1, stateChange: 0, fromFirstMark: false },
};

export const mandatory = (id: string, task: number, family = -1): Unit => ({
  id,
  tasks: [task],
  parent: null,
  omissionPrice: Number.POSITIVE_INFINITY,
  ready: { task, edge: 'end', offset: 0 },
  family,
});

/** Jobs through machines in a stated order; `wait`: longest time between two operations of a job. */
export function jobShop(
  jobs: readonly (readonly (readonly [machine: number, duration: number])[])[],
  wait = Number.POSITIVE_INFINITY,
): ShopProblem {
  const machines = Math.max(...jobs.flat().map(([machine]) => machine)) + 1;
  const horizon = jobs.flat().reduce((sum, [, duration]) => sum + duration, 0);
  const tasks: ShopTask[] = [];
  const links: Link[] = [];
  const units: Unit[] = [];
  jobs.forEach((job, j) => {
    job.forEach(([machine, duration], o) => {
      const task = tasks.length;
      tasks.push({
        id: `${j}.${o}`,
        minDuration: duration,
        maxDuration: duration,
        earliestStart: 0,
        latestEnd: horizon,
        demands: [whole([machine])],
      });
      if (o > 0) links.push({ from: task - 1, fromEdge: 'end', to: task, toEdge: 'start', min: 0, max: wait });
    });
    units.push(mandatory(`job ${j}`, tasks.length - 1));
  });
  const pools = Array.from({ length: machines }, (_, m) => ({ id: `machine ${m}`, capacity: 1, open: [[0, horizon]] as const }));
  return { ...EMPTY, horizon, tasks, links, units, pools };
}

/** Solves with a number of rounds and no clock, and checks the schedule before handing it out. */
export async function solved(problem: ShopProblem, rounds: number, seed = 1): Promise<Solution> {
  const hooks = { now: () => 0, isCancelled: () => false, pause: () => Promise.resolve(), onProgress: () => {} };
  const solution = await solve(
    problem,
    seed,
    { rounds, untilMs: Number.POSITIVE_INFINITY, fillInUntilMs: Number.POSITIVE_INFINITY },
    hooks,
  );
  expect(checkSchedule(problem, solution.schedule)).toEqual([]);
  expect(solution.bound.value).toBeLessThanOrEqual(solution.cost.total + 1e-6);
  return solution;
}

/** Every order of the numbers 0 to count - 1. */
export function permutations(count: number): number[][] {
  if (count === 0) return [[]];
  return permutations(count - 1).flatMap((shorter) =>
    Array.from({ length: count }, (_, at) => [...shorter.slice(0, at), count - 1, ...shorter.slice(at)]),
  );
}

/** Makespan of a two-machine flow shop in a given order. */
export function flowShopMakespan(jobs: readonly (readonly [number, number])[], order: readonly number[]): number {
  let first = 0;
  let second = 0;
  for (const j of order) {
    const [a, b] = jobs[j] as readonly [number, number];
    first += a;
    second = Math.max(second, first) + b;
  }
  return second;
}
