// One chamber over time: room left, and the states it can be in so that every stay it holds finds its range.
// The set of reachable states is an interval at every instant; kept forwards from the start and backwards from the end,
// a stay fits exactly when its own tube joins the two. Used by the builder; mutable.
import { NEVER } from './poolLine.ts';
import type { Chamber } from './problem.ts';

/** Room for rounding in sums of state rates. */
const EPSILON = 1e-9;

export type HeldStay = {
  readonly task: number;
  readonly start: number;
  readonly end: number;
  readonly low: number;
  readonly high: number;
  readonly room: number;
};

/** Whether a stay asks for a state: one that only takes room is at home in every state. */
export function asksForState({ low }: { readonly low: number }): boolean {
  return low !== Number.NEGATIVE_INFINITY;
}

export class ChamberLine {
  readonly stays: HeldStay[] = [];
  private readonly chamber: Chamber;
  private readonly horizon: number;
  private readonly free: Int32Array;
  /** Range asked for at each instant 0 to horizon by the stays held then, bounds included. */
  private readonly low: Float64Array;
  private readonly high: Float64Array;
  private readonly forwardLow: Float64Array;
  private readonly forwardHigh: Float64Array;
  private readonly backwardLow: Float64Array;
  private readonly backwardHigh: Float64Array;
  private readonly widestLow: number;
  private readonly widestHigh: number;

  constructor(chamber: Chamber, horizon: number) {
    this.chamber = chamber;
    this.horizon = horizon;
    this.widestLow = Math.min(chamber.min, chamber.initial);
    this.widestHigh = Math.max(chamber.max, chamber.initial);
    this.free = new Int32Array(horizon).fill(chamber.room);
    const instants = horizon + 1;
    this.low = new Float64Array(instants).fill(this.widestLow);
    this.high = new Float64Array(instants).fill(this.widestHigh);
    this.forwardLow = new Float64Array(instants).fill(this.widestLow);
    this.forwardHigh = new Float64Array(instants).fill(this.widestHigh);
    this.backwardLow = new Float64Array(instants).fill(this.widestLow);
    this.backwardHigh = new Float64Array(instants).fill(this.widestHigh);
    this.forwardLow[0] = chamber.initial;
    this.forwardHigh[0] = chamber.initial;
    this.sweepForwards(1, instants);
  }

  /** Whether a new stay fits at [start, start + length]; otherwise the earliest later start worth a try, NEVER when there is none. */
  nextFit(from: number, length: number, low: number, high: number, room: number): number {
    let at = from;
    while (at + length <= this.horizon) {
      const next = this.blockedUntil(at, at + length, low, high, room);
      if (next === at) return at;
      at = next;
    }
    return NEVER;
  }

  /** `start` itself when the stay fits, else the earliest start that may. */
  private blockedUntil(start: number, end: number, low: number, high: number, room: number): number {
    const wanted = this.chamber.together ? this.chamber.room : room;
    for (let t = end - 1; t >= start; t--) if ((this.free[t] as number) < wanted) return t + 1;
    for (let t = end; t >= start; t--) {
      if ((this.low[t] as number) > high + EPSILON || (this.high[t] as number) < low - EPSILON) return t + 1;
    }
    return this.isReachable(start, end, low, high) ? start : start + 1;
  }

  private isReachable(start: number, end: number, low: number, high: number): boolean {
    const rise = this.chamber.riseRate;
    const fall = this.chamber.fallRate;
    let lo = Math.max(this.forwardLow[start] as number, low);
    let hi = Math.min(this.forwardHigh[start] as number, high);
    for (let t = start + 1; t <= end && lo <= hi + EPSILON; t++) {
      lo = Math.max(lo - fall, this.low[t] as number, low);
      hi = Math.min(hi + rise, this.high[t] as number, high);
    }
    if (lo > hi + EPSILON) return false;
    return Math.max(lo, this.backwardLow[end] as number) <= Math.min(hi, this.backwardHigh[end] as number) + EPSILON;
  }

  /** A load held now that a stay of this length and range may join at or after `from`; NEVER when there is none. */
  nextJoin(
    from: number,
    minLength: number,
    maxLength: number,
    low: number,
    high: number,
    room: number,
  ): { readonly at: number; readonly load: HeldStay | null } {
    let best: HeldStay | null = null;
    for (const held of this.stays) {
      const length = held.end - held.start;
      if (held.start < from || length < minLength || length > maxLength) continue;
      if (best !== null && held.start >= best.start) continue;
      if ((this.free[held.start] as number) >= room && this.maySharePath(held, low, high)) best = held;
    }
    return best === null ? { at: NEVER, load: null } : { at: best.start, load: best };
  }

  private maySharePath(held: HeldStay, low: number, high: number): boolean {
    for (let t = held.start; t <= held.end; t++) {
      if ((this.low[t] as number) > high + EPSILON || (this.high[t] as number) < low - EPSILON) return false;
    }
    return this.isReachable(held.start, held.end, low, high);
  }

  /** How many of the stays next to `start` in time ask for a state outside the range: 0, 1 or 2. */
  disruption(start: number, low: number, high: number): number {
    let before: HeldStay | null = null;
    let after: HeldStay | null = null;
    for (const held of this.stays) {
      if (held.start <= start) before = held;
      else {
        after = held;
        break;
      }
    }
    const differs = (held: HeldStay | null): number => (held !== null && (held.low > high || held.high < low) ? 1 : 0);
    return differs(before) + differs(after);
  }

  add(stay: HeldStay): void {
    let at = this.stays.length;
    while (at > 0 && (this.stays[at - 1] as HeldStay).start > stay.start) at--;
    this.stays.splice(at, 0, stay);
    for (let t = stay.start; t < stay.end; t++) this.free[t] = (this.free[t] as number) - stay.room;
    for (let t = stay.start; t <= stay.end; t++) {
      if (stay.low > (this.low[t] as number)) this.low[t] = stay.low;
      if (stay.high < (this.high[t] as number)) this.high[t] = stay.high;
    }
    this.resweep(stay);
  }

  remove(task: number): void {
    const at = this.stays.findIndex((held) => held.task === task);
    if (at < 0) throw new Error(`no stay of task ${task} in chamber ${this.chamber.id}`);
    const [stay] = this.stays.splice(at, 1) as [HeldStay];
    for (let t = stay.start; t < stay.end; t++) this.free[t] = (this.free[t] as number) + stay.room;
    for (let t = stay.start; t <= stay.end; t++) {
      this.low[t] = this.widestLow;
      this.high[t] = this.widestHigh;
    }
    for (const held of this.stays) {
      const until = Math.min(held.end, stay.end);
      for (let t = Math.max(held.start, stay.start); t <= until; t++) {
        if (held.low > (this.low[t] as number)) this.low[t] = held.low;
        if (held.high < (this.high[t] as number)) this.high[t] = held.high;
      }
    }
    this.resweep(stay);
  }

  private resweep(changed: HeldStay): void {
    this.sweepForwards(Math.max(1, changed.start), changed.end + 1);
    if (changed.start === 0) this.restart();
    this.sweepBackwards(Math.min(this.horizon - 1, changed.end), changed.start - 1);
    if (changed.end >= this.horizon) this.reend();
  }

  private restart(): void {
    this.forwardLow[0] = this.chamber.initial;
    this.forwardHigh[0] = this.chamber.initial;
    this.sweepForwards(1, this.horizon + 1);
  }

  private reend(): void {
    this.backwardLow[this.horizon] = this.low[this.horizon] as number;
    this.backwardHigh[this.horizon] = this.high[this.horizon] as number;
    this.sweepBackwards(this.horizon - 1, -1);
  }

  /** Recomputes forwards from `from`; past `settle` it stops at the first instant that does not change. */
  private sweepForwards(from: number, settle: number): void {
    const { riseRate, fallRate } = this.chamber;
    for (let t = from; t <= this.horizon; t++) {
      const lo = Math.max((this.forwardLow[t - 1] as number) - fallRate, this.low[t] as number);
      const hi = Math.min((this.forwardHigh[t - 1] as number) + riseRate, this.high[t] as number);
      if (t > settle && lo === this.forwardLow[t] && hi === this.forwardHigh[t]) return;
      this.forwardLow[t] = lo;
      this.forwardHigh[t] = hi;
    }
  }

  private sweepBackwards(from: number, settle: number): void {
    const { riseRate, fallRate } = this.chamber;
    for (let t = from; t >= 0; t--) {
      const lo = Math.max((this.backwardLow[t + 1] as number) - riseRate, this.low[t] as number);
      const hi = Math.min((this.backwardHigh[t + 1] as number) + fallRate, this.high[t] as number);
      if (t < settle && lo === this.backwardLow[t] && hi === this.backwardHigh[t]) return;
      this.backwardLow[t] = lo;
      this.backwardHigh[t] = hi;
    }
  }
}
