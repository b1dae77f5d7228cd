// How many items can have reached a resource by each time when another resource has to let them through. Used by the flow bound.
import type { Work } from './headsAndTails.ts';
import { MostJobs } from './mostJobs.ts';
import { distanceOf, type Passage, type Side } from './passages.ts';

/** A passage to be counted: `work` shared among the items that follow one job; `length` 0 where it is shared. */
type Entrant = {
  readonly work: number;
  readonly length: number;
  readonly lag: number;
  readonly from: number;
  readonly head: number;
};

/** What lets items through: work it can do in [0, t), and how many jobs at a time. */
export type Gate = { readonly done: Float64Array; readonly places: number };

/** Items by the time from which they may be there for all they know themselves. */
export function countByHead(heads: readonly number[], horizon: number): Int32Array {
  const count = new Int32Array(horizon + 1);
  for (const head of heads) if (head <= horizon) count[head] = (count[head] as number) + 1;
  for (let t = 1; t <= horizon; t++) count[t] = (count[t] as number) + (count[t - 1] as number);
  return count;
}

function entrantsOf(items: readonly Work[], passages: readonly (Passage | null)[], side: Side): (Entrant | null)[] {
  const sharing = new Map<Work, number>();
  for (const passage of passages) if (passage !== null) sharing.set(passage.job, (sharing.get(passage.job) ?? 0) + 1);
  return items.map((item, i) => {
    const passage = passages[i] ?? null;
    if (passage === null) return null;
    const { job, lag } = passage;
    const shared = sharing.get(job) as number;
    const work = (job.length * job.amount) / shared;
    return { work, length: shared === 1 ? job.length : 0, lag, from: distanceOf(job, side), head: distanceOf(item, side) };
  });
}

/** Entrants the gate lets through from `release` on: how many can have arrived by a time. */
class Queue {
  private readonly byLag: readonly Entrant[];
  private readonly byLength: readonly Entrant[];
  private readonly gate: Gate;
  private readonly release: number;
  private readonly counter: MostJobs;
  /** Before this none can have arrived. */
  readonly first: number;

  constructor(entrants: readonly Entrant[], gate: Gate, release: number) {
    this.byLag = [...entrants].sort((a, b) => b.lag - a.lag);
    this.byLength = [...entrants].sort((a, b) => a.length - b.length);
    this.gate = gate;
    this.release = release;
    this.counter = new MostJobs(entrants.length);
    this.first = Math.max(0, release + (this.byLag.at(-1) as Entrant).lag);
  }

  mostBy(t: number): number {
    const { release, counter } = this;
    const { done, places } = this.gate;
    const last = done.length - 1;
    const before = done[Math.min(release, last)] as number;
    counter.clear();
    for (const { head, work, lag } of this.byLag)
      if (head <= t) counter.add(work, t - lag < release ? -1 : (done[Math.min(last, t - lag)] as number) - before);
    for (const { head, length } of this.byLength) if (head <= t) counter.addLength(length);
    return counter.most(places, t - this.first);
  }
}

/**
 * Most items that can be at a resource by each time after one of the day's ends: their own heads have passed, and the gate has
 * let them through. Those it lets through later than some time can have had no more of it than it had since that time: this is
 * counted for each such time.
 */
export function arrivals(
  items: readonly Work[],
  passages: readonly (Passage | null)[],
  gate: Gate,
  side: Side,
  horizon: number,
): Int32Array {
  const heads = items.map((item) => distanceOf(item, side));
  const count = countByHead(heads, horizon);
  const entrants = entrantsOf(items, passages, side);
  const passing = entrants.flatMap((entrant) => (entrant === null ? [] : [entrant]));
  const releases = [...new Set(passing.map(({ from }) => from))].sort((a, b) => a - b);
  for (const release of releases) {
    const queue = new Queue(
      passing.filter(({ from }) => from >= release),
      gate,
      release,
    );
    const isFree = (i: number): boolean => (entrants[i]?.from ?? -1) < release;
    const free = countByHead(
      heads.filter((_, i) => isFree(i)),
      horizon,
    );
    let most = 0;
    for (let t = queue.first; t <= horizon && most < items.length; t++) {
      // It never falls: where it was no less a minute ago it says nothing now.
      if (most >= (count[t] as number)) continue;
      most = (free[t] as number) + queue.mostBy(t);
      if (most < (count[t] as number)) count[t] = most;
    }
  }
  return count;
}
