// Solves a shop problem: lay out, bound, construct, improve, read off. A table of contents; the parts are beside it.
import { audit } from './audit.ts';
import { bestBound, withFloor } from './bounds/bestBound.ts';
import type { Bound } from './bounds/bound.ts';
import { type PackingOutcome, packLoads } from './bounds/chamberLoads.ts';
import { Paths } from './bounds/headsAndTails.ts';
import type { Cost } from './cost.ts';
import { Crew } from './crew.ts';
import { hintChambers } from './hintChambers.ts';
import type { News } from './lane.ts';
import type { Layout } from './layout.ts';
import { polish } from './polish.ts';
import { postpone } from './postpone.ts';
import type { Schedule, ShopProblem } from './problem.ts';
import { randomOf } from './random.ts';
import { scheduleOf } from './scheduleOf.ts';
import { Search } from './search.ts';
import { shopOf } from './shop.ts';
import type { BlockRecord } from './shopState.ts';

/** Heat of the annealing, relative to the price, at the start and at the end of the search. */
const FIRST_HEAT = 0.01;
const LAST_HEAT = 0.0003;

/** Rounds of exchanges before the lanes set off: at most this share of the limits, and no more once so many brought no gain. */
const WARM_SHARE = 0.12;
const WARM_VAIN_ROUNDS = 200;
const WARM_ROUNDS_PER_PAUSE = 20;

const EPSILON = 1e-6;

/** Milliseconds each linear or integer program may take at most; a smaller share of a short time limit, which is
 * larger when rounds are counted and the same rounds are to give the same plan. */
const LINEAR_MS = 2000;

function floorOf(outcome: PackingOutcome): number {
  if (outcome.packing !== null) return outcome.packing.floor;
  return outcome.because === 'too-slow' ? outcome.floor : 0;
}

export type SolveLimits = {
  /** Rounds of search at most; Infinity: no limit. */
  readonly rounds: number;
  /** Time of `now` at which to stop searching, in milliseconds; Infinity: no limit. */
  readonly untilMs: number;
  /** Time of `now` by which what is left out has been tried once more; at or after `untilMs`. */
  readonly fillInUntilMs: number;
  /** Threads to use, 1 or 2. Default 1. */
  readonly workers?: number;
  /** Debug runs: every schedule accepted is counted again, slowly, and a wrong one is an error. Default false. */
  readonly isAudited?: boolean;
  /** Rounds without a gain after which to stop. Default: no limit. */
  readonly flatRounds?: number;
  /** A schedule to start from; the outcome is never dearer. */
  readonly startFrom?: Layout;
};

export type SolveHooks = {
  readonly now: () => number;
  readonly isCancelled: () => boolean;
  /** Lets other work run; called about every 40 ms. */
  readonly pause: () => Promise<void>;
  readonly onProgress: (progress: SolveProgress) => void;
};

export type SolveProgress = { readonly cost: Cost; readonly bound: Bound; readonly rounds: number };

export type Solution = {
  readonly schedule: Schedule;
  readonly cost: Cost;
  /** Changes counted on the moves of the schedule; at least those in `cost`. */
  readonly changes: number;
  readonly bound: Bound;
  readonly stopped: 'proved' | 'time' | 'effort' | 'cancelled';
  readonly rounds: number;
  readonly packing: PackingOutcome;
  /** The schedule block by block, for those who ask what would fit beside it. */
  readonly records: readonly BlockRecord[];
};

/** Share of the limit used up, 0 to 1. Where rounds are limited the clock has no say: the same rounds give the same plan. */
function progressOf(limits: SolveLimits, rounds: number, startedAt: number, now: () => number): number {
  if (limits.rounds !== Number.POSITIVE_INFINITY) return Math.min(1, rounds / Math.max(1, limits.rounds));
  if (limits.untilMs === Number.POSITIVE_INFINITY) return 0;
  return Math.min(1, (now() - startedAt) / Math.max(1, limits.untilMs - startedAt));
}

/** Solves a problem whose lags do not contradict each other; RangeError otherwise. */
export async function solve(problem: ShopProblem, seed: number, limits: SolveLimits, hooks: SolveHooks): Promise<Solution> {
  const startedAt = hooks.now();
  const shop = shopOf(problem);
  const paths = new Paths(shop, problem);
  const leftMs = limits.untilMs - startedAt;
  const share = limits.rounds === Number.POSITIVE_INFINITY ? 8 : 2;
  const packing = await packLoads(shop, paths, Math.max(1, Math.min(LINEAR_MS, leftMs / share)));
  const arguedBound = bestBound(shop, paths, floorOf(packing));
  const search = new Search(shop, randomOf(seed));
  if (limits.isAudited === true) search.audit = (layout, cost) => audit(shop, layout, cost);
  if (packing.packing !== null) hintChambers(search, packing.packing);
  if (limits.startFrom !== undefined) search.adopt(limits.startFrom);

  let bound = arguedBound;
  let rounds = 0;
  const stopReason = (): Solution['stopped'] | null => {
    if (search.bestCost.total <= bound.value + EPSILON) return 'proved';
    if (rounds >= limits.rounds) return 'effort';
    if (hooks.isCancelled()) return 'cancelled';
    return hooks.now() >= limits.untilMs ? 'time' : null;
  };
  const report = (): void => hooks.onProgress({ cost: search.bestCost, bound, rounds });

  let stopped: Solution['stopped'] | null = null;
  for (const _ of search.construct()) {
    await hooks.pause();
    report();
    stopped = stopReason();
    if (stopped !== null) break;
  }
  const warmUntil = Math.min(limits.untilMs, hooks.now() + WARM_SHARE * (limits.untilMs - hooks.now()));
  let vain = 0;
  while (stopped === null && vain < WARM_VAIN_ROUNDS && rounds < WARM_SHARE * limits.rounds && hooks.now() < warmUntil) {
    rounds++;
    vain++;
    if (search.round(FIRST_HEAT)) {
      vain = 0;
      report();
    }
    stopped = stopReason();
    if (rounds % WARM_ROUNDS_PER_PAUSE === 0) await hooks.pause();
  }

  if (stopped === null) {
    const { workers = 1, isAudited = false } = limits;
    const crew = new Crew(shop, seed, newsOf(search, arguedBound.value), { workers, isAudited, now: hooks.now });
    try {
      const warmed = rounds;
      let lastGain = rounds;
      while (stopped === null) {
        const heat = heatAt(progressOf(limits, rounds, startedAt, hooks.now));
        const isGain = await crew.work({ heat, roundsLeft: limits.rounds - rounds, untilMs: limits.untilMs });
        rounds = warmed + crew.rounds;
        if (isGain) {
          if (crew.news.total < search.bestCost.total) search.adopt(crew.news.layout);
          bound = withFloor(problem, arguedBound, crew.news.floor);
          lastGain = rounds;
          report();
        }
        stopped = stopReason();
        if (stopped === null && (crew.isDone || rounds - lastGain >= (limits.flatRounds ?? Number.POSITIVE_INFINITY)))
          stopped = 'effort';
        await hooks.pause();
      }
    } finally {
      await crew.stop();
    }
    if (crew.news.total < search.bestCost.total) search.adopt(crew.news.layout);
    bound = withFloor(problem, arguedBound, crew.news.floor);
    if (search.bestCost.total <= bound.value + EPSILON) stopped = 'proved';
  }
  search.goBackToBest();
  const mayGoOn = (): boolean => !hooks.isCancelled() && hooks.now() < limits.fillInUntilMs;
  search.dropDear(mayGoOn);
  search.goBackToBest();
  search.fillIn(mayGoOn);
  search.goBackToBest();
  if (problem.prices.fromFirstMark) postpone(search, mayGoOn);
  search.goBackToBest();
  polish(search, mayGoOn);
  search.goBackToBest();
  const { schedule, changes } = scheduleOf(search.state);
  return { schedule, cost: search.bestCost, changes, bound, stopped: stopped ?? 'effort', rounds, packing, records: search.best };
}

function newsOf(search: Search, floor: number): News {
  const { bestCost } = search;
  return { layout: search.bestLayout(), total: bestCost.total, isComplete: bestCost.omitted + bestCost.missing === 0, floor };
}

function heatAt(done: number): number {
  return FIRST_HEAT * (LAST_HEAT / FIRST_HEAT) ** done;
}
