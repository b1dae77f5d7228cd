// One oven, one family of jobs that take equally long and go in and come out together: full batches first.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ShopProblem } from '../../src/solver/problem.ts';
import { EMPTY, mandatory, permutations, solved } from './shops.ts';

type Oven = { readonly room: number; readonly duration: number };

/** Every way to cut a number of jobs, in order, into batches of at most `room`. */
function batchSizes(count: number, room: number): number[][] {
  if (count === 0) return [[]];
  return Array.from({ length: Math.min(count, room) }, (_, i) => i + 1).flatMap((first) =>
    batchSizes(count - first, room).map((rest) => [first, ...rest]),
  );
}

/** When each job of an order ends, batch by batch without a break. */
function endsOf(sizes: readonly number[], duration: number): number[] {
  return sizes.flatMap((size, b) => Array.from({ length: size }, () => (b + 1) * duration));
}

function fullFirst(count: number, room: number): number[] {
  return Array.from({ length: Math.ceil(count / room) }, (_, b) => Math.min(room, count - b * room));
}

/** Each job a family of its own, so that a due date is a job's. */
function ovenProblem({ room, duration }: Oven, dues: readonly number[], makespan: number): ShopProblem {
  const horizon = dues.length * duration;
  return {
    ...EMPTY,
    horizon,
    tasks: dues.map((_, j) => ({
      id: `${j}`,
      minDuration: duration,
      maxDuration: duration,
      earliestStart: 0,
      latestEnd: horizon,
      demands: [],
      stay: { chambers: [0], low: 200, high: 210, room: 1, before: 0, after: 0 },
    })),
    chambers: [{ id: 'oven', room, min: 0, max: 300, initial: 205, riseRate: 5, fallRate: 5, together: true }],
    units: dues.map((_, j) => mandatory(`${j}`, j, j)),
    families: dues.map((due) => ({ dues: [due], latePrice: 1 })),
    prices: { makespan, stateChange: 0, fromFirstMark: false },
  };
}

const someOven = fc.record({ room: fc.integer({ min: 2, max: 4 }), duration: fc.integer({ min: 1, max: 9 }) });

describe('full batches first (R. Uzsoy 1995, International Journal of Production Research 33, for each family)', () => {
  it('no cut into batches has a smaller sum of ends, nor fewer batches, and the solver finds both', {
    timeout: 60_000,
  }, async () => {
    await fc.assert(
      fc.asyncProperty(someOven, fc.integer({ min: 2, max: 9 }), async (oven, count) => {
        const sum = (sizes: readonly number[]): number => endsOf(sizes, oven.duration).reduce((a, b) => a + b, 0);
        const cuts = batchSizes(count, oven.room);
        const full = fullFirst(count, oven.room);
        const least = Math.min(...cuts.map(sum));
        expect(sum(full)).toBe(least);
        expect(full.length).toBe(Math.min(...cuts.map((sizes) => sizes.length)));
        const dueAtOnce = Array.from({ length: count }, () => 0);
        expect((await solved(ovenProblem(oven, dueAtOnce, 0), 1000)).cost.lateness).toBe(least);
        const noDues = Array.from({ length: count }, () => count * oven.duration);
        expect((await solved(ovenProblem(oven, noDues, 1), 1000)).cost.makespan).toBe(full.length * oven.duration);
      }),
      { numRuns: 30, seed: 1995 },
    );
  });

  it('with due dates: full batches by due date are the least late, and the solver meets dues with that slack and not with less', {
    timeout: 60_000,
  }, async () => {
    await fc.assert(
      fc.asyncProperty(
        someOven,
        fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 2, maxLength: 6 }),
        async (oven, dues) => {
          const lateness = (order: readonly number[], sizes: readonly number[]): number => {
            const ends = endsOf(sizes, oven.duration);
            return Math.max(...order.map((j, k) => (ends[k] as number) - (dues[j] as number)));
          };
          const cuts = batchSizes(dues.length, oven.room);
          const least = Math.min(...permutations(dues.length).flatMap((order) => cuts.map((sizes) => lateness(order, sizes))));
          const byDue = dues.map((_, j) => j).sort((a, b) => (dues[a] as number) - (dues[b] as number));
          expect(lateness(byDue, fullFirst(dues.length, oven.room))).toBe(least);
          const withSlack = (slack: number) => dues.map((due) => due + slack);
          expect((await solved(ovenProblem(oven, withSlack(least), 0), 1000)).cost.lateness).toBe(0);
          expect((await solved(ovenProblem(oven, withSlack(least - 1), 0), 200)).cost.lateness).toBeGreaterThan(0);
        },
      ),
      { numRuns: 30, seed: 1995 },
    );
  });
});
