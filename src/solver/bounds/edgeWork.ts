// How much of its work a resource can do within a time of one of the day's ends, when other work on a second resource has to be
// done within that time as well: a tray that is loaded in the last half hour is also baked in it. Used by the flow bound.
import type { Shop } from '../shop.ts';
import type { Work } from './headsAndTails.ts';
import { mostInTime, mostOnPlaces } from './mostJobs.ts';
import { byUnit, companionOf, distanceOf, passageOf, type Resource, type Side } from './passages.ts';

/** Companions further off than this say too little. */
const MOST_BEYOND = 10;

/** A job on the second resource, with the items that are done only when it is wholly done, and those done while it is in hand. */
type Job = { readonly work: Work; readonly whole: Work[]; readonly partly: Work[] };

/** Work of an item within `span` of the day's end that `side` names, at most. */
function within(item: Work, side: Side, span: number): number {
  return item.amount * Math.max(0, Math.min(item.length, span - distanceOf(item, side)));
}

function sumWithin(items: readonly Work[], side: Side, span: number): number {
  return items.reduce((sum, item) => sum + within(item, side, span), 0);
}

function largest(values: number[], count: number): number {
  return values
    .sort((a, b) => b - a)
    .slice(0, count)
    .reduce((sum, value) => sum + value, 0);
}

export class EdgeWork {
  private readonly side: Side;
  private readonly jobs: readonly Job[];
  private readonly free: readonly Work[];
  private readonly beyond: number;
  private readonly most: number;
  private readonly places: number;

  /** Items of one resource beside the jobs of another. */
  constructor(shop: Shop, items: readonly Work[], other: Resource, side: Side) {
    const works = byUnit(other, side);
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
    this.side = side;
    this.free = free;
    this.beyond = beyond;
    this.jobs = [...jobs.values()].sort((a, b) => distanceOf(b.work, side) - distanceOf(a.work, side));
    this.most = other.most;
    this.places = Math.floor(other.most / Math.min(...this.jobs.map(({ work }) => work.amount)));
  }

  get isEmpty(): boolean {
    return this.jobs.length === 0;
  }

  /** Most work the items can get within `span` of the day's end. */
  within(span: number): number {
    const { side, jobs, free } = this;
    const whole = jobs.map((job) => sumWithin(job.whole, side, span));
    const partly = jobs.map((job) => sumWithin(job.partly, side, span));
    // Times are whole: an item that has any time within the span has its job wholly within one unit less.
    const inHand = this.mostWhole(span + this.beyond - 1) + this.places;
    return sumWithin(free, side, span) + largest(whole, this.mostWhole(span - 1)) + largest(partly, inHand);
  }

  /** Most jobs that lie wholly within `span` of the day's end. */
  private mostWhole(span: number): number {
    const { side } = this;
    const fitting = this.jobs.filter(({ work }) => distanceOf(work, side) + work.length <= span);
    const inTime = mostInTime(
      fitting.map(({ work }) => work.length * work.amount),
      fitting.map(({ work }) => this.most * (span - distanceOf(work, side))),
    );
    const lengths = fitting.map(({ work }) => work.length).sort((a, b) => a - b);
    const nearest = Math.min(...fitting.map(({ work }) => distanceOf(work, side)));
    return mostOnPlaces(lengths, inTime, this.places, span - nearest);
  }
}
