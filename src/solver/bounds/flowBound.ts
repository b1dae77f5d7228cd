// Work on one resource that arrives through a second and leaves through a third. At any instant the resource holds no more
// than can have passed the second by then, and no more than can still pass the third before the end; within a time of either
// end of the day it does no more work than belongs to what the others can do there. The earliest end at which there is room
// for all the work is a floor under the makespan. Used by bestBound.
import type { Shop } from '../shop.ts';
import { arrivals, countByHead } from './arrivals.ts';
import { type CountsMade, edgeWork } from './edgeWork.ts';
import type { Work } from './headsAndTails.ts';
import { byUnit, distanceOf, passageOf, type Resource, type Side } from './passages.ts';

export type FlowBound = { readonly makespan: number; readonly count: number; readonly through: number; readonly to: number };

/** Resources are left out when uses times uses times minutes are more than this: the count is repeated for every minute. */
const MOST_COUNTING = 100_000_000;

/** How far beyond the floor known already it is looked, as a multiple: minutes beyond cost time and hardly ever matter. */
const MOST_REACH = 1.5;

/** Work that can be done in [0, t), for each t. */
function workDone(capacity: ArrayLike<number>): Float64Array {
  const done = new Float64Array(capacity.length + 1);
  for (let t = 0; t < capacity.length; t++) done[t + 1] = (done[t] as number) + (capacity[t] as number);
  return done;
}

/** What is known of one end of the day, by distance from it: items that can be there at once, and work done since, at most. */
type Curve = { readonly present: Int32Array; readonly caps: Float64Array[]; work: Float64Array };

class Flow {
  private readonly shop: Shop;
  private readonly resource: Resource;
  private readonly items: readonly Work[];
  private readonly total: number;
  private readonly largest: number;
  private readonly curves: Readonly<Record<Side, Curve>>;
  private readonly horizon: number;
  private readonly made: CountsMade;

  /** Looks at makespans up to `horizon` only. */
  constructor(shop: Shop, resource: Resource, items: readonly Work[], horizon: number, made: CountsMade) {
    this.made = made;
    this.shop = shop;
    this.resource = resource;
    this.items = items;
    this.horizon = horizon;
    this.total = items.reduce((sum, item) => sum + item.length * item.amount, 0);
    this.largest = Math.max(...items.map((item) => item.amount));
    const curve = (side: Side): Curve => ({
      present: countByHead(
        items.map((item) => distanceOf(item, side)),
        this.horizon,
      ),
      caps: [],
      work: new Float64Array(0),
    });
    this.curves = { start: curve('start'), end: curve('end') };
    this.integrate('start');
    this.integrate('end');
  }

  /** Capacity at a distance from an end of the day; from its end, which is not known, as much as there ever is. */
  private capacityAt(side: Side, t: number): number {
    return side === 'start' ? (this.resource.capacity[t] as number) : this.resource.most;
  }

  private integrate(side: Side): void {
    const curve = this.curves[side];
    curve.work = new Float64Array(this.horizon + 1);
    for (let t = 0; t < this.horizon; t++) {
      const room = Math.min(this.capacityAt(side, t), (curve.present[t] as number) * this.largest);
      const most = (curve.work[t] as number) + room;
      curve.work[t + 1] = curve.caps.reduce((least, cap) => Math.min(least, cap[t + 1] as number), most);
    }
  }

  /** Takes account of what another resource, the `o`-th, lets through at one end of the day. */
  add(other: Resource, o: number, side: Side): void {
    const { shop, items, horizon, made } = this;
    const curve = this.curves[side];
    const works = byUnit(other, side);
    const passages = items.map((item) => passageOf(shop, item, works, side));
    if (passages.some((passage) => passage !== null)) {
      const capacity = side === 'start' ? other.capacity.subarray(0, horizon) : new Int32Array(horizon).fill(other.most);
      const amounts = passages.flatMap((passage) => (passage === null ? [] : [passage.job.amount]));
      const gate = { done: workDone(capacity), places: Math.floor(other.most / Math.min(...amounts)) };
      const now = arrivals(items, passages, gate, side, horizon);
      for (let t = 0; t <= horizon; t++) curve.present[t] = Math.min(curve.present[t] as number, now[t] as number);
    }
    const cap = edgeWork(shop, items, other, works, side, horizon, made, `${o} ${side}`);
    if (cap !== null) curve.caps.push(cap);
    this.integrate(side);
  }

  /** Whether all work has room in [0, end), for all that is known. */
  private fits(end: number): boolean {
    const { start, end: last } = this.curves;
    let room = 0;
    for (let t = 0; t < end; t++) {
      const held = Math.min(start.present[t] as number, last.present[end - t - 1] as number);
      room += Math.min(this.resource.capacity[t] as number, held * this.largest);
      if ((start.work[t] as number) + (last.work[end - t] as number) < this.total) return false;
    }
    return room >= this.total;
  }

  /** Earliest makespan at which there is room for all the work; above all that are looked at when it is none of them. */
  earliestEnd(): number {
    let low = 0;
    let high = this.horizon;
    if (!this.fits(high)) return high + 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.fits(middle)) high = middle;
      else low = middle + 1;
    }
    return low;
  }
}

/**
 * The best bound over all resources, each with all others before and after it; null when none says anything. `known`: a floor
 * under the makespan by other arguments.
 */
export function flowBound(
  shop: Shop,
  resources: readonly Resource[],
  known: number,
): (FlowBound & { readonly at: number }) | null {
  const horizon = Math.min(shop.problem.horizon, Math.ceil(MOST_REACH * known));
  const made: CountsMade = new Map();
  let best: (FlowBound & { at: number }) | null = null;
  const small = resources.map((resource) => resource.work.length > 0 && resource.work.length ** 2 * horizon <= MOST_COUNTING);
  resources.forEach((resource, at) => {
    // The count of what still has to leave before the end knows no work that ends after it.
    const items = resource.work.filter((work) => work.length > 0 && work.tail >= 0);
    if (!small[at] || items.length === 0) return;
    const found = flowThrough(new Flow(shop, resource, items, horizon, made), resources, small, at);
    if (found.makespan > (best?.makespan ?? 0)) best = { ...found, count: items.length, at };
  });
  return best;
}

function flowThrough(
  flow: Flow,
  resources: readonly Resource[],
  small: readonly boolean[],
  at: number,
): Omit<FlowBound, 'count'> {
  let through = -1;
  let to = -1;
  let makespan = flow.earliestEnd();
  resources.forEach((other, o) => {
    if (o === at || !small[o]) return;
    flow.add(other, o, 'start');
    const arriving = flow.earliestEnd();
    if (arriving > makespan) through = o;
    flow.add(other, o, 'end');
    makespan = flow.earliestEnd();
    if (makespan > arriving) to = o;
  });
  return { makespan, through, to };
}
