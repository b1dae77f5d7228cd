// What becomes of a schedule in the making: when it will end at the earliest, by the busiest pool alone, and how tight what has
// been begun is, by a rough plan of hands, chambers and places. Used by the beam to choose.
import { type BeamShop, NEVER } from './beamShop.ts';
import { Heap } from './heap.ts';
import { Ranks } from './ranks.ts';
import { RoughPlan } from './roughPlan.ts';
import type { Rows } from './rows.ts';
import { Tightness } from './tightness.ts';

/** In place of the soonest time of a point that is placed. */
const NEVER_SOON = -NEVER;

/** When the server is closed, with an end that is never reached. */
function closedTimes({ shop, server }: BeamShop): { closedFrom: Int32Array; closedUntil: Int32Array } {
  const { pools, horizon } = shop.problem;
  const closed: [number, number][] = [];
  let until = 0;
  for (const [from, end] of pools[server]?.open ?? []) {
    if (from > until) closed.push([until, from]);
    until = end;
  }
  if (until < horizon) closed.push([until, horizon]);
  return {
    closedFrom: Int32Array.from([...closed.map(([from]) => from), 2 * NEVER]),
    closedUntil: Int32Array.from([...closed.map(([, end]) => end), 2 * NEVER]),
  };
}

export class Estimate {
  private readonly beam: BeamShop;
  private readonly rows: Rows;
  /** Per point: its soonest time, NEVER_SOON once it is placed. */
  private readonly head: Int32Array;
  private readonly left: Int32Array;
  /** Points not placed in the row aimed at, each after those it waits for, and those of them on the server by their heads. */
  private readonly open: Int32Array;
  private openCount = 0;
  private readonly waiting: Int32Array;
  private waitingCount = 0;
  /** The latter in the row looked at. */
  private readonly sorted: Int32Array;
  private sortedCount = 0;
  private reached = 0;
  private readonly ranks: Ranks;
  private readonly heap: Heap;
  private readonly closedFrom: Int32Array;
  private readonly closedUntil: Int32Array;
  private readonly rough: RoughPlan;
  /** How tight the row last looked at is. */
  readonly tightness: Tightness;

  constructor(beam: BeamShop, rows: Rows) {
    const count = beam.shop.network.variableCount;
    this.beam = beam;
    this.rows = rows;
    this.head = new Int32Array(count);
    this.left = new Int32Array(count);
    this.open = new Int32Array(count);
    this.waiting = new Int32Array(beam.serverPoints.length);
    this.sorted = new Int32Array(beam.serverPoints.length);
    this.ranks = new Ranks(beam.serverPoints.length);
    this.heap = new Heap(count);
    this.tightness = new Tightness(beam, rows);
    this.rough = new RoughPlan(beam, rows, this.tightness);
    ({ closedFrom: this.closedFrom, closedUntil: this.closedUntil } = closedTimes(beam));
  }

  /** Prepares for the rows that go on from this one by a step each. */
  aim(row: number): void {
    const { beam, head, open, waiting } = this;
    const { data, width } = this.rows;
    const at = row * width;
    this.reached = 0;
    this.openCount = 0;
    for (let i = 0; i < beam.order.length; i++) {
      const v = beam.order[i] as number;
      head[v] = NEVER_SOON;
      const time = data[at + v] as number;
      if (time < 0) open[this.openCount++] = v;
      else if (time + (beam.tail[v] as number) > this.reached) this.reached = time + (beam.tail[v] as number);
    }
    this.look(at);
    let count = 0;
    for (let i = 0; i < this.openCount; i++) {
      const v = open[i] as number;
      if ((beam.serverLength[v] as number) > 0) waiting[count++] = v;
    }
    this.waitingCount = count;
    this.sort(waiting);
    waiting.set(this.sorted.subarray(0, count));
  }

  /** Least end of a row; NEVER when what is begun cannot be done in time. Sets `tightness`. */
  of(row: number, slack: number): number {
    const at = row * this.rows.width;
    this.tightness.reset(slack);
    const reached = this.look(at);
    if (reached >= NEVER) return NEVER;
    this.sort(this.waiting);
    if (!this.dispatch(at)) return NEVER;
    const end = Math.max(reached, this.leastEnd());
    this.rough.lay(row);
    return end;
  }

  /** Soonest times of all points, the server not before it is free; returns the end they lead to. */
  private look(at: number): number {
    const { beam, head, open, openCount } = this;
    const plan = this.rough.time;
    const { data, low, high, slot } = this.rows;
    const { nearFrom, nearPoint, nearLag, serverLength, serverOffset, tail } = beam;
    const free = Math.max(0, data[at + slot + (beam.poolSlot[beam.server] as number)] as number);
    let end = this.reached;
    for (let i = 0; i < openCount; i++) {
      const v = open[i] as number;
      let soonest = data[at + v] as number;
      if (soonest >= 0) {
        head[v] = NEVER_SOON;
        if (soonest + (tail[v] as number) > end) end = soonest + (tail[v] as number);
        continue;
      }
      soonest = data[at + low + v] as number;
      for (let k = nearFrom[v] as number; k < (nearFrom[v + 1] as number); k++) {
        const from = (head[nearPoint[k] as number] as number) + (nearLag[k] as number);
        if (from > soonest) soonest = from;
      }
      if ((serverLength[v] as number) > 0 && soonest < free - (serverOffset[v] as number))
        soonest = free - (serverOffset[v] as number);
      if (soonest > (data[at + high + v] as number)) return NEVER;
      head[v] = soonest;
      plan[v] = soonest;
      if (soonest + (tail[v] as number) > end) end = soonest + (tail[v] as number);
    }
    return end;
  }

  /** Points of the server not placed by their soonest times, from an order that is nearly so. */
  private sort(from: Int32Array): void {
    const { sorted, head, beam, waitingCount } = this;
    const { serverOffset } = beam;
    let count = 0;
    for (let i = 0; i < waitingCount; i++) {
      const v = from[i] as number;
      if (head[v] === NEVER_SOON) continue;
      const key = (head[v] as number) + (serverOffset[v] as number);
      let k = count++;
      while (k > 0) {
        const w = sorted[k - 1] as number;
        const other = (head[w] as number) + (serverOffset[w] as number);
        if (other < key || (other === key && w < v)) break;
        sorted[k] = w;
        k--;
      }
      sorted[k] = v;
    }
    this.sortedCount = count;
  }

  /** The end of Jackson's preemptive schedule of the server (Carlier 1982, EJOR 11) with what follows each piece of work. */
  private leastEnd(): number {
    const { sorted, sortedCount, head, ranks, left, beam, closedFrom, closedUntil } = this;
    const { serverLength, serverOffset, tail, rankOf, byRank } = beam;
    let hour = 0;
    let end = 0;
    let t = 0;
    let i = 0;
    ranks.clear();
    for (;;) {
      if (ranks.isEmpty) {
        if (i >= sortedCount) return end;
        const v = sorted[i] as number;
        t = Math.max(t, (head[v] as number) + (serverOffset[v] as number));
      }
      let next = NEVER;
      while (i < sortedCount) {
        const v = sorted[i] as number;
        next = (head[v] as number) + (serverOffset[v] as number);
        if (next > t) break;
        left[v] = serverLength[v] as number;
        ranks.add(rankOf[v] as number);
        next = NEVER;
        i++;
      }
      while ((closedUntil[hour] as number) <= t) hour++;
      if ((closedFrom[hour] as number) <= t) {
        t = closedUntil[hour] as number;
        continue;
      }
      const v = byRank[ranks.first()] as number;
      const run = Math.min(left[v] as number, next - t, (closedFrom[hour] as number) - t);
      t += run;
      left[v] = (left[v] as number) - run;
      if ((left[v] as number) > 0) continue;
      ranks.remove(rankOf[v] as number);
      const through = t - (serverOffset[v] as number) - (serverLength[v] as number) + (tail[v] as number);
      if (through > end) end = through;
    }
  }

  /** What is begun on the server, the most pressing first and in pieces (Jackson 1955); false when something would be late. */
  private dispatch(at: number): boolean {
    const { sorted, head, heap, left, beam } = this;
    const plan = this.rough.time;
    const { data, high } = this.rows;
    const { serverLength, serverOffset } = beam;
    const count = this.sortedCount;
    const { closedFrom, closedUntil } = this;
    let hour = 0;
    let t = 0;
    let i = 0;
    heap.size = 0;
    for (;;) {
      while (i < count && !this.tightness.isBegun(at, sorted[i] as number)) i++;
      if (i >= count && heap.size === 0) return true;
      let next = NEVER;
      if (i < count) {
        const v = sorted[i] as number;
        next = (head[v] as number) + (serverOffset[v] as number);
        if (heap.size === 0 || next <= t) {
          if (next > t) t = next;
          left[v] = serverLength[v] as number;
          heap.push(v, data[at + high + v] as number);
          i++;
          continue;
        }
      }
      while ((closedUntil[hour] as number) <= t) hour++;
      if ((closedFrom[hour] as number) <= t) {
        t = closedUntil[hour] as number;
        continue;
      }
      const v = heap.first;
      const run = Math.min(left[v] as number, next - t, (closedFrom[hour] as number) - t);
      t += run;
      left[v] = (left[v] as number) - run;
      if ((left[v] as number) > 0) continue;
      heap.drop();
      const begun = t - (serverLength[v] as number) - (serverOffset[v] as number);
      if (begun > (plan[v] as number)) plan[v] = begun;
      if (begun > (data[at + high + v] as number)) return false;
      this.tightness.weigh(at, v, begun);
    }
  }
}
