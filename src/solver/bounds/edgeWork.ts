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

/** Most jobs of a second resource that lie wholly within each span of a day's end, as far as it was asked for. */
type Counts = { readonly jobs: readonly Work[]; readonly most: (span: number) => number };

/** Counts made before: the same jobs of a resource go with the items of several others. Kept for one bound. */
export type CountsMade = Map<string, Counts[]>;

function isSame(a: readonly Work[], b: readonly Work[]): boolean {
  return a.length === b.length && a.every((work, i) => work === b[i]);
}

/** How many of these jobs lie wholly within a span up to `longest`; one that was made before, if there is. */
function countsOf(
  made: CountsMade,
  name: string,
  jobs: readonly Work[],
  other: Resource,
  places: number,
  side: Side,
  longest: number,
): Counts {
  const known = made.get(name) ?? [];
  made.set(name, known);
  const before = known.find((counts) => isSame(counts.jobs, jobs));
  if (before !== undefined) return before;
  const within = new JobsWithin(jobs, other.most, places, side);
  const counts = new Int32Array(longest + 1).fill(-1);
  // Counts only rise with the span: once all jobs fit, they fit in every longer one.
  const most = (span: number): number => {
    if (span < 0) return 0;
    if (counts[span] === -1) counts[span] = counts[span - 1] === jobs.length ? jobs.length : within.mostWhole(span);
    return counts[span] as number;
  };
  const all = { jobs, most };
  known.push(all);
  return all;
}

/** The sum, at each span, of the largest of what each job brings with it. */
class Largest {
  private readonly parts: readonly Int32Array[];
  private readonly values: Float64Array;

  /** `parts`: the items of each job. */
  constructor(parts: readonly (readonly Work[])[], side: Side, horizon: number) {
    this.parts = parts.flatMap((items) => (items.length === 0 ? [] : [workWithin(items, side, horizon)]));
    this.values = new Float64Array(this.parts.length);
  }

  at(span: number, count: number): number {
    const { parts, values } = this;
    if (parts.length === 0 || count <= 0) return 0;
    for (let j = 0; j < parts.length; j++) values[j] = (parts[j] as Int32Array)[span] as number;
    if (count < parts.length) values.sort();
    let sum = 0;
    for (let j = Math.max(0, parts.length - count); j < parts.length; j++) sum += values[j] as number;
    return sum;
  }
}

/**
 * Most work that items of one resource can get within each span, up to `horizon`, of one of the day's ends, beside the jobs of
 * another; null when none goes with another.
 *
 * @param name - of the other resource and the day's end, the same at each call of one bound.
 */
export function edgeWork(
  shop: Shop,
  items: readonly Work[],
  other: Resource,
  works: WorkByUnit,
  side: Side,
  horizon: number,
  made: CountsMade,
  name: string,
): Float64Array | null {
  const { jobs, free, beyond } = sortOut(shop, items, works, side);
  if (jobs.length === 0) return null;
  const places = Math.floor(other.most / Math.min(...jobs.map(({ work }) => work.amount)));
  const isJob = new Set(jobs.map(({ work }) => work));
  const inOrder = other.work.filter((work) => isJob.has(work));
  const counts = countsOf(made, name, inOrder, other, places, side, horizon + MOST_BEYOND);
  const alone = workWithin(free, side, horizon);
  const whole = new Largest(
    jobs.map((job) => job.whole),
    side,
    horizon,
  );
  const partly = new Largest(
    jobs.map((job) => job.partly),
    side,
    horizon,
  );
  const most = new Float64Array(horizon + 1);
  for (let span = 1; span <= horizon; span++) {
    // Times are whole: an item that has any time within the span has its job wholly within one unit less.
    const inHand = counts.most(span + beyond - 1) + places;
    most[span] = (alone[span] as number) + whole.at(span, counts.most(span - 1)) + partly.at(span, inHand);
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
