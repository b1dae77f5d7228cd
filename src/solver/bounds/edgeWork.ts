// How much of its work a resource can do within a time of one of the day's ends, when other work on a second resource has to be
// done within that time as well: a tray that is loaded in the last half hour is also baked in it. Used by the flow bound.
import type { Shop } from '../shop.ts';
import type { Work } from './headsAndTails.ts';
import { MostJobs } from './mostJobs.ts';
import { companionOf, distanceOf, passageOf, type Resource, type Side, type WorkByUnit } from './passages.ts';

/** Companions further off than this say too little. */
const MOST_BEYOND = 10;

/** A job on the second resource, with the items that are done only when it is wholly done, and those done while it is in hand. */
type Job = { readonly work: Work; readonly whole: Work[]; readonly partly: Work[] };

/** Work of items within each span of the day's end that `side` names, at most. */
function workWithin(items: readonly Work[], side: Side, horizon: number): Int32Array {
  const work = new Int32Array(horizon + 1);
  for (const item of items) {
    const first = distanceOf(item, side) + 1;
    const last = Math.min(horizon, first + item.length - 1);
    for (let span = Math.max(1, first); span <= last; span++) work[span] = (work[span] as number) + item.amount;
  }
  for (let span = 1; span <= horizon; span++) work[span] = (work[span] as number) + (work[span - 1] as number);
  return work;
}

class JobsWithin {
  private readonly side: Side;
  private readonly most: number;
  private readonly places: number;
  /** Latest from the day's end first, and shortest first. */
  private readonly byDistance: readonly Work[];
  private readonly byLength: readonly Work[];
  private readonly counter: MostJobs;

  constructor(jobs: readonly Work[], most: number, places: number, side: Side) {
    this.side = side;
    this.most = most;
    this.places = places;
    this.byDistance = [...jobs].sort((a, b) => distanceOf(b, side) - distanceOf(a, side));
    this.byLength = [...jobs].sort((a, b) => a.length - b.length);
    this.counter = new MostJobs(jobs.length);
  }

  /** Most jobs that lie wholly within `span` of the day's end. */
  mostWhole(span: number): number {
    const { side, counter } = this;
    counter.clear();
    let nearest = span;
    for (const job of this.byDistance) {
      const distance = distanceOf(job, side);
      if (distance + job.length > span) continue;
      nearest = distance;
      counter.add(job.length * job.amount, this.most * (span - distance));
    }
    for (const job of this.byLength) if (distanceOf(job, side) + job.length <= span) counter.addLength(job.length);
    return counter.most(this.places, span - nearest);
  }
}

/** The sum of the `count` largest of these. */
function largest(values: Float64Array, count: number): number {
  if (count < values.length) values.sort();
  let sum = 0;
  for (let i = Math.max(0, values.length - count); i < values.length; i++) sum += values[i] as number;
  return sum;
}

/**
 * Most work that items of one resource can get within each span, up to `horizon`, of one of the day's ends, beside the jobs of
 * another; null when none goes with another.
 */
export function edgeWork(
  shop: Shop,
  items: readonly Work[],
  other: Resource,
  works: WorkByUnit,
  side: Side,
  horizon: number,
): Float64Array | null {
  const { jobs, free, beyond } = sortOut(shop, items, works, side);
  if (jobs.length === 0) return null;
  const places = Math.floor(other.most / Math.min(...jobs.map(({ work }) => work.amount)));
  const within = new JobsWithin(
    jobs.map(({ work }) => work),
    other.most,
    places,
    side,
  );
  const alone = workWithin(free, side, horizon);
  const whole = jobs.map((job) => workWithin(job.whole, side, horizon));
  const partly = jobs.map((job) => workWithin(job.partly, side, horizon));
  const counts = Int32Array.from({ length: horizon + beyond + 1 }, () => -1);
  // Counts only rise with the span: once all jobs fit, they fit in every longer one.
  const mostWhole = (span: number): number => {
    if (span < 0) return 0;
    if (counts[span] === -1) counts[span] = counts[span - 1] === jobs.length ? jobs.length : within.mostWhole(span);
    return counts[span] as number;
  };
  const values = new Float64Array(jobs.length);
  const most = new Float64Array(horizon + 1);
  const sumOf = (parts: readonly Int32Array[], span: number, count: number): number => {
    for (let j = 0; j < parts.length; j++) values[j] = (parts[j] as Int32Array)[span] as number;
    return largest(values, count);
  };
  for (let span = 1; span <= horizon; span++) {
    // Times are whole: an item that has any time within the span has its job wholly within one unit less.
    const inHand = mostWhole(span + beyond - 1) + places;
    most[span] = (alone[span] as number) + sumOf(whole, span, mostWhole(span - 1)) + sumOf(partly, span, inHand);
  }
  return most;
}

function sortOut(
  shop: Shop,
  items: readonly Work[],
  works: WorkByUnit,
  side: Side,
): { readonly jobs: readonly Job[]; readonly free: readonly Work[]; readonly beyond: number } {
  const jobs = new Map<Work, Job>();
  const jobOf = (work: Work): Job => {
    const job = jobs.get(work) ?? { work, whole: [], partly: [] };
    jobs.set(work, job);
    return job;
  };
  const free: Work[] = [];
  let beyond = 0;
  for (const item of items) {
    const passage = passageOf(shop, item, works, side);
    const companion = passage === null ? companionOf(shop, item, works, side, MOST_BEYOND) : null;
    if (passage !== null) jobOf(passage.job).whole.push(item);
    else if (companion === null) free.push(item);
    else {
      jobOf(companion.job).partly.push(item);
      beyond = Math.max(beyond, companion.beyond);
    }
  }
  return { jobs: [...jobs.values()], free, beyond };
}
