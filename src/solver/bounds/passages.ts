// Which work on one resource goes with which work on another: before it, after it, or beside it. Used by the flow bound.
import { NO_PATH } from '../network.ts';
import { type Shop, shortest } from '../shop.ts';
import type { Mark, Work } from './headsAndTails.ts';

/** Uses of one resource, and its capacity: over time, and at most. */
export type Resource = { readonly work: readonly Work[]; readonly capacity: Int32Array; readonly most: number };

/** From which end of the day time is counted: from its start, or backwards from the makespan. */
export type Side = 'start' | 'end';

/** Least time between one of the day's ends and a work: below 0 where the makespan does not wait for it. */
export function distanceOf(work: Work, side: Side): number {
  return side === 'start' ? work.head : work.tail;
}

/** A work on another resource that lies between an item and the day's end, and the least time between the two. */
export type Passage = { readonly job: Work; readonly lag: number };

/** Works of a resource by unit, those that count. */
export type WorkByUnit = ReadonlyMap<number, readonly Work[]>;

export function byUnit(resource: Resource, side: Side): WorkByUnit {
  const found = new Map<number, Work[]>();
  for (const work of resource.work) {
    if (work.length === 0 || distanceOf(work, side) < 0) continue;
    found.set(work.unit, [...(found.get(work.unit) ?? []), work]);
  }
  return found;
}

function candidates(shop: Shop, item: Work, jobs: WorkByUnit): Work[] {
  const parent = shop.problem.units[item.unit]?.parent ?? null;
  const all = [...(jobs.get(item.unit) ?? []), ...(parent === null ? [] : (jobs.get(parent) ?? []))];
  return all.filter((job) => job !== item);
}

/** Least time from one mark to another; NO_PATH where there is none. */
function between(shop: Shop, from: Mark, to: Mark): number {
  const path = shortest(shop.network, from.variable, to.variable);
  return path === NO_PATH ? NO_PATH : path + to.offset - from.offset;
}

/** The longest work by the same unit or its parent that must have ended before the item begins, or must follow it. */
export function passageOf(shop: Shop, item: Work, jobs: WorkByUnit, side: Side): Passage | null {
  let best: Passage | null = null;
  for (const job of candidates(shop, item, jobs)) {
    const lag = side === 'start' ? between(shop, job.until, item.from) : between(shop, item.until, job.from);
    if (lag === NO_PATH || lag < 0) continue;
    if (best === null || job.length * job.amount > best.job.length * best.job.amount) best = { job, lag };
  }
  return best;
}

/** A work that is wholly or partly in hand within `beyond` of any time at which the item is. */
export type Companion = { readonly job: Work; readonly beyond: number };

/** The work by the same unit or its parent that keeps closest to an item; null where none keeps within `most`. */
export function companionOf(shop: Shop, item: Work, jobs: WorkByUnit, side: Side, most: number): Companion | null {
  let best: Companion | null = null;
  for (const job of candidates(shop, item, jobs)) {
    // Counted from the start: the job begins no later than the item, but for `beyond`. From the end: it ends no earlier.
    const path = side === 'start' ? between(shop, job.from, item.from) : between(shop, item.until, job.until);
    if (path === NO_PATH || path < -most) continue;
    const beyond = Math.max(0, -path);
    if (best === null || beyond < best.beyond) best = { job, beyond };
  }
  return best;
}
