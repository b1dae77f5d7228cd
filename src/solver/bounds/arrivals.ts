// How many items can have reached a resource by each time when another resource has to let them through. Used by the flow bound.
import type { Work } from './headsAndTails.ts';
import { mostInTime, mostOnPlaces } from './mostJobs.ts';
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
function byHead(heads: readonly number[], horizon: number): Int32Array {
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

/**
 * Most items that can be at a resource by each time after one of the day's ends: their own heads have passed, and another
 * resource has let them through. Those it lets through later than some time can have had no more of it than it had since that
 * time: this is counted for each such time.
 */
export function arrivals(
  items: readonly Work[],
  passages: readonly (Passage | null)[],
  gate: Gate | null,
  side: Side,
  horizon: number,
): Int32Array {
  const heads = items.map((item) => distanceOf(item, side));
  const count = byHead(heads, horizon);
  if (gate === null) return count;
  const entrants = entrantsOf(items, passages, side);
  const passing = entrants.flatMap((entrant) => (entrant === null ? [] : [entrant]));
  const byLag = [...passing].sort((a, b) => b.lag - a.lag);
  for (const release of new Set(passing.map(({ from }) => from))) {
    const held = byLag.filter(({ from }) => from >= release);
    const free = byHead(
      heads.filter((_, i) => (entrants[i]?.from ?? -1) < release),
      horizon,
    );
    const first = release + (held[held.length - 1] as Entrant).lag;
    for (let t = Math.max(0, first); t <= horizon; t++) {
      const most = (free[t] as number) + mostThrough(held, gate, release, first, t);
      if (most < (count[t] as number)) count[t] = most;
      else if (most >= items.length) break;
    }
  }
  return count;
}

/** Most of the entrants, which the gate lets through from `release` on, that can have arrived by t. They come by falling lag. */
function mostThrough(entrants: readonly Entrant[], gate: Gate, release: number, first: number, t: number): number {
  const now = entrants.filter(({ head }) => head <= t);
  const { done } = gate;
  const last = done.length - 1;
  const before = done[Math.min(release, last)] as number;
  const dues = now.map(({ lag }) => (t - lag < release ? -1 : (done[Math.min(last, t - lag)] as number) - before));
  const count = mostInTime(
    now.map(({ work }) => work),
    dues,
  );
  const lengths = now.map(({ length }) => length).sort((a, b) => a - b);
  return mostOnPlaces(lengths, count, gate.places, t - first);
}
