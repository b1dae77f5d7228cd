// One line of search: it improves the schedule, or proves that it cannot be improved, for a stretch of work at a time, and
// says what it found. Lanes know each other only by the news between stretches, so that one thread or two make no difference.
import { audit } from './audit.ts';
import { type Cost, MISSING_PRICE } from './cost.ts';
import { isFarFrom } from './farFrom.ts';
import { HandsServed } from './handsServed.ts';
import { LaneProof } from './laneProof.ts';
import { emptyLayout, type Layout } from './layout.ts';
import { closedModel, openModel } from './learning/improvedModels.ts';
import { Improver } from './learning/improver.ts';
import { Seeker } from './learning/seeker.ts';
import { ShopModel, scaleOf } from './learning/shopModel.ts';
import { Operators } from './operators.ts';
import type { Random } from './random.ts';
import { randomOf } from './random.ts';
import { Search } from './search.ts';
import type { Shop } from './shop.ts';

/** What all lanes know after a stretch: the best schedule, its price, and the floor no schedule of all units goes below. */
export type News = { readonly layout: Layout; readonly total: number; readonly isComplete: boolean; readonly floor: number };

export type Stretch = {
  /** Rounds at most. */
  readonly rounds: number;
  /** Time of the clock at which to stop, in milliseconds; Infinity where the clock has no say. */
  readonly untilMs: number;
  /** Heat of the exchanges, see Search. */
  readonly heat: number;
  /** Whether the lane that proves first goes its own way from a schedule of its own: see Lane. */
  readonly isScouted: boolean;
  /** Whether the lane that proves first looks for schedules where one pair of hands does the work of all. Default false. */
  readonly isServed?: boolean;
};

export type Found = {
  /** A cheaper schedule than the news had, or null. */
  readonly layout: Layout | null;
  readonly total: number;
  readonly isComplete: boolean;
  /** Proved floor under the price of a schedule that plans every unit; Infinity: there is none. */
  readonly floor: number;
  readonly rounds: number;
  /** Whether nothing is left to do. */
  readonly isDone: boolean;
};

export type LaneTask = 'improve' | 'prove';

/** Learning models larger than this, in pairs of stays, take too long to build. */
const MOST_STAYS = 110;

/** Conflicts of the learning solver that count as one round. */
const CONFLICTS_PER_ROUND = 5;
/** Conflicts that a model is looked through for at once. */
const SEEK_CONFLICTS = 400;

/** Vain steps of the improver before it starts anew, and how a fresh start is made. */
const MOST_VAIN = 300;
const FRESH_ROUNDS = 200;
const FRESH_HEAT = 0.01;

/** Steps of a turn that serves one pair of hands. */
const STEPS_PER_TURN = 100;

/** Share of the rounds of the lane that proves in which it looks for a schedule of all units, or a proof that there is none. */
const PROOF_SHARE = 0.5;

/** What is done while units are left out, or a schedule is far from the cheapest. */
type Work = 'exchange' | 'improve' | 'complete' | 'any';

/** Rounds in vain after which a lane that goes its own way comes back. */
const SCOUT_ROUNDS = 1500;

export class Lane {
  private readonly shop: Shop;
  private readonly task: LaneTask;
  private readonly random: Random;
  private readonly scale: number | null;
  private readonly search: Search;
  /** Undefined before it is first asked for; null where there is nothing to serve so. */
  private served: HandsServed | null | undefined;
  private improver: Improver | null = null;
  /** The model of the first improver, where it was built ahead: one of every unit. */
  private prepared: ShopModel | null = null;
  private readonly proof: LaneProof;
  /** A model that plans every unit, looked through for a schedule while none is at hand. */
  private complete: Seeker | null = null;
  /** A model in which units may be left out, looked through while something is missing that may not. */
  private any: Seeker | null = null;
  private readonly operators: Operators<Work>;
  /** What it costs to leave the cheapest unit out; Infinity: none may be. */
  private readonly leastOmission: number;
  private best: News | null = null;
  private floor = 0;
  private rounds = 0;
  private turn = 0;
  private isExhausted = false;
  /** Whether no schedule is cheaper by the model, which may count too few changes: exchanges, which count them all, go on. */
  private hasModelOptimum = false;
  /** Steps in vain since the improver last found anything. */
  private vain = 0;
  /** Whether the improver works on a fresh start rather than on the best schedule. */
  private isExploring = false;
  /**
   * Whether it goes its own way from a schedule of its own, whatever the news: what was given to start from may lie far from the
   * cheapest. It comes back when it has overtaken the news, or is stuck.
   */
  private isScouting = false;
  private wasSentOut = false;
  /** Its rounds when it last found something on its own way. */
  private lastGain = 0;

  constructor(shop: Shop, seed: number, task: LaneTask, isAudited: boolean) {
    this.shop = shop;
    this.task = task;
    this.random = randomOf(seed);
    this.operators = new Operators(this.random);
    this.search = new Search(shop, this.random);
    if (isAudited) this.search.audit = (layout, cost) => audit(shop, layout, cost);
    const prices = shop.problem.units.flatMap(({ ready, omissionPrice }) => (ready === null ? [] : [omissionPrice]));
    this.leastOmission = Math.min(Number.POSITIVE_INFINITY, ...prices);
    this.scale = shop.stays.length <= MOST_STAYS ? scaleOf(shop.problem) : null;
    this.proof = new LaneProof(shop, this.scale ?? 1);
  }

  /** Builds ahead what improving every unit begins with, in one long step. Changes no outcome. */
  prepare(): void {
    if (this.scale !== null) this.prepared = new ShopModel(this.shop, this.scale, () => true, true, true);
  }

  /** Works from the news for a stretch. */
  run(news: News, stretch: Stretch, now: () => number): Found {
    const first = this.rounds;
    const mayGoOn = (): boolean => now() < stretch.untilMs;
    if (stretch.isScouted && this.task === 'prove' && !this.wasSentOut) this.setOut(news, mayGoOn);
    this.hear(news);
    while (this.hasWork(stretch) && this.rounds - first < stretch.rounds && mayGoOn()) this.take(stretch, mayGoOn);
    const best = this.best as News;
    const isNews = best.total < news.total;
    return {
      layout: isNews ? best.layout : null,
      total: best.total,
      isComplete: best.isComplete,
      floor: this.floor,
      rounds: this.rounds - first,
      isDone: this.isDone(),
    };
  }

  private isDone(): boolean {
    return this.isExhausted || (this.best?.isComplete === true && this.best.total <= this.floor + 1e-6);
  }

  /** Before there is a schedule it can only prove, if that, or serve. */
  private hasWork(stretch: Stretch): boolean {
    if (this.isDone()) return false;
    if (this.serves(stretch)) return true;
    const isWaiting = this.best?.total === Number.POSITIVE_INFINITY;
    return !isWaiting || (this.scale !== null && this.floor !== Number.POSITIVE_INFINITY);
  }

  /** Builds a schedule of its own to go on from. */
  private setOut(news: News, mayGoOn: () => boolean): void {
    this.wasSentOut = true;
    for (const _ of this.search.construct()) if (!mayGoOn()) return;
    const { bestCost } = this.search;
    this.isScouting = bestCost.total > news.total && bestCost.total < Number.POSITIVE_INFINITY;
    if (!this.isScouting) return;
    this.best = this.newsOf(this.search.bestLayout(), bestCost);
    this.lastGain = this.rounds;
  }

  private hear(news: News): void {
    this.floor = Math.max(this.floor, news.floor);
    if (this.isScouting && this.best !== null) {
      this.isScouting = this.best.total > news.total && this.rounds - this.lastGain < SCOUT_ROUNDS;
      if (this.isScouting) return;
      if (this.best.total > news.total) this.improver = null;
    }
    if (this.best !== null && news.total >= this.best.total) return;
    this.best = news;
    if (news.total === Number.POSITIVE_INFINITY) return;
    this.search.adopt(news.layout);
    this.dropUnfit(news);
    if (!this.isExploring) this.improver?.goOnFrom(news.layout, news.total);
    if (news.isComplete) this.proof.lower(news.total);
  }

  /** A new improver is needed where other units are planned, unless its model holds them too. */
  private dropUnfit(news: News): void {
    const { improver } = this;
    if (improver !== null && !(improver.isOpen === this.wantsOpen(news) && improver.holds(news.layout))) this.improver = null;
  }

  /** One turn of work of the kind whose turn it is. */
  private take(stretch: Stretch, mayGoOn: () => boolean): void {
    this.turn++;
    const best = this.best as News;
    if (this.serves(stretch)) this.serve(mayGoOn);
    else if (best.total === Number.POSITIVE_INFINITY) this.prove(mayGoOn);
    else if (this.scale === null || (this.hasModelOptimum && (this.task === 'improve' || this.isStuckProving())))
      this.exchange(stretch);
    else if (!best.isComplete || this.isFar()) this.seek(stretch, mayGoOn);
    else if (this.task === 'improve' || this.isScouting || this.isStuckProving()) this.improve(mayGoOn);
    else this.prove(mayGoOn);
  }

  /** Whether a schedule of all units is so dear, beside the floor, that this turn goes to whatever makes it cheaper. */
  private isFar(): boolean {
    const { total } = this.best as News;
    return isFarFrom(this.floor, total, this.shop.problem) && (this.task === 'improve' || this.isScouting || this.turn % 3 !== 0);
  }

  private serves({ isServed }: Stretch): boolean {
    if (this.task !== 'prove' || isServed !== true) return false;
    if (this.served === undefined) this.served = HandsServed.of(this.shop, this.random);
    return this.served !== null && !this.served.isOver;
  }

  private serve(mayGoOn: () => boolean): void {
    this.rounds++;
    const layout = this.served?.go(STEPS_PER_TURN, mayGoOn) ?? null;
    if (layout !== null) this.keep(layout);
  }

  private isStuckProving(): boolean {
    const { total } = this.best as News;
    return this.proof.isStuck(total, this.floor, this.rounds, this.turn);
  }

  /** Takes blocks out and puts them back: see Search. */
  private exchange(stretch: Stretch): void {
    this.rounds++;
    if (this.search.round(stretch.heat)) this.keepSearched();
  }

  private keepSearched(): void {
    const { bestCost } = this.search;
    if (bestCost.total >= (this.best as News).total) return;
    const layout = this.search.bestLayout();
    this.best = this.newsOf(layout, bestCost);
    this.dropUnfit(this.best);
    this.improver?.goOnFrom(layout, bestCost.total);
    if (this.best.isComplete) this.proof.lower(bestCost.total);
  }

  private newsOf(layout: Layout, cost: Cost): News {
    this.lastGain = this.rounds;
    return { layout, total: cost.total, isComplete: cost.omitted === 0 && cost.missing === 0, floor: this.floor };
  }

  /** While something is left out, or much too dear: exchanges, steps of the improver, and the search for a schedule of everything. */
  private seek(stretch: Stretch, mayGoOn: () => boolean): void {
    const best = this.best as News;
    const { layout, total, isComplete } = best;
    const kinds: Work[] = ['exchange'];
    const isAnyPlanned = layout.start.some((at) => at >= 0) || this.wantsOpen(best);
    if (total < MISSING_PRICE && isAnyPlanned) kinds.push('improve');
    if (!isComplete && this.floor !== Number.POSITIVE_INFINITY && this.complete?.isOver !== true) kinds.push('complete');
    else if (total >= MISSING_PRICE && this.any?.isOver !== true) kinds.push('any');
    const kind = this.operators.draw(kinds, this.task === 'prove' && kinds.includes('complete') ? { complete: PROOF_SHARE } : {});
    const first = this.rounds;
    if (kind === 'complete') this.lookForComplete(mayGoOn);
    else if (kind === 'any') this.lookForAny(mayGoOn);
    else if (kind === 'improve') this.improve(mayGoOn);
    else for (let i = 0; i < 20 && mayGoOn(); i++) this.exchange(stretch);
    this.operators.remember(kind, total, (this.best as News).total, Math.max(1, this.rounds - first));
  }

  private lookForComplete(mayGoOn: () => boolean): void {
    this.complete ??= new Seeker(new ShopModel(this.shop, this.scale as number, () => true));
    const isFound = this.lookIn(this.complete, mayGoOn);
    const best = this.best as News;
    // There is one, and it costs more than leaving some out.
    if (isFound && !best.isComplete) this.complete.askBelow(best.total);
    if (!this.complete.isOver) return;
    this.raise(this.complete.floor);
    const mayOmit = this.shop.problem.units.some(({ omissionPrice }) => omissionPrice > 0 && Number.isFinite(omissionPrice));
    // Where nothing may be omitted there is no schedule at all.
    if (this.floor === Number.POSITIVE_INFINITY) this.isExhausted = !mayOmit;
  }

  /** Looks for any schedule that lacks nothing that must be planned, where one of all units does not exist. */
  private lookForAny(mayGoOn: () => boolean): void {
    this.any ??= new Seeker(openModel(this.shop, this.scale as number, emptyLayout(this.shop), false));
    this.lookIn(this.any, mayGoOn);
  }

  private lookIn(seeker: Seeker, mayGoOn: () => boolean): boolean {
    const before = seeker.conflicts;
    const layout = seeker.look(SEEK_CONFLICTS, mayGoOn);
    this.spend(seeker.conflicts - before);
    if (layout !== null) this.keep(layout);
    return layout !== null;
  }

  private spend(conflicts: number): void {
    this.rounds += 1 + Math.floor(conflicts / CONFLICTS_PER_ROUND);
  }

  /** Counts a schedule and keeps it when it is cheaper than the best. */
  private keep(layout: Layout): void {
    const cost = this.search.adopt(layout);
    const best = this.best as News;
    if (cost.total >= best.total - 1e-9) return;
    this.best = this.newsOf(layout, cost);
    this.dropUnfit(this.best);
    if (layout !== this.improver?.layout) this.improver?.goOnFrom(layout, cost.total);
    if (this.best.isComplete) this.proof.lower(cost.total);
  }

  private improve(mayGoOn: () => boolean): void {
    const improver = this.improver ?? this.newImprover();
    this.improver = improver;
    const before = improver.conflicts;
    const isBetter = improver.improve(mayGoOn);
    if (isBetter) this.keep(improver.layout);
    this.spend(improver.conflicts - before);
    this.vain = isBetter ? 0 : this.vain + 1;
    if (improver.isDone) this.settle(improver);
    else if (this.vain >= MOST_VAIN) this.startAnew();
  }

  /** Nothing is cheaper among schedules of these units: a proof when they are all units and the model holds every price. */
  private settle(improver: Improver): void {
    const best = this.best as News;
    const isExact = this.shop.problem.prices.stateChange === 0;
    if (isExact && best.isComplete && improver.isComplete) this.raise(this.fromModel(improver.total));
    this.hasModelOptimum = best.isComplete;
  }

  /** The improver is stuck: it goes on from a fresh start, and when that is stuck as well, from the best schedule again. */
  private startAnew(): void {
    this.vain = 0;
    this.improver = null;
    const best = this.best as News;
    this.isExploring = !this.isExploring && (best.isComplete || this.wantsOpen(best));
    if (!this.isExploring) return;
    const { layout, cost } = this.search.startAfresh(FRESH_ROUNDS, FRESH_HEAT);
    this.rounds += FRESH_ROUNDS;
    this.keepSearched();
    const isComplete = cost.omitted + cost.missing === 0;
    const fresh = { layout, total: cost.total, isComplete, floor: this.floor };
    if (isComplete || (cost.missing === 0 && this.wantsOpen(fresh))) this.improver = this.improverFrom(fresh);
  }

  private fromModel(total: number): number {
    return total / (this.scale as number);
  }

  private raise(floor: number): void {
    this.floor = Math.max(this.floor, floor);
  }

  private newImprover(): Improver {
    this.isExploring = false;
    return this.improverFrom(this.best as News);
  }

  private improverFrom({ layout, total, isComplete }: News): Improver {
    const isOpen = this.wantsOpen({ isComplete, total });
    const prepared = isComplete && !isOpen ? this.prepared : null;
    this.prepared = null;
    const scale = this.scale as number;
    const model = prepared ?? (isOpen ? openModel(this.shop, scale, layout, true) : closedModel(this.shop, scale, layout));
    const floor = isComplete && !isOpen ? Math.ceil(this.floor * scale - 1e-6) : 0;
    return new Improver(model, this.random, { layout, total: model.priceOf(layout, total), isComplete, isOpen }, floor);
  }

  /** Whether which units are left out is to be open: some are, or a schedule of them all costs more than one left out. */
  private wantsOpen({ isComplete, total }: Pick<News, 'isComplete' | 'total'>): boolean {
    return Number.isFinite(this.leastOmission) && (!isComplete || total > this.leastOmission);
  }

  private prove(mayGoOn: () => boolean): void {
    const { layout, floor, conflicts } = this.proof.prove(this.floor, (this.best as News).total, mayGoOn);
    const first = this.rounds;
    this.spend(conflicts);
    this.proof.count(this.rounds - first);
    this.raise(floor);
    if (layout !== null) this.keep(layout);
  }
}
