// How far a solve has come: its best schedule, the floor under every schedule's price, and whether to go on. Used by solve.ts.
import { audit } from './audit.ts';
import { withFloor } from './bounds/bestBound.ts';
import type { Bound } from './bounds/bound.ts';
import type { PackingOutcome } from './bounds/chamberLoads.ts';
import type { Cost } from './cost.ts';
import { hintChambers } from './hintChambers.ts';
import type { News } from './lane.ts';
import type { Layout } from './layout.ts';
import { randomOf } from './random.ts';
import { Search } from './search.ts';
import type { Shop } from './shop.ts';
import { type Solution, type Stopped, solutionOf } from './solution.ts';
import { soundPart } from './soundPart.ts';

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
  /** A schedule to start from, which may lack units and hold what no longer fits; where all of it fits, the outcome is never dearer. */
  readonly startFrom?: Layout;
  /** Stop as soon as a schedule costs no more than this, or none can. Default: go on to the other limits. */
  readonly enough?: number;
};

export type SolveHooks = {
  readonly now: () => number;
  readonly isCancelled: () => boolean;
  /** Lets other work run; called about every 40 ms. */
  readonly pause: () => Promise<void>;
  /** `soFar` reads off what there is; the search does not notice. */
  readonly onProgress: (progress: SolveProgress, soFar: () => Solution) => void;
};

export type SolveProgress = { readonly cost: Cost; readonly bound: Bound; readonly rounds: number };

/** Heat of the annealing, relative to the price, at the start and at the end of the search. */
export const FIRST_HEAT = 0.01;
const LAST_HEAT = 0.0003;

const EPSILON = 1e-6;

export class Course {
  readonly shop: Shop;
  readonly search: Search;
  readonly limits: SolveLimits;
  readonly hooks: SolveHooks;
  private argued: Bound;
  /** A stronger argument than the one it began with, once there is one. */
  listen: () => Bound | null = () => null;
  private readonly packing: PackingOutcome;
  private readonly startedAt: number;
  bound: Bound;
  rounds = 0;
  /** Whether all of the schedule to start from stood; true without one. */
  isStartWhole = true;
  /** Null while the solve goes on. */
  stopped: Stopped | null = null;

  constructor(
    shop: Shop,
    seed: number,
    limits: SolveLimits,
    hooks: SolveHooks,
    startedAt: number,
    argued: Bound,
    packing: PackingOutcome,
  ) {
    this.shop = shop;
    this.limits = limits;
    this.hooks = hooks;
    this.startedAt = startedAt;
    this.argued = argued;
    this.packing = packing;
    this.bound = argued;
    this.search = new Search(shop, randomOf(seed));
    if (limits.isAudited === true) this.search.audit = (layout, cost) => audit(shop, layout, cost);
    if (packing.packing !== null) hintChambers(this.search, packing.packing);
    if (limits.startFrom !== undefined) this.startFrom(limits.startFrom);
  }

  /** What of a schedule still stands, and beside it whatever else fits. */
  private startFrom(wanted: Layout): void {
    const { layout, isWhole } = soundPart(this.shop, wanted);
    this.isStartWhole = isWhole;
    this.search.adopt(layout);
    this.search.fillIn(() => !this.hooks.isCancelled() && this.hooks.now() < this.limits.untilMs);
    this.search.goBackToBest();
  }

  /** Whether the schedule at hand is as cheap as any. */
  get isProved(): boolean {
    return this.search.bestCost.total <= this.bound.value + EPSILON;
  }

  /** How far the schedule at hand is above the floor, as a share of its price; 0 for one that costs nothing. */
  get gap(): number {
    const { total } = this.search.bestCost;
    return total <= 0 ? 0 : 1 - this.bound.value / total;
  }

  private get isEnough(): boolean {
    const { enough } = this.limits;
    return enough !== undefined && (this.search.bestCost.total <= enough + EPSILON || this.bound.value > enough + EPSILON);
  }

  /** Asks whether there is a reason to stop; false when there is. */
  goesOn(): boolean {
    this.stopped ??= this.reasonToStop();
    return this.stopped === null;
  }

  private reasonToStop(): Stopped | null {
    const { limits, hooks } = this;
    if (this.isProved) return 'proved';
    if (this.isEnough) return 'enough';
    if (this.rounds >= limits.rounds) return 'effort';
    if (hooks.isCancelled()) return 'cancelled';
    return hooks.now() >= limits.untilMs ? 'time' : null;
  }

  /** Lets other work run, and hears what was argued meanwhile. */
  async pause(): Promise<void> {
    await this.hooks.pause();
    const argued = this.listen();
    if (argued === null) return;
    this.listen = () => null;
    this.argued = argued;
    if (argued.value >= this.bound.value) this.bound = argued;
  }

  report(): void {
    const { search, bound, rounds } = this;
    this.hooks.onProgress({ cost: search.bestCost, bound, rounds }, () => this.solution('cancelled'));
  }

  /** The best there is; `otherwise` is why it ends if nothing has been said of that. */
  solution(otherwise: Stopped): Solution {
    const { search, shop, bound, stopped, rounds, isStartWhole, packing } = this;
    const { bestCost: cost, best: records } = search;
    return solutionOf(shop, { cost, bound, stopped: stopped ?? otherwise, rounds, packing, isStartWhole, records });
  }

  /** Where the search stands, for those who go on from it. */
  news(): News {
    const { bestCost } = this.search;
    const isComplete = bestCost.omitted + bestCost.missing === 0;
    // Where some must be omitted there is no schedule of all units to look for.
    const floor = this.argued.argument.kind === 'omission' ? Number.POSITIVE_INFINITY : this.argued.value;
    return { layout: this.search.bestLayout(), total: bestCost.total, isComplete, floor };
  }

  /** Takes over what others found. */
  take(news: News): void {
    if (news.total < this.search.bestCost.total) this.search.adopt(news.layout);
    this.bound = withFloor(this.shop.problem, this.argued, news.floor);
  }

  /** Heat of the annealing by the share of the limit used up. Where rounds are limited the clock has no say. */
  heat(): number {
    return FIRST_HEAT * (LAST_HEAT / FIRST_HEAT) ** this.progress();
  }

  private progress(): number {
    const { limits, hooks, startedAt } = this;
    if (limits.rounds !== Number.POSITIVE_INFINITY) return Math.min(1, this.rounds / Math.max(1, limits.rounds));
    if (limits.untilMs === Number.POSITIVE_INFINITY) return 0;
    return Math.min(1, (hooks.now() - startedAt) / Math.max(1, limits.untilMs - startedAt));
  }
}
