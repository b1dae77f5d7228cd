// Places time points one after another, in the order of their times: when a point can come at the earliest, and what placing it
// means for places, chambers and the points that hang on it. Used by the beam.
import { NO_PATH } from '../network.ts';
import type { Random } from '../random.ts';
import type { Shop, StayUse, UseOfPool } from '../shop.ts';
import { type BeamShop, NEVER } from './beamShop.ts';
import { HELD, MARKS, type Rows } from './rows.ts';

/** A point that cannot be placed before something held is let go, and one that cannot be placed any more. */
export const BLOCKED = NEVER;
export const DEAD = 2 * NEVER;

export class Placing {
  private readonly beam: BeamShop;
  private readonly shop: Shop;
  private readonly rows: Rows;
  private readonly marks: Int32Array;
  /** Per point: not before this time, whatever allows it. Set by the beam. */
  readonly notBefore: Int32Array;

  constructor(beam: BeamShop, rows: Rows, random: Random) {
    this.beam = beam;
    this.shop = beam.shop;
    this.rows = rows;
    this.notBefore = new Int32Array(beam.shop.network.variableCount);
    this.marks = Int32Array.from({ length: 2 * beam.shop.network.variableCount }, () => random.below(MARKS));
  }

  /** Earliest time of a point, its stay in the given chamber (-1: it begins none); BLOCKED or DEAD when there is none. */
  earliest(row: number, v: number, chamber: number): number {
    const { data, width, low, high } = this.rows;
    const at = row * width;
    let t = Math.max(data[at + low + v] as number, this.notBefore[v] as number);
    if (this.beam.isFree[v] === 0) t = Math.max(t, data[at + this.rows.now] as number);
    let latest = data[at + high + v] as number;
    const entry = this.shop.burstOfVar[v];
    if (entry != null) {
      const after = this.shop.burstAfter[entry.burst] as Shop['burstAfter'][number];
      const shift = after.offset - entry.offset;
      const wait = shift + (this.shop.problem.bursts[entry.burst]?.wait ?? 0);
      const end = data[at + after.variable] as number;
      if (end < 0) {
        t = Math.max(t, (data[at + low + after.variable] as number) + shift);
        latest = Math.min(latest, (data[at + high + after.variable] as number) + wait);
      } else if ((data[at + this.rows.lead + entry.burst] as number) < 0) latest = Math.min(latest, end + wait);
    }
    for (;;) {
      if (t > latest) return DEAD;
      const next = this.nextFit(at, v, chamber, t);
      if (next === t) return t;
      if (next >= BLOCKED) return BLOCKED;
      t = next;
    }
  }

  /** The time itself when the point fits then, otherwise a later one before which it does not. */
  private nextFit(at: number, v: number, chamber: number, t: number): number {
    let next = t;
    for (const u of this.beam.usesFrom[v] as Int32Array) {
      const use = this.shop.uses[u] as UseOfPool;
      let soonest = NEVER;
      for (const p of use.pools) soonest = Math.min(soonest, this.fitUse(at, use, p, next + use.fromOff));
      if (soonest >= NEVER) return BLOCKED;
      next = Math.max(next, soonest - use.fromOff);
    }
    const s = this.beam.stayFrom[v] as number;
    if (s < 0) return next;
    const { startOff } = this.shop.stays[s] as StayUse;
    const soonest = this.fitStay(at, s, chamber, next + startOff);
    return soonest >= NEVER ? BLOCKED : Math.max(next, soonest - startOff);
  }

  /** Earliest time at or after `from` at which a pool has room and hours for a use. */
  private fitUse(at: number, use: UseOfPool, p: number, from: number): number {
    const pool = this.shop.problem.pools[p] as Shop['problem']['pools'][number];
    const slot = at + this.rows.slot + (this.beam.poolSlot[p] as number);
    // What begins later than its point may follow something that will have ended by then: see take.
    const mayFollow = use.fromOff > 0;
    const free = Math.max(from, this.kthFree(at, slot, pool.capacity, use.amount, from, mayFollow ? 'use' : null));
    if (free >= NEVER) return NEVER;
    for (const [start, end] of pool.open) {
      const begin = Math.max(start, free);
      if (begin + use.minLength <= end) return begin;
    }
    return NEVER;
  }

  /** When so many of the slots are free, or sure to be free if what they hold ends as soon as it can. */
  private kthFree(at: number, slot: number, count: number, amount: number, from: number, holder: 'use' | 'stay' | null): number {
    if (amount === 1) {
      let soonest = NEVER;
      for (let k = slot; k < slot + count; k++) {
        soonest = Math.min(soonest, this.freeAt(at, k, holder));
        if (soonest <= from) return from;
      }
      return soonest;
    }
    const times: number[] = [];
    for (let k = slot; k < slot + count; k++) times.push(this.freeAt(at, k, holder));
    times.sort((a, b) => a - b);
    return times[amount - 1] ?? NEVER;
  }

  private freeAt(at: number, slot: number, holder: 'use' | 'stay' | null): number {
    const held = this.rows.data[slot] as number;
    if (held >= 0) return held;
    return holder === null ? NEVER : this.endOf(at, HELD - held, holder);
  }

  /** Earliest end of what holds a slot. */
  private endOf(at: number, holder: number, kind: 'use' | 'stay'): number {
    const { data, low } = this.rows;
    if (kind === 'use') {
      const { untilVar, untilOff } = this.shop.uses[holder] as UseOfPool;
      return (data[at + low + untilVar] as number) + untilOff;
    }
    const { endVar, endOff } = this.shop.stays[holder] as StayUse;
    return (data[at + low + endVar] as number) + endOff;
  }

  /** Earliest time at or after `from` at which a chamber has room and a state for a stay. */
  private fitStay(at: number, s: number, c: number, from: number): number {
    const { beam, rows } = this;
    const { data } = rows;
    const { groupCount } = beam;
    const g = beam.groupOf[s] as number;
    const gap = beam.gap[c] as Int32Array;
    const base = c * groupCount;
    let soonest = Math.max(from, beam.reach[c]?.[g] as number);
    for (let other = 0; other < groupCount; other++) {
      const before = gap[other * groupCount + g] as number;
      if (before === 0 && gap[g * groupCount + other] === 0) continue;
      if ((data[at + rows.inside + base + other] as number) > 0) return NEVER;
      soonest = Math.max(soonest, (data[at + rows.lastEnd + base + other] as number) + before);
    }
    const stay = this.shop.stays[s] as StayUse;
    const slot = at + rows.slot + (beam.chamberSlot[c] as number);
    const room = this.shop.problem.chambers[c]?.room ?? 0;
    return Math.max(soonest, this.kthFree(at, slot, room, stay.room, soonest, stay.startOff > 0 ? 'stay' : null));
  }

  /** Places a point at its earliest time, with what begins and ends there. False when that leads nowhere. */
  place(row: number, v: number, t: number, chamber: number): boolean {
    const { shop, rows } = this;
    const { data } = rows;
    const at = row * rows.width;
    if (t > (data[at + rows.now] as number)) data[at + rows.now] = t;
    const entry = shop.burstOfVar[v];
    if (entry != null && (data[at + rows.lead + entry.burst] as number) < 0) {
      data[at + rows.lead + entry.burst] = v;
      const after = shop.burstAfter[entry.burst] as Shop['burstAfter'][number];
      if ((data[at + after.variable] as number) < 0) {
        const end = Math.min(t + entry.offset - after.offset, data[at + rows.high + after.variable] as number);
        if (!this.put(at, after.variable, end, -1)) return false;
      }
      this.gather(at, v, t + entry.offset, entry.burst);
    }
    return this.put(at, v, t, chamber);
  }

  /** The other members of a burst begin within their time of the first. */
  private gather(at: number, first: number, start: number, b: number): void {
    const { shop, rows } = this;
    const { data } = rows;
    const burst = shop.problem.bursts[b] as Shop['problem']['bursts'][number];
    for (const { task } of burst.members) {
      const w = shop.network.startVar[task] as number;
      if (w === first || (data[at + w] as number) >= 0) continue;
      const soonest = start - (shop.burstOfVar[w]?.offset ?? 0);
      data[at + rows.low + w] = Math.max(data[at + rows.low + w] as number, soonest);
      this.cap(at, w, soonest + burst.within);
    }
  }

  private put(at: number, v: number, t: number, chamber: number): boolean {
    const { data, mark } = this.rows;
    data[at + v] = t;
    data[at + mark] = (data[at + mark] as number) ^ (this.marks[2 * v] as number);
    data[at + mark + 1] = (data[at + mark + 1] as number) ^ (this.marks[2 * v + 1] as number);
    this.letGo(at, v, t);
    for (const u of this.beam.usesFrom[v] as Int32Array) if (!this.beginUse(at, u, v, t)) return false;
    const s = this.beam.stayFrom[v] as number;
    if (s >= 0 && !this.beginStay(at, s, t, chamber)) return false;
    this.follow(at, v, t);
    return true;
  }

  /** Frees what ends at a point. */
  private letGo(at: number, v: number, t: number): void {
    const { beam, rows, shop } = this;
    const { data } = rows;
    for (const u of beam.usesUntil[v] as Int32Array) {
      const p = data[at + rows.pool + u] as number;
      const slot = at + rows.slot + (beam.poolSlot[p] as number);
      this.free(slot, shop.problem.pools[p]?.capacity ?? 0, HELD - u, t + (shop.uses[u] as UseOfPool).untilOff);
    }
    for (const s of beam.staysUntil[v] as Int32Array) {
      const c = data[at + rows.chamber + s] as number;
      const end = t + (shop.stays[s] as StayUse).endOff;
      this.free(at + rows.slot + (beam.chamberSlot[c] as number), shop.problem.chambers[c]?.room ?? 0, HELD - s, end);
      const group = c * beam.groupCount + (beam.groupOf[s] as number);
      data[at + rows.inside + group] = (data[at + rows.inside + group] as number) - 1;
      data[at + rows.lastEnd + group] = Math.max(data[at + rows.lastEnd + group] as number, end);
    }
  }

  private free(slot: number, count: number, held: number, from: number): void {
    const { data } = this.rows;
    for (let k = slot; k < slot + count; k++) if (data[k] === held) data[k] = from;
  }

  private beginUse(at: number, u: number, v: number, t: number): boolean {
    const { beam, rows, shop } = this;
    const use = shop.uses[u] as UseOfPool;
    const from = t + use.fromOff;
    let p = -1;
    for (const one of use.pools) {
      if (this.fitUse(at, use, one, from) !== from) continue;
      p = one;
      break;
    }
    if (p < 0) return false;
    const pool = shop.problem.pools[p] as Shop['problem']['pools'][number];
    rows.data[at + rows.pool + u] = p;
    const slot = at + rows.slot + (beam.poolSlot[p] as number);
    const isOpen = use.untilVar !== v;
    this.take(at, slot, pool.capacity, use.amount, from, isOpen ? HELD - u : t + use.untilOff, 'use');
    if (!isOpen) return true;
    const hours = pool.open.find(([start, end]) => start <= from && from < end);
    if (hours !== undefined) this.cap(at, use.untilVar, hours[1] - use.untilOff);
    return true;
  }

  private beginStay(at: number, s: number, t: number, c: number): boolean {
    const { beam, rows, shop } = this;
    const { data } = rows;
    const stay = shop.stays[s] as StayUse;
    const from = t + stay.startOff;
    if (this.fitStay(at, s, c, from) !== from) return false;
    data[at + rows.chamber + s] = c;
    const isOpen = stay.startVar !== stay.endVar;
    const end = t + stay.endOff;
    const slot = at + rows.slot + (beam.chamberSlot[c] as number);
    this.take(at, slot, shop.problem.chambers[c]?.room ?? 0, stay.room, from, isOpen ? HELD - s : end, 'stay');
    const group = c * beam.groupCount + (beam.groupOf[s] as number);
    if (isOpen) data[at + rows.inside + group] = (data[at + rows.inside + group] as number) + 1;
    else data[at + rows.lastEnd + group] = Math.max(data[at + rows.lastEnd + group] as number, end);
    return true;
  }

  /** Takes free slots, the last freed first, or one whose holder is then made to end in time. */
  private take(at: number, slot: number, count: number, amount: number, from: number, held: number, kind: 'use' | 'stay'): void {
    const { data } = this.rows;
    for (let a = 0; a < amount; a++) {
      let best = -1;
      for (let k = slot; k < slot + count; k++) {
        const free = data[k] as number;
        if (free >= 0 && free <= from && (best < 0 || free > (data[best] as number))) best = k;
      }
      if (best < 0) {
        best = slot;
        let soonest = NEVER;
        for (let k = slot; k < slot + count; k++) {
          if ((data[k] as number) >= 0) continue;
          const end = this.endOf(at, HELD - (data[k] as number), kind);
          if (end >= soonest) continue;
          soonest = end;
          best = k;
        }
        this.endBy(at, HELD - (data[best] as number), kind, from);
      }
      data[best] = held;
    }
  }

  private endBy(at: number, holder: number, kind: 'use' | 'stay', time: number): void {
    if (kind === 'use') {
      const { untilVar, untilOff } = this.shop.uses[holder] as UseOfPool;
      this.cap(at, untilVar, time - untilOff);
      return;
    }
    const { endVar, endOff } = this.shop.stays[holder] as StayUse;
    this.cap(at, endVar, time - endOff);
  }

  /** A point comes no later than a time, and what must come before it accordingly. */
  private cap(at: number, w: number, time: number): void {
    const { data, high } = this.rows;
    if ((data[at + high + w] as number) <= time) return;
    const { network } = this.shop;
    const c = network.component[w] as number;
    const members = network.members[c] as Int32Array;
    const matrix = network.lag[c] as Int32Array;
    const i = network.indexInComponent[w] as number;
    for (let j = 0; j < members.length; j++) {
      const x = members[j] as number;
      const lag = matrix[j * members.length + i] as number;
      if (lag === NO_PATH || (data[at + x] as number) >= 0) continue;
      if ((data[at + high + x] as number) > time - lag) data[at + high + x] = time - lag;
    }
  }

  /** Narrows the windows of the points that hang on one just placed. */
  private follow(at: number, v: number, t: number): void {
    const { data, low, high } = this.rows;
    const { network } = this.shop;
    const c = network.component[v] as number;
    const members = network.members[c] as Int32Array;
    const matrix = network.lag[c] as Int32Array;
    const n = members.length;
    const i = network.indexInComponent[v] as number;
    for (let j = 0; j < n; j++) {
      const w = members[j] as number;
      if ((data[at + w] as number) >= 0) continue;
      const after = matrix[i * n + j] as number;
      if (after !== NO_PATH && t + after > (data[at + low + w] as number)) data[at + low + w] = t + after;
      const before = matrix[j * n + i] as number;
      if (before !== NO_PATH && t - before < (data[at + high + w] as number)) data[at + high + w] = t - before;
    }
  }
}
