// Two machines without waiting: patched subtours, every order tried and the solver agree.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gilmoreGomoryOrder, noWaitMakespan } from './gilmoreGomory.ts';
import { jobShop, permutations, solved } from './shops.ts';

const jobsUpTo = (most: number) =>
  fc.array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 20 })), { minLength: 2, maxLength: most });

const bestOf = (jobs: readonly (readonly [number, number])[]): number =>
  Math.min(...permutations(jobs.length).map((order) => noWaitMakespan(jobs, order)));

describe('Gilmore and Gomory 1964 (Operations Research 12): two machines without waiting, least makespan', () => {
  it('the patched order is as short as the best of every order', () => {
    fc.assert(
      fc.property(jobsUpTo(7), (jobs) => {
        const order = gilmoreGomoryOrder(jobs);
        expect([...order].sort((a, b) => a - b)).toEqual(jobs.map((_, j) => j));
        expect(noWaitMakespan(jobs, order)).toBe(bestOf(jobs));
      }),
      { numRuns: 200, seed: 1964 },
    );
  });

  it('and the solver finds it', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(jobsUpTo(6), async (jobs) => {
        const machines = jobs.map(([a, b]) => [[0, a] as const, [1, b] as const]);
        expect((await solved(jobShop(machines, 0), 4000)).cost.makespan).toBe(noWaitMakespan(jobs, gilmoreGomoryOrder(jobs)));
      }),
      { numRuns: 30, seed: 1964 },
    );
  });
});
