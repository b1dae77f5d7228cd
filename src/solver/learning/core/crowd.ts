// Uses of one capacity over time. The parts of uses that are certain make a profile; where it is full, others keep out, with
// reasons that name one instant each (Schutt, Feydy, Stuckey and Wallace 2011, Constraints 16, sections 3 and 4: time-table
// filtering with pointwise explanations). The profile follows the bounds up and down without a trail of its own: each call
// compares what is certain now with what was laid down last. Part of the learning core.

import { addToAll, at, firstAbove, lastAbove, put, words } from '../../assembly/memory';
import { BY_NOTE, beginNote, contradict, low, NO_SIDE, note, raise } from './bounds';
import { Propagator } from './propagator';
import { AMOUNT, FROM, FROM_OFF, IF_LOW, IF_SIDE, Reach, UNTIL, UNTIL_OFF, USE } from './uses';

const NO_INSTANT: i32 = i32.MIN_VALUE;

export class Crowd extends Propagator {
  private readonly count: i32;
  private readonly from: usize;
  private readonly fromOff: usize;
  private readonly until: usize;
  private readonly untilOff: usize;
  private readonly amount: usize;
  private readonly ifSide: usize;
  private readonly ifLow: usize;
  private readonly most: i32;
  /** Capacity taken at each instant: by closed hours, and by what is certain. */
  private readonly closed: usize;
  private readonly height: usize;
  /** What of each use is laid down in the profile: [start, end), empty when start is not below end. */
  private readonly laidStart: usize;
  private readonly laidEnd: usize;
  /** Earliest and latest start and end of each use as last read: one that is ruled out ends before all instants. */
  private readonly firstStart: usize;
  private readonly lastStart: usize;
  private readonly firstEnd: usize;
  private readonly lastEnd: usize;
  /** Whether each is certain (1), open (0) or ruled out (-1). */
  private readonly certainty: usize;
  /** Instants that became fuller since every use was last held against the profile. */
  private fullerFrom: i32;
  private fullerUntil: i32;
  /** Instants among which some may be above capacity: [from, until). */
  private suspectFrom: i32 = i32.MAX_VALUE;
  private suspectUntil: i32 = i32.MIN_VALUE;

  /** `capacity` of each of so many instants; uses, see uses.ts. Instants before and after those given have none. */
  constructor(capacity: usize, instants: i32, uses: usize, count: i32) {
    super(false, count);
    this.count = count;
    this.from = words(count);
    this.fromOff = words(count);
    this.until = words(count);
    this.untilOff = words(count);
    this.amount = words(count);
    this.ifSide = words(count);
    this.ifLow = words(count);
    for (let i = 0; i < count; i++) {
      const from = 2 * at(uses, USE * i + FROM);
      const until = 2 * at(uses, USE * i + UNTIL);
      const ifSide = at(uses, USE * i + IF_SIDE);
      put(this.from, i, from);
      put(this.fromOff, i, at(uses, USE * i + FROM_OFF));
      put(this.until, i, until);
      put(this.untilOff, i, at(uses, USE * i + UNTIL_OFF));
      put(this.amount, i, at(uses, USE * i + AMOUNT));
      put(this.ifSide, i, ifSide);
      put(this.ifLow, i, at(uses, USE * i + IF_LOW));
      this.watch(from, i);
      this.watch(from + 1, i);
      if (until !== from) {
        this.watch(until, i);
        this.watch(until + 1, i);
      }
      if (ifSide !== NO_SIDE) {
        this.watch(ifSide, i);
        this.watch(ifSide ^ 1, i);
      }
    }
    let most = 0;
    for (let t = 0; t < instants; t++) most = max(most, at(capacity, t));
    this.most = most;
    const reach = new Reach(uses, count, instants);
    this.closed = reach.room();
    this.height = reach.room();
    for (let t = reach.first; t < reach.end; t++) {
      const open = t >= 0 && t < instants ? at(capacity, t) : 0;
      put(this.closed, t, most - open);
      put(this.height, t, most - open);
    }
    this.laidStart = words(count);
    this.laidEnd = words(count);
    // They are read four at a time.
    this.firstStart = words(count + 3);
    this.lastStart = words(count + 3);
    this.firstEnd = words(count + 3);
    this.lastEnd = words(count + 3);
    for (let i = count; i < count + 3; i++) {
      put(this.firstEnd, i, i32.MIN_VALUE);
      put(this.lastEnd, i, i32.MIN_VALUE);
    }
    this.certainty = words(count);
    this.fullerFrom = 0;
    this.fullerUntil = instants;
  }

  /** Raises bounds as the profile asks. False on a conflict. */
  propagate(): bool {
    const wakes = this.wakes;
    const list = this.wakeList;
    for (let k = 0; k < wakes; k++) this.read(at(list, k));
    const top = this.overloadedInstant();
    if (top !== NO_INSTANT) {
      const begun = beginNote();
      this.noteCover(begun, top, 0, -1);
      return contradict(begun);
    }
    const fullerFrom = this.fullerFrom;
    const fullerUntil = this.fullerUntil;
    for (let k = 0; k < wakes; k++) if (!this.hold(at(list, k))) return false;
    if (fullerFrom < fullerUntil && !this.holdAll(fullerFrom, fullerUntil)) return false;
    this.fullerFrom = i32.MAX_VALUE;
    this.fullerUntil = i32.MIN_VALUE;
    this.clearWakes();
    return true;
  }

  /** Holds against the profile the uses that may be kept from beginning or ending where it became fuller: the others stand as they stood. */
  private holdAll(fullerFrom: i32, fullerUntil: i32): bool {
    const from = i32x4.splat(fullerFrom);
    const until = i32x4.splat(fullerUntil);
    const count = this.count;
    for (let i = 0; i < count; i += 4) {
      const offset = (<usize>i) << 2;
      const first = v128.and(
        i32x4.lt_s(v128.load(this.firstStart + offset), until),
        i32x4.gt_s(v128.load(this.firstEnd + offset), from),
      );
      const last = v128.and(
        i32x4.lt_s(v128.load(this.lastStart + offset), until),
        i32x4.gt_s(v128.load(this.lastEnd + offset), from),
      );
      let which = i32x4.bitmask(v128.or(first, last));
      while (which !== 0) {
        if (!this.hold(i + ctz(which))) return false;
        which &= which - 1;
      }
    }
    return true;
  }

  private latestStart(i: i32): i32 {
    return at(this.fromOff, i) - at(low, at(this.from, i) ^ 1);
  }

  private earliestEnd(i: i32): i32 {
    return at(low, at(this.until, i)) + at(this.untilOff, i);
  }

  /** Reads the bounds of a use, and lays down in the profile what is certain of it. */
  private read(i: i32): void {
    const side = at(this.ifSide, i);
    const from = at(this.from, i);
    const until = at(this.until, i);
    let certainty = 1;
    if (side !== NO_SIDE && at(low, side) < at(this.ifLow, i)) certainty = -at(low, side ^ 1) < at(this.ifLow, i) ? -1 : 0;
    put(this.certainty, i, certainty);
    const lastStart = at(this.fromOff, i) - at(low, from ^ 1);
    const firstEnd = at(low, until) + at(this.untilOff, i);
    put(this.firstStart, i, at(low, from) + at(this.fromOff, i));
    put(this.lastStart, i, lastStart);
    put(this.firstEnd, i, certainty < 0 ? i32.MIN_VALUE : firstEnd);
    put(this.lastEnd, i, certainty < 0 ? i32.MIN_VALUE : at(this.untilOff, i) - at(low, until ^ 1));
    const isLaid = certainty === 1 && lastStart < firstEnd;
    const start = isLaid ? lastStart : 0;
    const end = isLaid ? firstEnd : 0;
    if (start !== at(this.laidStart, i) || end !== at(this.laidEnd, i)) this.relay(i, start, end);
  }

  private relay(i: i32, start: i32, end: i32): void {
    const oldStart = at(this.laidStart, i);
    const oldEnd = at(this.laidEnd, i);
    const amount = at(this.amount, i);
    put(this.laidStart, i, start);
    put(this.laidEnd, i, end);
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

  private change(from: i32, until: i32, by: i32): void {
    if (from >= until) return;
    const height = this.height;
    addToAll(height, from, until, by);
    if (by < 0) return;
    if (firstAbove(height, from, until, this.most) < until) {
      this.suspectFrom = min(this.suspectFrom, from);
      this.suspectUntil = max(this.suspectUntil, until);
    }
    if (from < this.fullerFrom) this.fullerFrom = from;
    if (until > this.fullerUntil) this.fullerUntil = until;
  }

  /** An instant above capacity, or NO_INSTANT. While there is one, the suspects stay. */
  private overloadedInstant(): i32 {
    if (this.suspectFrom < this.suspectUntil) {
      const t = firstAbove(this.height, this.suspectFrom, this.suspectUntil, this.most);
      if (t < this.suspectUntil) return t;
    }
    this.suspectFrom = i32.MAX_VALUE;
    this.suspectUntil = i32.MIN_VALUE;
    return NO_INSTANT;
  }

  /** Holds one use against the profile. */
  private hold(i: i32): bool {
    const certainty = at(this.certainty, i);
    if (certainty < 0) return true;
    return certainty === 1 ? this.keepOut(i) : this.mayBe(i);
  }

  /** Notes the uses certain at an instant, until they and `amount` more are above capacity. */
  private noteCover(begun: i32, t: i32, amount: i32, except: i32): void {
    let sum = at(this.closed, t) + amount;
    const most = this.most;
    for (let i = 0; i < this.count && sum <= most; i++) {
      if (at(this.laidStart, i) > t || at(this.laidEnd, i) <= t || i === except) continue;
      sum += at(this.amount, i);
      this.noteStarted(begun, i, t);
      this.noteLasts(begun, i, t);
      this.noteSure(begun, i);
    }
  }

  /** Notes that a use has begun at instant t at the latest. */
  private noteStarted(begun: i32, i: i32, t: i32): void {
    note(begun, at(this.from, i) ^ 1, at(this.fromOff, i) - t);
  }

  /** Notes that a use lasts beyond instant t. */
  private noteLasts(begun: i32, i: i32, t: i32): void {
    note(begun, at(this.until, i), t + 1 - at(this.untilOff, i));
  }

  private noteSure(begun: i32, i: i32): void {
    if (at(this.ifSide, i) !== NO_SIDE) note(begun, at(this.ifSide, i), at(this.ifLow, i));
  }

  /** A use that is certain begins after, and ends before, the instants at which it would not fit. */
  private keepOut(i: i32): bool {
    const height = this.height;
    const amount = at(this.amount, i);
    const from = at(this.from, i);
    const until = at(this.until, i);
    const free = this.most - amount;
    const earliestStart = at(low, from) + at(this.fromOff, i);
    let t = lastAbove(height, earliestStart, min(this.earliestEnd(i), this.latestStart(i)), free);
    if (t >= earliestStart) {
      const begun = beginNote();
      this.noteCover(begun, t, amount, i);
      this.noteLasts(begun, i, t);
      this.noteSure(begun, i);
      if (!raise(from, t + 1 - at(this.fromOff, i), (begun << 2) | BY_NOTE)) return false;
    }
    const latestEnd = at(this.untilOff, i) - at(low, until ^ 1);
    t = firstAbove(height, max(this.latestStart(i), this.earliestEnd(i)), latestEnd, free);
    if (t >= latestEnd) return true;
    const begun = beginNote();
    this.noteCover(begun, t, amount, i);
    this.noteStarted(begun, i, t);
    this.noteSure(begun, i);
    return raise(until ^ 1, at(this.untilOff, i) - t, (begun << 2) | BY_NOTE);
  }

  /** A use that is not certain is ruled out when what would be certain of it does not fit. */
  private mayBe(i: i32): bool {
    const amount = at(this.amount, i);
    const end = this.earliestEnd(i);
    const free = this.most - amount;
    const t = firstAbove(this.height, this.latestStart(i), end, free);
    if (t >= end) return true;
    const begun = beginNote();
    this.noteCover(begun, t, amount, i);
    this.noteStarted(begun, i, t);
    this.noteLasts(begun, i, t);
    return raise(at(this.ifSide, i) ^ 1, 1 - at(this.ifLow, i), (begun << 2) | BY_NOTE);
  }
}
