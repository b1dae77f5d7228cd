// Work on one resource that arrives through a second and leaves through a third. At any instant the resource holds no more
// than can have passed the second by then, and no more than can still pass the third before the end: the earliest end at which
// there is room for all the work is a floor under the makespan. How many can have passed is counted as jobs that meet a due
// time on one machine as fast as all places of the resource together (Moore 1968, Management Science 15).
import { NO_PATH } from '../network.ts';
import { type Shop, shortest } from '../shop.ts';
import type { Work } from './headsAndTails.ts';

/** Uses of one resource, and its capacity: over time, and at most. */
export type Resource = { readonly work: readonly Work[]; readonly capacity: Int32Array; readonly most: number };

export type FlowBound = { readonly makespan: number; readonly count: number; readonly through: number; readonly to: number };

/** Resources are left out when uses times uses times minutes are more than this: the count is repeated for every minute. */
const MOST_COUNTING = 12_000_000;

/** Work on another resource that comes before (or after) a use: how long it takes there, and the least time between. */
type Passage = { readonly length: number; readonly lag: number; readonly end: number };

/** The longest use of another resource by the same unit or its parent that must end before a use begins, or that must follow. */
function passageOf(shop: Shop, item: Work, other: Resource, isBefore: boolean): (Passage & { readonly work: Work }) | null {
  let best: (Passage & { readonly work: Work }) | null = null;
  const parent = shop.problem.units[item.unit]?.parent ?? null;
  for (const work of other.work) {
    if (work === item || (work.unit !== item.unit && work.unit !== parent) || work.length === 0) continue;
    if (!isBefore && work.tail < 0) continue;
    const [from, to] = isBefore ? [work.until, item.from] : [item.until, work.from];
    const path = shortest(shop.network, from.variable, to.variable);
    if (path === NO_PATH) continue;
    const lag = path + to.offset - from.offset;
    if (lag < 0) continue;
    if (best === null || work.length * work.amount > best.length) {
      best = { length: work.length * work.amount, lag, end: isBefore ? work.head : work.tail, work };
    }
  }
  return best;
}

/** Passages of all items. Items after one and the same use share its length, for it is done once for all of them. */
function passagesOf(shop: Shop, items: readonly Work[], other: Resource, isBefore: boolean): (Passage | null)[] {
  const found = items.map((item) => passageOf(shop, item, other, isBefore));
  const sharing = new Map<Work, number>();
  for (const one of found) if (one !== null) sharing.set(one.work, (sharing.get(one.work) ?? 0) + 1);
  return found.map((one) => one && { length: one.length / (sharing.get(one.work) as number), lag: one.lag, end: one.end });
}

/** Most jobs that can be done by their due times on one machine: Moore's rule. Jobs come sorted by due time. */
function mostInTime(lengths: readonly number[], dues: Float64Array): number {
  const taken: number[] = [];
  let total = 0;
  for (let i = 0; i < lengths.length; i++) {
    const length = lengths[i] as number;
    let at = taken.length;
    while (at > 0 && (taken[at - 1] as number) > length) at--;
    taken.splice(at, 0, length);
    total += length;
    if (total > (dues[i] as number)) total -= taken.pop() as number;
  }
  return taken.length;
}

/**
 * Most items that can be at the resource by each time after the origin: their own head has passed, and the other resource has
 * let them through. Those it lets through later than some time can have had no more of it than it had since that time: this is
 * counted for each such time. `done[t]`: work the other resource can do in [0, t).
 */
function arrivals(
  items: readonly Work[],
  headOf: (item: Work) => number,
  passages: readonly (Passage | null)[],
  done: Float64Array,
  horizon: number,
): Int32Array {
  const count = new Int32Array(horizon + 1);
  items.forEach((item) => {
    const head = headOf(item);
    if (head <= horizon) count[head] = (count[head] as number) + 1;
  });
  for (let t = 1; t <= horizon; t++) count[t] = (count[t] as number) + (count[t - 1] as number);
  const passing = passages.flatMap((passage) => (passage === null ? [] : [passage]));
  const byLag = [...passing].sort((a, b) => b.lag - a.lag);
  for (const release of new Set(passing.map((passage) => passage.end))) {
    const later = byLag.filter((passage) => passage.end >= release);
    const lengths = later.map((passage) => passage.length);
    const least = Math.min(...later.map((passage) => passage.lag));
    const first = release + least;
    const before = done[Math.min(release, horizon)] as number;
    const dues = new Float64Array(later.length);
    for (let t = Math.max(0, first); t <= horizon; t++) {
      const others = otherArrivals(items, headOf, passages, release, t);
      later.forEach((passage, i) => {
        const at = Math.min(horizon, t - passage.lag);
        dues[i] = at < release ? -1 : (done[at] as number) - before;
      });
      const most = others + mostInTime(lengths, dues);
      if (most < (count[t] as number)) count[t] = most;
      else if (most >= items.length) break;
    }
  }
  return count;
}

/** Items whose head has passed and that the other resource need not hold back. */
function otherArrivals(
  items: readonly Work[],
  headOf: (item: Work) => number,
  passages: readonly (Passage | null)[],
  release: number,
  t: number,
): number {
  let sum = 0;
  for (let i = 0; i < items.length; i++) {
    const passage = passages[i] ?? null;
    if ((passage === null || passage.end < release) && headOf(items[i] as Work) <= t) sum++;
  }
  return sum;
}

function workDone(capacity: Int32Array): Float64Array {
  const done = new Float64Array(capacity.length + 1);
  for (let t = 0; t < capacity.length; t++) done[t + 1] = (done[t] as number) + (capacity[t] as number);
  return done;
}

/** Earliest makespan at which the resource has room for all its work. */
function earliestEnd(resource: Resource, items: readonly Work[], into: Int32Array, outOf: Int32Array): number {
  const horizon = resource.capacity.length;
  const total = items.reduce((sum, item) => sum + item.length * item.amount, 0);
  const largest = Math.max(...items.map((item) => item.amount));
  const fits = (end: number): boolean => {
    let room = 0;
    for (let t = 0; t < end; t++) {
      const held = Math.min(into[t] as number, outOf[end - t - 1] as number);
      room += Math.min(resource.capacity[t] as number, held * largest);
      if (room >= total) return true;
    }
    return false;
  };
  let low = 0;
  let high = horizon;
  if (!fits(high)) return horizon + 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (fits(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function narrower(a: Int32Array, b: Int32Array): Int32Array {
  return a.map((count, t) => Math.min(count, b[t] as number));
}

/** The best bound over all resources, each with all others before and after it; null when none says anything. */
export function flowBound(shop: Shop, resources: readonly Resource[]): (FlowBound & { readonly at: number }) | null {
  let best: (FlowBound & { at: number }) | null = null;
  const small = resources.map(
    (resource) => resource.work.length > 0 && resource.work.length ** 2 * shop.problem.horizon <= MOST_COUNTING,
  );
  resources.forEach((resource, at) => {
    // The count of what still has to leave before the end knows no work that ends after it.
    const items = resource.work.filter((work) => work.length > 0 && work.tail >= 0);
    if (!small[at] || items.length === 0) return;
    const found = flowThrough(shop, resources, small, at, items);
    if (found.makespan > (best?.makespan ?? 0)) best = { ...found, at };
  });
  return best;
}

function flowThrough(
  shop: Shop,
  resources: readonly Resource[],
  small: readonly boolean[],
  at: number,
  items: readonly Work[],
): FlowBound {
  const { horizon } = shop.problem;
  const resource = resources[at] as Resource;
  const bare = items.map(() => null);
  const none = new Float64Array(horizon + 1);
  let into = arrivals(items, (item) => item.head, bare, none, horizon);
  let outOf = arrivals(items, (item) => item.tail, bare, none, horizon);
  const end = (): number => earliestEnd(resource, items, into, outOf);
  let through = -1;
  let to = -1;
  let makespan = end();
  resources.forEach((other, o) => {
    if (o === at || !small[o]) return;
    const before = passagesOf(shop, items, other, true);
    if (before.some((passage) => passage !== null)) {
      into = narrower(
        into,
        arrivals(items, (item) => item.head, before, workDone(other.capacity), horizon),
      );
      const now = end();
      if (now > makespan) through = o;
      makespan = now;
    }
    const after = passagesOf(shop, items, other, false);
    if (after.some((passage) => passage !== null)) {
      const steady = workDone(new Int32Array(horizon).fill(other.most));
      outOf = narrower(
        outOf,
        arrivals(items, (item) => item.tail, after, steady, horizon),
      );
      const now = end();
      if (now > makespan) to = o;
      makespan = now;
    }
  });
  return { makespan, count: items.length, through, to };
}
