// Work that must happen between two times against the capacity open between them: too much is a contradiction. Where one use
// fills the capacity, a use that cannot come before the rest of such a set comes after it, and the other way round (edge
// finding: Carlier and Pinson 1989, Management Science 35; overload checking for capacities: Baptiste, Le Pape and Nuijten
// 2001, Constraint-Based Scheduling, chapter 3). Slower than the profile; used where floors are proved.
import { type Bounds, BY_NOTE, NO_SIDE } from './bounds.ts';
import type { CrowdUse } from './crowd.ts';
import type { Watched } from './engine.ts';
import { Wakes } from './wakes.ts';

/** Above so many uses the pairs of times are too many. */
export const MOST_ENERGY_USES = 130;
const MOST_EDGE_USES = 48;

export class Energy {
  readonly isSlow = true;
  readonly wakes = new Wakes(1);
  readonly watched: readonly Watched[];
  private readonly bounds: Bounds;
  private readonly uses: readonly CrowdUse[];
  private readonly count: number;
  /** Capacity of [0, t). */
  private readonly open: Float64Array;
  private readonly isOneByOne: boolean;
  private readonly from: Int32Array;
  private readonly fromOff: Int32Array;
  private readonly until: Int32Array;
  private readonly untilOff: Int32Array;
  private readonly ifSide: Int32Array;
  private readonly ifLow: Int32Array;
  /** Windows of the uses, as of now, and their work. */
  private readonly start: Int32Array;
  private readonly end: Int32Array;
  private readonly work: Int32Array;
  /** All uses by the end of their windows; those that are certain in the same order. */
  private readonly order: Int32Array;
  private readonly byEnd: Int32Array;
  private sure = 0;

  constructor(bounds: Bounds, capacity: Int32Array, uses: readonly CrowdUse[]) {
    this.bounds = bounds;
    this.uses = uses.filter((use) => use.length > 0);
    this.count = this.uses.length;
    this.open = new Float64Array(capacity.length + 1);
    for (let t = 0; t < capacity.length; t++) this.open[t + 1] = (this.open[t] as number) + (capacity[t] as number);
    const most = capacity.reduce((a, b) => Math.max(a, b), 0);
    this.isOneByOne = most === 1 && this.count <= MOST_EDGE_USES;
    this.from = Int32Array.from(this.uses, (use) => 2 * use.from);
    this.fromOff = Int32Array.from(this.uses, (use) => use.fromOff);
    this.until = Int32Array.from(this.uses, (use) => 2 * use.until + 1);
    this.untilOff = Int32Array.from(this.uses, (use) => use.untilOff);
    this.ifSide = Int32Array.from(this.uses, (use) => use.condition?.side ?? NO_SIDE);
    this.ifLow = Int32Array.from(this.uses, (use) => use.condition?.low ?? 0);
    this.start = new Int32Array(this.count);
    this.end = new Int32Array(this.count);
    this.work = Int32Array.from(this.uses, (use) => use.length * use.amount);
    this.order = Int32Array.from(this.uses, (_, i) => i);
    this.byEnd = new Int32Array(this.count);
    const sides = this.uses.flatMap(({ from, until, condition }) => [
      2 * from,
      2 * until + 1,
      ...(condition === null ? [] : [condition.side]),
    ]);
    this.watched = [...new Set(sides)].map((side) => ({ side, item: 0 }));
  }

  propagate(): boolean {
    this.wakes.clear();
    this.read();
    return this.sweep();
  }

  /** Reads the windows, and sorts the uses by their ends: they stand nearly in order from the time before. */
  private read(): void {
    const { low } = this.bounds;
    const { order, start, end, byEnd, ifSide } = this;
    for (let i = 0; i < this.count; i++) {
      start[i] = (low[this.from[i] as number] as number) + (this.fromOff[i] as number);
      end[i] = (this.untilOff[i] as number) - (low[this.until[i] as number] as number);
    }
    for (let k = 1; k < this.count; k++) {
      const i = order[k] as number;
      const e = end[i] as number;
      let at = k;
      while (at > 0 && (end[order[at - 1] as number] as number) > e) {
        order[at] = order[at - 1] as number;
        at--;
      }
      order[at] = i;
    }
    let sure = 0;
    for (let k = 0; k < this.count; k++) {
      const i = order[k] as number;
      const side = ifSide[i] as number;
      if (side === NO_SIDE || (low[side] as number) >= (this.ifLow[i] as number)) byEnd[sure++] = i;
    }
    this.sure = sure;
  }

  /** For each begin, the work that lies after it, end by end. */
  private sweep(): boolean {
    const { start, end, work, byEnd, open, sure } = this;
    for (let k = 0; k < sure; k++) {
      const a = start[byEnd[k] as number] as number;
      let total = 0;
      for (let m = 0; m < sure; m++) {
        const j = byEnd[m] as number;
        if ((start[j] as number) < a) continue;
        total += work[j] as number;
        const b = end[j] as number;
        if (m + 1 < sure && end[byEnd[m + 1] as number] === b) continue;
        const slack = (open[b] as number) - (open[a] as number) - total;
        if (slack < 0) return this.overload(a, b, -slack);
        if (this.isOneByOne && !this.orderAround(a, b, m, total, slack)) return false;
      }
    }
    return true;
  }

  /** Notes the uses that lie within [a, b); as many are left out as the excess allows. */
  private overload(a: number, b: number, excess: number): false {
    const note = this.bounds.beginNote();
    let spare = excess - 1;
    for (let m = 0; m < this.sure; m++) {
      const j = this.byEnd[m] as number;
      if ((this.start[j] as number) < a || (this.end[j] as number) > b) continue;
      const work = this.work[j] as number;
      if (work <= spare) spare -= work;
      else this.noteWithin(note, j, a, b);
    }
    return this.bounds.contradict(note);
  }

  private noteWithin(note: number, j: number, a: number, b: number): void {
    const use = this.uses[j] as CrowdUse;
    this.bounds.note(note, 2 * use.from, a - use.fromOff);
    this.bounds.note(note, 2 * use.until + 1, use.untilOff - b);
    if (use.condition !== null) this.bounds.note(note, use.condition.side, use.condition.low);
  }

  /** Where uses go one by one: whoever does not fit into [a, b) beside the set there comes after it, or before it. */
  private orderAround(a: number, b: number, last: number, total: number, slack: number): boolean {
    const { start, end, work, byEnd, sure } = this;
    for (let m = 0; m < sure; m++) {
      const i = byEnd[m] as number;
      if ((work[i] as number) <= slack) continue;
      if (m > last && (start[i] as number) >= a && (end[i] as number) > b && (start[i] as number) < a + total) {
        if (!this.push(i, a, b, true, a + total)) return false;
      } else if ((end[i] as number) <= b && (start[i] as number) < a && (end[i] as number) > b - total) {
        if (!this.push(i, a, b, false, b - total)) return false;
      }
    }
    return true;
  }

  /** Use i begins no earlier (or ends no later) than `limit`. */
  private push(i: number, a: number, b: number, isAfter: boolean, limit: number): boolean {
    const use = this.uses[i] as CrowdUse;
    const note = this.bounds.beginNote();
    for (let m = 0; m < this.sure; m++) {
      const j = this.byEnd[m] as number;
      if (j !== i && (this.start[j] as number) >= a && (this.end[j] as number) <= b) this.noteWithin(note, j, a, b);
    }
    if (use.condition !== null) this.bounds.note(note, use.condition.side, use.condition.low);
    if (isAfter) {
      this.bounds.note(note, 2 * use.from, a - use.fromOff);
      return this.bounds.raise(2 * use.from, limit - use.fromOff, (note << 2) | BY_NOTE);
    }
    this.bounds.note(note, 2 * use.until + 1, use.untilOff - b);
    return this.bounds.raise(2 * use.until + 1, use.untilOff - limit, (note << 2) | BY_NOTE);
  }
}
