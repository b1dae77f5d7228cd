// The number of late jobs: a job that may be left out, at a price of 1, and that must end by its due date when it is not.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ShopProblem } from '../../src/solver/problem.ts';
import { EMPTY, permutations, solved, whole } from './shops.ts';

type Job = { readonly duration: number; readonly due: number };

const lateIn = (jobs: readonly Job[], order: readonly number[]): number => {
  let end = 0;
  return order.filter((j) => {
    const { duration, due } = jobs[j] as Job;
    end += duration;
    return end > due;
  }).length;
};

/** By rising due date; whenever one would be late, the longest so far goes to the end of the day. */
function mooreLateJobs(jobs: readonly Job[]): number {
  const kept: number[] = [];
  let end = 0;
  let late = 0;
  for (const { duration, due } of [...jobs].sort((a, b) => a.due - b.due)) {
    kept.push(duration);
    end += duration;
    if (end <= due) continue;
    const longest = Math.max(...kept);
    kept.splice(kept.indexOf(longest), 1);
    end -= longest;
    late++;
  }
  return late;
}

/** Late jobs are the ones left out: they follow, in any order, when all others are done. */
function lateJobsProblem(jobs: readonly Job[]): ShopProblem {
  const horizon = Math.max(...jobs.map(({ due, duration }) => Math.max(due, duration)));
  return {
    ...EMPTY,
    horizon,
    pools: [{ id: 'machine', capacity: 1, open: [[0, horizon]] }],
    tasks: jobs.map(({ duration, due }, j) => ({
      id: `${j}`,
      minDuration: duration,
      maxDuration: duration,
      earliestStart: 0,
      latestEnd: due,
      demands: [whole([0])],
    })),
    units: jobs.map((_, j) => ({
      id: `${j}`,
      tasks: [j],
      parent: null,
      omissionPrice: 1,
      ready: { task: j, edge: 'end', offset: 0 },
      family: -1,
    })),
    prices: { makespan: 0, stateChange: 0, fromFirstMark: false },
  };
}

const jobsUpTo = (most: number) =>
  fc.array(fc.record({ duration: fc.integer({ min: 1, max: 12 }), due: fc.integer({ min: 1, max: 40 }) }), {
    minLength: 2,
    maxLength: most,
  });

describe("Moore's rule (J. M. Moore 1968, Management Science 15, in Hodgson's form): one machine, fewest late jobs", () => {
  it('no order has fewer late jobs', () => {
    fc.assert(
      fc.property(jobsUpTo(7), (jobs) => {
        expect(mooreLateJobs(jobs)).toBe(Math.min(...permutations(jobs.length).map((order) => lateIn(jobs, order))));
      }),
      { numRuns: 100, seed: 1968 },
    );
  });

  it('and the solver leaves out as many', { timeout: 60_000 }, async () => {
    let left = 0;
    await fc.assert(
      fc.asyncProperty(jobsUpTo(9), async (jobs) => {
        const { cost } = await solved(lateJobsProblem(jobs), 2000);
        expect(cost.omitted).toBe(mooreLateJobs(jobs));
        left += cost.omitted;
      }),
      { numRuns: 40, seed: 1968 },
    );
    expect(left).toBeGreaterThan(40);
  });
});
