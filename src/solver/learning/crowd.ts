// Uses of one capacity over time. The parts of uses that are certain make a profile; where it is full, others keep out, with
// reasons that name one instant each (Schutt, Feydy, Stuckey and Wallace 2011, Constraints 16, sections 3 and 4: time-table
// filtering with pointwise explanations). The profile follows the bounds up and down without a trail of its own: each call
// compares what is certain now with what was laid down last. Part of the learning solver.
import { type Bounds, BY_NOTE, NO_SIDE } from './bounds.ts';
import type { Watched } from './engine.ts';
import type { Literal } from './literal.ts';
import { Wakes } from './wakes.ts';

/** One use: from a variable plus an offset until a variable plus an offset; only when `condition` is true, or always. */
export type CrowdUse = {
  readonly from: number;
  readonly fromOff: number;
  readonly until: number;
  readonly untilOff: number;
  readonly amount: number;
  readonly condition: Literal | null;
  /** Least time it takes. */
  readonly length: number;
};

export class Crowd {
  readonly isSlow = false;
  /** Uses whose bounds changed since they were last held against the profile. */
  readonly wakes: Wakes;
  readonly watched: readonly Watched[];
  private readonly bounds: Bounds;
  private readonly count: number;
  private readonly from: Int32Array;
  private readonly fromOff: Int32Array;
  private readonly until: Int32Array;
  private readonly untilOff: Int32Array;
  private readonly amount: Int32Array;
  private readonly ifSide: Int32Array;
  private readonly ifLow: Int32Array;
  private readonly most: number;
  /** Capacity taken at each instant: by closed hours, and by what is certain. */
  private readonly closed: Int32Array;
  private readonly height: Int32Array;
  /** What of each use is laid down in the profile: [start, end), empty when start is not below end. */
  private readonly laidStart: Int32Array;
  private readonly laidEnd: Int32Array;
  /** Window of each use as last read: earliest start, latest end, and whether it is certain (1), open (0) or ruled out (-1). */
  private readonly windowStart: Int32Array;
  private readonly windowEnd: Int32Array;
  private readonly certainty: Int8Array;
  /** Instants that became fuller since every use was last held against the profile. */
  private fullerFrom = Number.POSITIVE_INFINITY;
  private fullerUntil = Number.NEGATIVE_INFINITY;
  /** Instants among which some may be above capacity: [from, until). */
  private suspectFrom = Number.POSITIVE_INFINITY;
  private suspectUntil = Number.NEGATIVE_INFINITY;

  /** `capacity[t]` during [t, t + 1); uses lie within [0, capacity.length]. */
  constructor(bounds: Bounds, capacity: Int32Array, uses: readonly CrowdUse[]) {
    this.bounds = bounds;
    this.count = uses.length;
    this.from = Int32Array.from(uses, (use) => 2 * use.from);
    this.fromOff = Int32Array.from(uses, (use) => use.fromOff);
    this.until = Int32Array.from(uses, (use) => 2 * use.until);
    this.untilOff = Int32Array.from(uses, (use) => use.untilOff);
    this.amount = Int32Array.from(uses, (use) => use.amount);
    this.ifSide = Int32Array.from(uses, (use) => use.condition?.side ?? NO_SIDE);
    this.ifLow = Int32Array.from(uses, (use) => use.condition?.low ?? 0);
    this.most = capacity.reduce((most, now) => Math.max(most, now), 0);
    this.closed = Int32Array.from(capacity, (now) => this.most - now);
    this.height = this.closed.slice();
    this.laidStart = new Int32Array(this.count);
    this.laidEnd = new Int32Array(this.count);
    this.windowStart = new Int32Array(this.count);
    this.windowEnd = new Int32Array(this.count);
    this.certainty = new Int8Array(this.count);
    this.wakes = new Wakes(this.count);
    this.watched = uses.flatMap(({ from, until, condition }, item) => {
      const watched = [
        { side: 2 * from, item },
        { side: 2 * from + 1, item },
      ];
      if (until !== from) watched.push({ side: 2 * until, item }, { side: 2 * until + 1, item });
      if (condition !== null) watched.push({ side: condition.side, item }, { side: condition.side ^ 1, item });
      return watched;
    });
    this.fullerFrom = 0;
    this.fullerUntil = capacity.length;
  }

  /** Raises bounds as the profile asks. False on a conflict. */
  propagate(): boolean {
    const { wakes } = this;
    for (let k = 0; k < wakes.count; k++) this.read(wakes.list[k] as number);
    const top = this.overloadedInstant();
    if (top >= 0) {
      const note = this.bounds.beginNote();
      this.noteCover(note, top, 0, -1);
      return this.bounds.contradict(note);
    }
    const { fullerFrom, fullerUntil, windowStart, windowEnd } = this;
    for (let k = 0; k < wakes.count; k++) if (!this.hold(wakes.list[k] as number)) return false;
    if (fullerFrom < fullerUntil) {
      for (let i = 0; i < this.count; i++) {
        if ((windowStart[i] as number) < fullerUntil && (windowEnd[i] as number) > fullerFrom && !this.hold(i)) return false;
      }
    }
    this.fullerFrom = Number.POSITIVE_INFINITY;
    this.fullerUntil = Number.NEGATIVE_INFINITY;
    wakes.clear();
    return true;
  }

  private latestStart(i: number): number {
    return (this.fromOff[i] as number) - (this.bounds.low[(this.from[i] as number) ^ 1] as number);
  }

  private earliestEnd(i: number): number {
    return (this.bounds.low[this.until[i] as number] as number) + (this.untilOff[i] as number);
  }

  /** Reads the bounds of a use, and lays down in the profile what is certain of it. */
  private read(i: number): void {
    const { low } = this.bounds;
    const side = this.ifSide[i] as number;
    const from = this.from[i] as number;
    const until = this.until[i] as number;
    let certainty = 1;
    if (side !== NO_SIDE && (low[side] as number) < (this.ifLow[i] as number)) {
      certainty = -(low[side ^ 1] as number) < (this.ifLow[i] as number) ? -1 : 0;
    }
    this.certainty[i] = certainty;
    this.windowStart[i] = (low[from] as number) + (this.fromOff[i] as number);
    this.windowEnd[i] = (this.untilOff[i] as number) - (low[until ^ 1] as number);
    let start = 0;
    let end = 0;
    if (certainty === 1) {
      start = (this.fromOff[i] as number) - (low[from ^ 1] as number);
      end = (low[until] as number) + (this.untilOff[i] as number);
      if (start >= end) end = start = 0;
    }
    if (start !== this.laidStart[i] || end !== this.laidEnd[i]) this.relay(i, start, end);
  }

  private relay(i: number, start: number, end: number): void {
    const oldStart = this.laidStart[i] as number;
    const oldEnd = this.laidEnd[i] as number;
    const amount = this.amount[i] as number;
    this.laidStart[i] = start;
    this.laidEnd[i] = end;
    if (oldEnd <= start || end <= oldStart) {
      this.change(oldStart, oldEnd, -amount);
      this.change(start, end, amount);
      return;
    }
    if (start < oldStart) this.change(start, oldStart, amount);
    else this.change(oldStart, start, -amount);
    if (end > oldEnd) this.change(oldEnd, end, amount);
    else this.change(end, oldEnd, -amount);
  }

  private change(from: number, until: number, by: number): void {
    if (from >= until) return;
    const { height, most } = this;
    if (by < 0) {
      for (let t = from; t < until; t++) height[t] = (height[t] as number) + by;
      return;
    }
    let isAbove = false;
    for (let t = from; t < until; t++) {
      const now = (height[t] as number) + by;
      height[t] = now;
      if (now > most) isAbove = true;
    }
    if (isAbove) {
      this.suspectFrom = Math.min(this.suspectFrom, from);
      this.suspectUntil = Math.max(this.suspectUntil, until);
    }
    if (from < this.fullerFrom) this.fullerFrom = from;
    if (until > this.fullerUntil) this.fullerUntil = until;
  }

  /** An instant above capacity, or -1. While there is one, the suspects stay. */
  private overloadedInstant(): number {
    const { height, most } = this;
    for (let t = this.suspectFrom; t < this.suspectUntil; t++) if ((height[t] as number) > most) return t;
    this.suspectFrom = Number.POSITIVE_INFINITY;
    this.suspectUntil = Number.NEGATIVE_INFINITY;
    return -1;
  }

  /** Holds one use against the profile. */
  private hold(i: number): boolean {
    const certainty = this.certainty[i] as number;
    if (certainty < 0) return true;
    return certainty === 1 ? this.keepOut(i) : this.mayBe(i);
  }

  /** Notes the uses certain at an instant, until they and `amount` more are above capacity. */
  private noteCover(note: number, t: number, amount: number, except: number): void {
    let sum = (this.closed[t] as number) + amount;
    for (let i = 0; i < this.count && sum <= this.most; i++) {
      if ((this.laidStart[i] as number) > t || (this.laidEnd[i] as number) <= t || i === except) continue;
      sum += this.amount[i] as number;
      this.noteStarted(note, i, t);
      this.noteLasts(note, i, t);
      this.noteSure(note, i);
    }
  }

  /** Notes that a use has begun at instant t at the latest. */
  private noteStarted(note: number, i: number, t: number): void {
    this.bounds.note(note, (this.from[i] as number) ^ 1, (this.fromOff[i] as number) - t);
  }

  /** Notes that a use lasts beyond instant t. */
  private noteLasts(note: number, i: number, t: number): void {
    this.bounds.note(note, this.until[i] as number, t + 1 - (this.untilOff[i] as number));
  }

  private noteSure(note: number, i: number): void {
    if (this.ifSide[i] !== NO_SIDE) this.bounds.note(note, this.ifSide[i] as number, this.ifLow[i] as number);
  }

  /** A use that is certain begins after, and ends before, the instants at which it would not fit. */
  private keepOut(i: number): boolean {
    const { low } = this.bounds;
    const { height } = this;
    const amount = this.amount[i] as number;
    const from = this.from[i] as number;
    const until = this.until[i] as number;
    const free = this.most - amount;
    const earliestStart = (low[from] as number) + (this.fromOff[i] as number);
    let t = Math.min(this.earliestEnd(i), this.latestStart(i)) - 1;
    while (t >= earliestStart && (height[t] as number) <= free) t--;
    if (t >= earliestStart) {
      const note = this.bounds.beginNote();
      this.noteCover(note, t, amount, i);
      this.noteLasts(note, i, t);
      this.noteSure(note, i);
      if (!this.bounds.raise(from, t + 1 - (this.fromOff[i] as number), (note << 2) | BY_NOTE)) return false;
    }
    const latestEnd = (this.untilOff[i] as number) - (low[until ^ 1] as number);
    t = Math.max(this.latestStart(i), this.earliestEnd(i));
    while (t < latestEnd && (height[t] as number) <= free) t++;
    if (t >= latestEnd) return true;
    const note = this.bounds.beginNote();
    this.noteCover(note, t, amount, i);
    this.noteStarted(note, i, t);
    this.noteSure(note, i);
    return this.bounds.raise(until ^ 1, (this.untilOff[i] as number) - t, (note << 2) | BY_NOTE);
  }

  /** A use that is not certain is ruled out when what would be certain of it does not fit. */
  private mayBe(i: number): boolean {
    const amount = this.amount[i] as number;
    const end = this.earliestEnd(i);
    let t = this.latestStart(i);
    while (t < end && (this.height[t] as number) + amount <= this.most) t++;
    if (t >= end) return true;
    const note = this.bounds.beginNote();
    this.noteCover(note, t, amount, i);
    this.noteStarted(note, i, t);
    this.noteLasts(note, i, t);
    return this.bounds.raise((this.ifSide[i] as number) ^ 1, 1 - (this.ifLow[i] as number), (note << 2) | BY_NOTE);
  }
}
