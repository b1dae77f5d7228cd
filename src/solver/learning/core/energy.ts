// Work that must happen between two times against the capacity open between them: too much is a contradiction. Where one use
// fills the capacity, a use that cannot come before the rest of such a set comes after it, and the other way round (edge
// finding: Carlier and Pinson 1989, Management Science 35; overload checking for capacities: Baptiste, Le Pape and Nuijten
// 2001, Constraint-Based Scheduling, chapter 3). Slower than the profile; used where floors are proved. Part of the learning core.

import { at, put, words } from '../../assembly/memory';
import { BY_NOTE, beginNote, contradict, low, NO_SIDE, note, raise } from './bounds';
import { Propagator } from './propagator';
import { AMOUNT, FROM, FROM_OFF, IF_LOW, IF_SIDE, LENGTH, Reach, UNTIL, UNTIL_OFF, USE } from './uses';

/** Above so many uses they are not ordered. */
const MOST_EDGE_USES: i32 = 48;

export class Energy extends Propagator {
  private readonly count: i32;
  /** Capacity before instant t. */
  private readonly open: usize;
  private readonly isOneByOne: bool;
  private readonly from: usize;
  private readonly fromOff: usize;
  private readonly until: usize;
  private readonly untilOff: usize;
  private readonly ifSide: usize;
  private readonly ifLow: usize;
  /** Windows of the uses, as of now, and their work. */
  private readonly start: usize;
  private readonly end: usize;
  private readonly work: usize;
  /** All uses by the end of their windows; those that are certain in the same order. */
  private readonly order: usize;
  private readonly byEnd: usize;
  private sure: i32 = 0;
  /** The most work of one of them. */
  private largest: i32 = 0;
  /** Of those that are certain, in that order: begin, end and work, and the capacity before the end. */
  private readonly begins: usize;
  private readonly ends: usize;
  private readonly works: usize;
  private readonly openAtEnd: usize;
  /** Per instant: in which sweep it was last a begin. */
  private readonly sweptIn: usize;
  private sweeps: i32 = 0;

  /** As a crowd's; uses without length do not count. */
  constructor(capacity: usize, instants: i32, uses: usize, all: i32) {
    super(true, 1);
    this.from = words(all);
    this.fromOff = words(all);
    this.until = words(all);
    this.untilOff = words(all);
    this.ifSide = words(all);
    this.ifLow = words(all);
    this.work = words(all);
    let count = 0;
    for (let i = 0; i < all; i++) {
      const length = at(uses, USE * i + LENGTH);
      if (length <= 0) continue;
      put(this.from, count, 2 * at(uses, USE * i + FROM));
      put(this.fromOff, count, at(uses, USE * i + FROM_OFF));
      put(this.until, count, 2 * at(uses, USE * i + UNTIL) + 1);
      put(this.untilOff, count, at(uses, USE * i + UNTIL_OFF));
      put(this.ifSide, count, at(uses, USE * i + IF_SIDE));
      put(this.ifLow, count, at(uses, USE * i + IF_LOW));
      put(this.work, count, length * at(uses, USE * i + AMOUNT));
      count++;
    }
    this.count = count;
    let most = 0;
    for (let t = 0; t < instants; t++) most = max(most, at(capacity, t));
    const reach = new Reach(uses, all, instants);
    this.open = reach.room();
    for (let t = reach.first; t < reach.end; t++) {
      const now = t >= 0 && t < instants ? at(capacity, t) : 0;
      put(this.open, t + 1, at(this.open, t) + now);
    }
    this.isOneByOne = most === 1 && count <= MOST_EDGE_USES;
    this.start = words(count);
    this.end = words(count);
    this.order = words(count);
    this.byEnd = words(count);
    // They are read four at a time.
    this.begins = words(count + 3);
    this.ends = words(count + 3);
    this.works = words(count + 3);
    this.openAtEnd = words(count + 3);
    this.sweptIn = reach.room();
    for (let i = 0; i < count; i++) {
      put(this.order, i, i);
      this.watchWhole(at(this.from, i));
      this.watchWhole(at(this.until, i));
      if (at(this.ifSide, i) !== NO_SIDE) this.watchWhole(at(this.ifSide, i));
    }
  }

  propagate(): bool {
    this.clearWakes();
    this.read();
    return this.sweep();
  }

  /** Reads the windows, and sorts the uses by their ends: they stand nearly in order from the time before. */
  private read(): void {
    const count = this.count;
    const order = this.order;
    const end = this.end;
    for (let i = 0; i < count; i++) {
      put(this.start, i, at(low, at(this.from, i)) + at(this.fromOff, i));
      put(end, i, at(this.untilOff, i) - at(low, at(this.until, i)));
    }
    for (let k = 1; k < count; k++) {
      const i = at(order, k);
      const e = at(end, i);
      let here = k;
      while (here > 0 && at(end, at(order, here - 1)) > e) {
        put(order, here, at(order, here - 1));
        here--;
      }
      put(order, here, i);
    }
    let sure = 0;
    let largest = 0;
    for (let k = 0; k < count; k++) {
      const i = at(order, k);
      const side = at(this.ifSide, i);
      if (side !== NO_SIDE && at(low, side) < at(this.ifLow, i)) continue;
      put(this.byEnd, sure, i);
      put(this.begins, sure, at(this.start, i));
      put(this.ends, sure, at(end, i));
      put(this.works, sure, at(this.work, i));
      put(this.openAtEnd, sure, at(this.open, at(end, i)));
      largest = max(largest, at(this.work, i));
      sure++;
    }
    this.sure = sure;
    this.largest = largest;
    // What fills the last four up counts as before every begin.
    for (let k = sure; k < sure + 3; k++) put(this.begins, k, i32.MIN_VALUE);
  }

  /** For each begin, the work that lies after it, end by end. */
  private sweep(): bool {
    const begins = this.begins;
    const works = this.works;
    const openAtEnd = this.openAtEnd;
    const none = i32x4.splat(0);
    const sure = this.sure;
    // Where nothing can go on there is more slack than this.
    const tight = i32x4.splat(this.isOneByOne ? this.largest : 0);
    this.sweeps++;
    for (let k = 0; k < sure; k++) {
      const a = at(begins, k);
      if (at(this.sweptIn, a) === this.sweeps) continue;
      put(this.sweptIn, a, this.sweeps);
      const begin = i32x4.splat(a);
      // What is open after it, less the work so far.
      let open = -at(this.open, a);
      for (let m = 0; m < sure; m += 4) {
        const offset = (<usize>m) << 2;
        const isWithin = i32x4.ge_s(v128.load(begins + offset), begin);
        let used = v128.and(v128.load(works + offset), isWithin);
        used = i32x4.add(used, v128.shuffle<i32>(none, used, 0, 4, 5, 6));
        used = i32x4.add(used, v128.shuffle<i32>(none, used, 0, 1, 4, 5));
        const slack = i32x4.add(v128.load(openAtEnd + offset), i32x4.sub(i32x4.splat(open), used));
        if (v128.any_true(v128.and(i32x4.lt_s(slack, tight), isWithin)) && !this.look(a, m, open)) return false;
        open -= i32x4.extract_lane(used, 3);
      }
    }
    return true;
  }

  /** Looks at four ends, from the one at `from` on, after begin `a`; `before`: what is open after it, less the work before these. */
  private look(a: i32, from: i32, before: i32): bool {
    const sure = this.sure;
    let open = before;
    for (let m = from; m < min(from + 4, sure); m++) {
      if (at(this.begins, m) < a) continue;
      open -= at(this.works, m);
      const b = at(this.ends, m);
      if (m + 1 < sure && at(this.ends, m + 1) === b) continue;
      const slack = at(this.openAtEnd, m) + open;
      if (slack < 0) return this.overload(a, b, -slack);
      if (this.isOneByOne && slack < this.largest && !this.orderAround(a, b, m, -at(this.open, a) - open, slack)) return false;
    }
    return true;
  }

  /** Notes the uses that lie within [a, b); as many are left out as the excess allows. */
  private overload(a: i32, b: i32, excess: i32): bool {
    const begun = beginNote();
    let spare = excess - 1;
    for (let m = 0; m < this.sure; m++) {
      const j = at(this.byEnd, m);
      if (at(this.start, j) < a || at(this.end, j) > b) continue;
      const work = at(this.work, j);
      if (work <= spare) spare -= work;
      else this.noteWithin(begun, j, a, b);
    }
    return contradict(begun);
  }

  private noteWithin(begun: i32, j: i32, a: i32, b: i32): void {
    note(begun, at(this.from, j), a - at(this.fromOff, j));
    note(begun, at(this.until, j), at(this.untilOff, j) - b);
    this.noteSure(begun, j);
  }

  private noteSure(begun: i32, j: i32): void {
    if (at(this.ifSide, j) !== NO_SIDE) note(begun, at(this.ifSide, j), at(this.ifLow, j));
  }

  /** Where uses go one by one: whoever does not fit into [a, b) beside the set there comes after it, or before it. */
  private orderAround(a: i32, b: i32, last: i32, total: i32, slack: i32): bool {
    const start = this.start;
    const end = this.end;
    const sure = this.sure;
    for (let m = 0; m < sure; m++) {
      const i = at(this.byEnd, m);
      if (at(this.work, i) <= slack) continue;
      if (m > last && at(start, i) >= a && at(end, i) > b && at(start, i) < a + total) {
        if (!this.push(i, a, b, true, a + total)) return false;
      } else if (at(end, i) <= b && at(start, i) < a && at(end, i) > b - total) {
        if (!this.push(i, a, b, false, b - total)) return false;
      }
    }
    return true;
  }

  /** Use i begins no earlier (or ends no later) than `limit`. */
  private push(i: i32, a: i32, b: i32, isAfter: bool, limit: i32): bool {
    const begun = beginNote();
    for (let m = 0; m < this.sure; m++) {
      const j = at(this.byEnd, m);
      if (j !== i && at(this.start, j) >= a && at(this.end, j) <= b) this.noteWithin(begun, j, a, b);
    }
    this.noteSure(begun, i);
    if (isAfter) {
      note(begun, at(this.from, i), a - at(this.fromOff, i));
      return raise(at(this.from, i), limit - at(this.fromOff, i), (begun << 2) | BY_NOTE);
    }
    note(begun, at(this.until, i), at(this.untilOff, i) - b);
    return raise(at(this.until, i), at(this.untilOff, i) - limit, (begun << 2) | BY_NOTE);
  }
}
