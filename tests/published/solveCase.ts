// Solves a published case, with so much effort or so many seconds, and lets nothing pass that the slow check, the recount from
// the published data and the solver's own figures do not agree on.
import { checkSchedule } from '../../src/solver/checkSchedule.ts';
import { MISSING_PRICE } from '../../src/solver/cost.ts';
import { type Solution, type SolveHooks, type SolveLimits, solve } from '../../src/solver/solve.ts';
import type { PublishedCase, Recount } from './publishedCase.ts';

export type Attempt = {
  /** 'none': the lags contradict each other, or some task found no place. */
  readonly found: Recount | 'none';
  /** Proved floor in the published objective's terms; null when price and objective are two different things. */
  readonly bound: number | null;
  /** Whether it is proved that nothing better, or nothing at all, can be found. */
  readonly isProved: boolean;
  /** Whatever the parties do not agree on, in words; empty when all is well. */
  readonly faults: readonly string[];
};

function attemptOf({ problem, recount, published, priceShift }: PublishedCase, solution: Solution): Attempt {
  const { cost, bound, schedule, stopped } = solution;
  // A bound this high stands for a task that finds no place in any schedule.
  const isProved = stopped === 'proved' || bound.value >= MISSING_PRICE;
  if (cost.missing > 0) {
    const faults = isProved && published.isFeasible ? ['proved that there is no schedule, and there is one'] : [];
    return { found: 'none', bound: null, isProved, faults };
  }
  const floor = priceShift === null ? null : bound.value + priceShift;
  const counted = recount(schedule);
  const faults = [...checkSchedule(problem, schedule), ...counted.faults];
  if (priceShift !== null && Math.abs(cost.total + priceShift - counted.value) > 1e-6) {
    faults.push(`price ${cost.total} with ${priceShift} is not the objective ${counted.value}`);
  }
  if (bound.value > cost.total + 1e-6) faults.push(`bound ${bound.value} above the price ${cost.total}`);
  if (!published.isFeasible) faults.push('a schedule of an instance that has none');
  if (floor !== null && published.best !== null && floor > published.best + 1e-6) {
    faults.push(`bound ${floor} above the published ${published.best}`);
  }
  return { found: counted, bound: floor, isProved, faults };
}

async function attempt(one: PublishedCase, seed: number, limits: SolveLimits, hooks: SolveHooks): Promise<Attempt> {
  try {
    return attemptOf(one, await solve(one.problem, seed, limits, hooks));
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const faults = one.published.isFeasible ? [`refused: ${error.message}`] : [];
    return { found: 'none', bound: null, isProved: true, faults };
  }
}

const quiet = { isCancelled: () => false, onProgress: () => {} };

/** So many rounds and no clock: the same every time, on any machine. */
export function attemptInRounds(one: PublishedCase, rounds: number, seed = 1, workers = 1): Promise<Attempt> {
  const limits = { rounds, workers, untilMs: Number.POSITIVE_INFINITY, fillInUntilMs: Number.POSITIVE_INFINITY };
  return attempt(one, seed, limits, { ...quiet, now: () => 0, pause: () => Promise.resolve() });
}

/** So many seconds by the clock, building included. */
export function attemptInSeconds(one: PublishedCase, seconds: number, seed = 1, workers = 1): Promise<Attempt> {
  const untilMs = performance.now() + 1000 * seconds;
  const limits = { rounds: Number.POSITIVE_INFINITY, workers, untilMs, fillInUntilMs: untilMs };
  const pause = () => new Promise<void>((resolve) => setImmediate(resolve));
  return attempt(one, seed, limits, { ...quiet, now: () => performance.now(), pause });
}
