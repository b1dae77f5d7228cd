// Improves a schedule by the learning solver: most of it is held near where it is, the rest set free, and a cheaper one sought;
// what is learned on the way holds for good. Used by a lane.
import { isFarFrom } from '../farFrom.ts';
import { type Layout, timesOf } from '../layout.ts';
import type { Random } from '../random.ts';
import { heldStill } from './heldStill.ts';
import { atMost } from './literal.ts';
import { type Neighbourhood, Neighbourhoods } from './neighbourhood.ts';
import type { ShopModel } from './shopModel.ts';

/** How many conflicts one neighbourhood may take: at least, and how much more after each in vain and less after one with a gain. */
type Patience = { readonly least: number; readonly more: number; readonly less: number };

/**
 * Many neighbourhoods looked into shortly bring most, until they are in vain; on problems of so few units, and far from the floor, where
 * much is late or left out, longer looks do. By turns at 2 s, 18 days of 26 to 36 units, the whole searched seldom too: 0.6 % cheaper.
 */
const FEW_UNITS = 36;
const SHORT: Patience = { least: 25, more: 1.03, less: 0.5 };
const LONG: Patience = { least: 250, more: 1.01, less: 0 };
const MOST_CONFLICTS = 2500;
/** A search of the whole may take so many at least: what it learns serves later. */
const WHOLE_CONFLICTS = 750;

/** Largest step asked for at once, as a share of the price, and of what lies between it and the floor where that is more. */
const MOST_STEP = 0.03;
const MOST_STEP_TO_FLOOR = 0.3;

/** Share of vain steps after which the schedule is exchanged for another of its price. */
const SIDEWAYS_SHARE = 0.2;
const SIDEWAYS_CONFLICTS = 250;

/** `isOpen`: the model may leave units out and plan others. */
export type Start = {
  readonly layout: Layout;
  readonly total: number;
  readonly isComplete: boolean;
  readonly isOpen?: boolean;
};

export class Improver {
  private readonly model: ShopModel;
  private readonly neighbourhoods: Neighbourhoods;
  private readonly floor: number;
  private readonly random: Random;
  private time: Int32Array;
  private conflictLimit = 0;
  private step = 1;
  /** What room for a unit is to gain. */
  private readonly roomStep: number;
  /** The neighbourhood to go on with, and how many conflicts are left for it where its search was broken off. */
  private again: Neighbourhood | null = null;
  private left = 0;
  /** The cheapest schedule known to it, and its price in the model's units. */
  layout: Layout;
  total: number;
  /** Whether it is known that none is cheaper. */
  isDone = false;

  /** Whether the schedule it began with plans every unit, and whether others need not. */
  readonly isComplete: boolean;
  readonly isOpen: boolean;

  /** Starts from a schedule that the model holds; `total`: its price in the model's units. */
  constructor(model: ShopModel, random: Random, from: Start, floor: number) {
    const { layout, total, isComplete, isOpen = false } = from;
    this.isComplete = isComplete;
    this.isOpen = isOpen;
    this.model = model;
    this.random = random;
    this.neighbourhoods = new Neighbourhoods(model.shop, random);
    this.layout = layout;
    this.total = total;
    this.floor = floor;
    this.roomStep = Math.floor(model.presence.leastWeight / 2);
    this.time = new Int32Array(0);
    this.adopt(layout, total);
  }

  /** Whether it can go on from a schedule, as far as its units go. */
  holds(layout: Layout): boolean {
    return this.model.holds(layout);
  }

  /** Whether its schedule is so dear, beside the floor, that small parts of it are worth more than the whole. */
  private get isFar(): boolean {
    return isFarFrom(this.floor, this.total, this.model.shop.problem);
  }

  private get patience(): Patience {
    return this.isFar || this.model.shop.problem.units.length <= FEW_UNITS ? LONG : SHORT;
  }

  /** Goes on from a schedule that it can go on from; `price`: by the problem. */
  goOnFrom(layout: Layout, price: number): void {
    this.adopt(layout, this.model.priceOf(layout, price));
  }

  /** Conflicts so far. */
  get conflicts(): number {
    return this.model.engine.conflicts;
  }

  private adopt(layout: Layout, total: number): void {
    this.layout = this.model.aimAt(layout);
    this.time = timesOf(this.model.shop, this.layout);
    this.total = total;
    const { engine, objective, isPossible } = this.model;
    if (total <= this.floor || !isPossible || !engine.assert(2 * objective + 1, -total)) this.isDone = true;
  }

  /**
   * Searches one neighbourhood, for as long as schedules in it get cheaper. Returns whether one was found; `conflicts` of the engine say
   * how long it took.
   */
  improve(mayGoOn: () => boolean): boolean {
    // Where changes of state have a price the model may guess it: then every schedule is counted by whoever asked.
    const isExact = this.model.shop.problem.prices.stateChange === 0;
    let isBetter = false;
    while (this.takeStep(mayGoOn)) {
      isBetter = true;
      if (!isExact || !mayGoOn()) break;
    }
    return isBetter;
  }

  /** Asks for one cheaper schedule. */
  private takeStep(mayGoOn: () => boolean): boolean {
    if (this.isDone) return false;
    const { model } = this;
    const { engine } = model;
    const place = this.again ?? this.neighbourhoods.draw(this.time, this.isFar);
    this.again = null;
    // A step that makes room for a unit is to be worth a unit.
    const step = place.kind === 'room' ? Math.max(this.step, this.roomStep) : this.step;
    const wanted = Math.max(this.floor, this.total - step);
    const least = place.kind === 'all' ? WHOLE_CONFLICTS : this.patience.least;
    const limit = this.left > 0 ? this.left : Math.max(least, this.conflictLimit);
    this.left = 0;
    const before = engine.conflicts;
    const outcome = engine.search(
      [atMost(model.objective, wanted), ...heldStill(model, this.layout, this.time, place)],
      limit,
      mayGoOn,
    );
    switch (outcome) {
      case 'solution': {
        const total = engine.min(model.objective);
        this.adopt(model.read(), total);
        const most = Math.max(MOST_STEP * total, MOST_STEP_TO_FLOOR * (total - this.floor));
        this.step = Math.min(2 * this.step, Math.max(1, Math.round(most)));
        this.conflictLimit *= this.patience.less;
        this.neighbourhoods.remember(place.kind, 'better');
        this.again = place;
        return true;
      }
      case 'impossible':
        this.isDone = true;
        return false;
      default:
        if (outcome === 'limit' && !mayGoOn()) {
          // Time was up, which says nothing of the neighbourhood. What was learned holds: the next stretch goes on from there, unless
          // a stretch is too short for it to come to anything.
          const spent = engine.conflicts - before;
          if (spent > 0) this.again = place;
          if (spent > 0) this.left = Math.max(1, limit - spent);
          return false;
        }
        if (step === this.step && step > 1) {
          this.step >>= 1;
          return false;
        }
        if (outcome === 'refuted' && place.kind === 'all') this.isDone = true;
        this.neighbourhoods.remember(place.kind, outcome === 'refuted' ? 'searched' : 'too-large');
        this.conflictLimit = Math.min(MOST_CONFLICTS, this.patience.more * Math.max(this.patience.least, this.conflictLimit));
        return !this.isDone && this.random.next() < SIDEWAYS_SHARE && this.goSideways(mayGoOn);
    }
  }

  /**
   * Moves on to another schedule of the same price, packed to the left in one neighbourhood: what was stuck may come loose. Returns
   * whether it is even cheaper.
   */
  private goSideways(mayGoOn: () => boolean): boolean {
    const { model } = this;
    const { engine } = model;
    const place = this.neighbourhoods.draw(this.time, this.isFar);
    for (let v = 0; v < this.time.length; v++) if (place.isFree[v] === 1) engine.target[v] = 0;
    const outcome = engine.search(
      [atMost(model.objective, this.total), ...heldStill(model, this.layout, this.time, place)],
      SIDEWAYS_CONFLICTS,
      mayGoOn,
    );
    const before = this.total;
    if (outcome === 'solution') this.adopt(model.read(), engine.min(model.objective));
    else this.adopt(this.layout, this.total);
    return this.total < before;
  }
}
