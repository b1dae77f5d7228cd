// Optima that textbooks prove, found by the neutral solver and, where small, by trying every order.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EMPTY, flowShopMakespan, jobShop, mandatory, permutations, solved, whole } from './shops.ts';

/** Johnson's rule: jobs quicker on the first machine by rising first time, then the rest by falling second time. */
function johnsonOrder(jobs: readonly (readonly [number, number])[]): number[] {
  const all = jobs.map((job, j) => ({ j, a: job[0], b: job[1] }));
  const early = all.filter(({ a, b }) => a < b).sort((x, y) => x.a - y.a);
  const late = all.filter(({ a, b }) => a >= b).sort((x, y) => y.b - x.b);
  return [...early, ...late].map(({ j }) => j);
}

// The search is a heuristic: these are fixed samples, so that a pass is a fact and not a matter of luck.
describe("Johnson's rule (S. M. Johnson 1954, Naval Research Logistics Quarterly 1): two machines, least makespan", () => {
  const jobs = fc.array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 20 })), {
    minLength: 2,
    maxLength: 6,
  });

  it('agrees with every order tried, and the solver finds it', async () => {
    await fc.assert(
      fc.asyncProperty(jobs, async (times) => {
        const best = Math.min(...permutations(times.length).map((order) => flowShopMakespan(times, order)));
        expect(flowShopMakespan(times, johnsonOrder(times))).toBe(best);
        const problem = jobShop(
          times.map(
            ([a, b]) =>
              [
                [0, a],
                [1, b],
              ] as const,
          ),
        );
        expect((await solved(problem, 4000)).cost.makespan).toBe(best);
      }),
      { numRuns: 40, seed: 1954 },
    );
  });
});

describe("Jackson's earliest due date rule (J. R. Jackson 1955): one machine, least greatest lateness", () => {
  const jobs = fc.array(fc.record({ duration: fc.integer({ min: 1, max: 12 }), due: fc.integer({ min: 1, max: 50 }) }), {
    minLength: 2,
    maxLength: 6,
  });
  const greatestLateness = (list: readonly { duration: number; due: number }[], order: readonly number[]): number => {
    let end = 0;
    return Math.max(
      ...order.map((j) => {
        const job = list[j] as { duration: number; due: number };
        end += job.duration;
        return end - job.due;
      }),
    );
  };

  it('no order is less late than by due date, and the solver meets due dates with that slack and not with less', async () => {
    await fc.assert(
      fc.asyncProperty(jobs, async (list) => {
        const byDue = list.map((_, j) => j).sort((a, b) => (list[a]?.due as number) - (list[b]?.due as number));
        const least = Math.min(...permutations(list.length).map((order) => greatestLateness(list, order)));
        expect(greatestLateness(list, byDue)).toBe(least);
        const horizon = list.reduce((sum, job) => sum + job.duration, 0);
        const withSlack = (slack: number) => ({
          ...EMPTY,
          horizon,
          pools: [{ id: 'machine', capacity: 1, open: [[0, horizon]] as const }],
          tasks: list.map((job, j) => ({
            id: `${j}`,
            minDuration: job.duration,
            maxDuration: job.duration,
            earliestStart: 0,
            latestEnd: horizon,
            demands: [whole([0])],
          })),
          units: list.map((_, j) => mandatory(`${j}`, j, j)),
          families: list.map((job) => ({ dues: [job.due + slack], latePrice: 1 })),
          prices: { makespan: 0, stateChange: 0, fromFirstMark: false },
        });
        expect((await solved(withSlack(least), 4000)).cost.lateness).toBe(0);
        expect((await solved(withSlack(least - 1), 300)).cost.lateness).toBeGreaterThan(0);
      }),
      { numRuns: 40, seed: 1955 },
    );
  });
});

describe('four jobs without waiting through three places', () => {
  // Constructed. The second place is busy 60 + 45 + 30 + 40 = 175, begins at 10 at the earliest and is followed by 15 at
  // the least: no order takes less than 200. Without waiting no job overtakes, so 24 orders are all.
  const JOBS = [
    [10, 60, 25],
    [15, 45, 20],
    [10, 30, 35],
    [20, 40, 15],
  ] as const;

  function noWaitMakespan(order: readonly number[]): number {
    const free = [0, 0, 0];
    let end = 0;
    for (const j of order) {
      const job = JOBS[j] as readonly [number, number, number];
      const offsets = [0, job[0], job[0] + job[1]];
      const start = Math.max(...free.map((at, stage) => at - (offsets[stage] as number)));
      offsets.forEach((offset, stage) => {
        free[stage] = start + offset + (job[stage] as number);
      });
      end = start + job[0] + job[1] + job[2];
    }
    return end;
  }

  it('best 200, worst 230 over all orders; the solver finds and proves 200', async () => {
    const all = permutations(4).map(noWaitMakespan);
    expect(Math.min(...all)).toBe(200);
    expect(Math.max(...all)).toBe(230);
    const solution = await solved(
      jobShop(
        JOBS.map((job) => job.map((duration, stage) => [stage, duration] as const)),
        0,
      ),
      500,
    );
    expect(solution.cost.makespan).toBe(200);
    expect(solution.stopped).toBe('proved');
  });
});
