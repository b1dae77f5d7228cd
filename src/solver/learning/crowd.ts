// Uses of one capacity over time. The parts of uses that are certain make a profile; where it is full, others keep out, with
// reasons that name one instant each (Schutt, Feydy, Stuckey and Wallace 2011, Constraints 16, sections 3 and 4: time-table
// filtering with pointwise explanations). Part of the learning solver.
import { BY_NOTE, type Bounds, NO_SIDE } from './bounds.ts';
import type { Literal } from './literal.ts';

/** One use: from a variable plus an offset until a variable plus an offset; only when `condition` is true, or always. */
export type CrowdUse = {
  readonly from: number;
  readonly fromOff: number;
  readonly until: number;
  readonly untilOff: number;
  readonly amount: number;
  readonly condition: Literal | null;
};

export class Crowd {
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
  private readonly greatest: number;
  /** Capacity taken from the beginning, at each instant: the closed hours. */
  private readonly closed: Int32Array;
  private readonly height: Int32Array;
  /** Latest instant at or before, and earliest at or after, at which the largest use would not fit. */
  private readonly fullBefore: Int32Array;
  private readonly fullAfter: Int32Array;
  private readonly horizon: number;
  private readonly isSure: Uint8Array;

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
    this.greatest = Math.max(0, ...uses.map((use) => use.amount));
    this.horizon = capacity.length;
    this.most = capacity.reduce((most, now) => Math.max(most, now), 0);
    this.closed = Int32Array.from(capacity, (now) => this.most - now);
    this.height = new Int32Array(this.horizon + 1);
    this.fullBefore = new Int32Array(this.horizon + 1);
    this.fullAfter = new Int32Array(this.horizon + 2);
    this.isSure = new Uint8Array(this.count);
  }

  /** Sides whose rise can change what this knows. */
  watchedSides(): number[] {
    const sides = new Set<number>();
    for (let i = 0; i < this.count; i++) {
      const from = this.from[i] as number;
      const until = this.until[i] as number;
      for (const side of [from, from ^ 1, until, until ^ 1]) sides.add(side);
      if (this.ifSide[i] !== NO_SIDE) sides.add(this.ifSide[i] as number);
    }
    return [...sides];
  }

  private isAbsent(i: number): boolean {
    const side = this.ifSide[i] as number;
    return side !== NO_SIDE && this.bounds.isFalse(side, this.ifLow[i] as number);
  }

  /** Raises bounds as the profile asks. False on a conflict. */
  propagate(): boolean {
    const top = this.layOut();
    if (top >= 0) return this.overload(top);
    for (let i = 0; i < this.count; i++) {
      if (this.isAbsent(i)) continue;
      if (!(this.isSure[i] === 1 ? this.keepOut(i) : this.mayBe(i))) return false;
    }
    return true;
  }

  /** Fills the profile. Returns an instant at which it is above capacity, or -1. */
  private layOut(): number {
    const { height, horizon, closed } = this;
    const { low } = this.bounds;
    height.fill(0);
    for (let i = 0; i < this.count; i++) {
      const side = this.ifSide[i] as number;
      const isSure = side === NO_SIDE || (low[side] as number) >= (this.ifLow[i] as number);
      this.isSure[i] = isSure ? 1 : 0;
      if (!isSure) continue;
      const start = (this.fromOff[i] as number) - (low[(this.from[i] as number) ^ 1] as number);
      const end = (low[this.until[i] as number] as number) + (this.untilOff[i] as number);
      if (start >= end) continue;
      height[start] = (height[start] as number) + (this.amount[i] as number);
      height[end] = (height[end] as number) - (this.amount[i] as number);
    }
    const limit = this.most - this.greatest;
    let sum = 0;
    let full = -1;
    let overloaded = -1;
    for (let t = 0; t < horizon; t++) {
      sum += height[t] as number;
      const load = sum + (closed[t] as number);
      height[t] = load;
      if (load > limit) {
        full = t;
        if (load > this.most && sum > 0) overloaded = t;
      }
      this.fullBefore[t] = full;
    }
    if (overloaded >= 0) return overloaded;
    let next = horizon + 1;
    for (let t = horizon - 1; t >= 0; t--) {
      if ((height[t] as number) > limit) next = t;
      this.fullAfter[t] = next;
    }
    return -1;
  }

  /** Notes the uses certain at an instant, until they and `amount` more are above capacity. */
  private noteCover(note: number, t: number, amount: number, except: number): void {
    const { low } = this.bounds;
    let sum = (this.closed[t] as number) + amount;
    for (let i = 0; i < this.count && sum <= this.most; i++) {
      if (this.isSure[i] === 0 || i === except) continue;
      const start = (this.fromOff[i] as number) - (low[(this.from[i] as number) ^ 1] as number);
      const end = (low[this.until[i] as number] as number) + (this.untilOff[i] as number);
      if (start > t || end <= t) continue;
      sum += this.amount[i] as number;
      this.noteStarted(note, i, t);
      this.noteLasts(note, i, t);
      if (this.ifSide[i] !== NO_SIDE) this.bounds.note(note, this.ifSide[i] as number, this.ifLow[i] as number);
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

  private overload(t: number): false {
    const note = this.bounds.beginNote();
    this.noteCover(note, t, 0, -1);
    return this.bounds.contradict(note);
  }

  /** A use that is certain begins after, and ends before, the instants at which it would not fit. */
  private keepOut(i: number): boolean {
    const { low } = this.bounds;
    const amount = this.amount[i] as number;
    const from = this.from[i] as number;
    const until = this.until[i] as number;
    const free = this.most - amount;
    const earliestEnd = (low[until] as number) + (this.untilOff[i] as number);
    const latestStart = (this.fromOff[i] as number) - (low[from ^ 1] as number);
    const earliestStart = (low[from] as number) + (this.fromOff[i] as number);
    let t = Math.min(earliestEnd, latestStart) - 1;
    if (t >= earliestStart) {
      t = this.fullBefore[t] as number;
      while (t >= earliestStart && (this.height[t] as number) <= free) t = t === 0 ? -1 : (this.fullBefore[t - 1] as number);
      if (t >= earliestStart) {
        const note = this.bounds.beginNote();
        this.noteCover(note, t, amount, i);
        this.noteLasts(note, i, t);
        this.noteSure(note, i);
        if (!this.bounds.raise(from, t + 1 - (this.fromOff[i] as number), (note << 2) | BY_NOTE)) return false;
      }
    }
    const latestEnd = (this.untilOff[i] as number) - (low[until ^ 1] as number);
    t = Math.max(latestStart, earliestEnd);
    if (t >= latestEnd) return true;
    t = this.fullAfter[t] as number;
    while (t < latestEnd && (this.height[t] as number) <= free) t = this.fullAfter[t + 1] as number;
    if (t >= latestEnd) return true;
    const note = this.bounds.beginNote();
    this.noteCover(note, t, amount, i);
    this.noteStarted(note, i, t);
    this.noteSure(note, i);
    return this.bounds.raise(until ^ 1, (this.untilOff[i] as number) - t, (note << 2) | BY_NOTE);
  }

  private noteSure(note: number, i: number): void {
    if (this.ifSide[i] !== NO_SIDE) this.bounds.note(note, this.ifSide[i] as number, this.ifLow[i] as number);
  }

  /** A use that is not certain is ruled out when what would be certain of it does not fit. */
  private mayBe(i: number): boolean {
    const { low } = this.bounds;
    const amount = this.amount[i] as number;
    const start = (this.fromOff[i] as number) - (low[(this.from[i] as number) ^ 1] as number);
    const end = (low[this.until[i] as number] as number) + (this.untilOff[i] as number);
    if (start >= end) return true;
    let t = this.fullAfter[start] as number;
    while (t < end && (this.height[t] as number) + amount <= this.most) t = this.fullAfter[t + 1] as number;
    if (t >= end) return true;
    const note = this.bounds.beginNote();
    this.noteCover(note, t, amount, i);
    this.noteStarted(note, i, t);
    this.noteLasts(note, i, t);
    return this.bounds.raise((this.ifSide[i] as number) ^ 1, 1 - (this.ifLow[i] as number), (note << 2) | BY_NOTE);
  }
}
