// On tiny problems nothing is left to chance: what the solver finds and what it proves is held against every schedule there is.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkSchedule } from '../../src/solver/checkSchedule.ts';
import type { ShopProblem } from '../../src/solver/problem.ts';
import { solve } from '../../src/solver/solve.ts';
import { anyProblem, leastPrice } from './tinyProblems.ts';

const hooks = { now: () => 0, isCancelled: () => false, pause: () => Promise.resolve(), onProgress: () => {} };
const limits = { untilMs: Number.POSITIVE_INFINITY, fillInUntilMs: Number.POSITIVE_INFINITY };

/** Rounds in which every problem is searched through; of one whose units may be left out more. */
const ROUNDS = 400;
const OPEN_ROUNDS = 2000;

/** What the solver finds and proves; 'none' where it refuses the problem or leaves a task without a place. */
async function solvedOrNone(problem: ShopProblem): Promise<{ price: number; floor: number; isProved: boolean } | 'none'> {
  try {
    const isOpen = problem.units.some(({ omissionPrice }) => Number.isFinite(omissionPrice));
    const rounds = isOpen ? OPEN_ROUNDS : ROUNDS;
    const { schedule, cost, bound, stopped } = await solve(problem, 1, { ...limits, rounds }, hooks);
    if (cost.missing > 0) return 'none';
    expect(checkSchedule(problem, schedule)).toEqual([]);
    return { price: cost.total, floor: bound.value, isProved: stopped === 'proved' };
  } catch (error) {
    if (error instanceof RangeError) return 'none';
    throw error;
  }
}

/** Holds what was found and proved against the least price; says what came out. */
async function outcomeOf(problem: ShopProblem): Promise<'none' | 'proved' | 'found'> {
  const least = leastPrice(problem);
  const found = await solvedOrNone(problem);
  if (least === null) {
    expect(found).toBe('none');
    return 'none';
  }
  if (found === 'none') throw new Error('no schedule was found, and there is one');
  expect(found.floor).toBeLessThanOrEqual(least + 1e-6);
  expect(found.price).toBeCloseTo(least, 6);
  return found.isProved ? 'proved' : 'found';
}

describe('tiny problems', () => {
  for (const [name, hasStays] of [
    ['pools, lags, windows, what may be omitted, due times', false],
    ['the same and chambers', true],
  ] as const) {
    it(name, { timeout: 120_000 }, async () => {
      const ends: string[] = [];
      await fc.assert(
        fc.asyncProperty(anyProblem(hasStays), async (problem) => {
          ends.push(await outcomeOf(problem));
        }),
        { numRuns: 400 },
      );
      expect(ends.filter((end) => end === 'none').length).toBeLessThan(300);
      expect(ends.filter((end) => end === 'proved').length).toBeGreaterThan(50);
    });
  }
});
