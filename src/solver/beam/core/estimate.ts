// What becomes of a schedule in the making: when it will end at the earliest, by the busiest pool alone, and how tight what has
// been begun is, by a rough plan of hands, chambers and places. Used to choose. Part of the beam's core.
import { at, put, words } from '../../assembly/memory';
import { Heap } from './heap';
import { Ranks } from './ranks';
import { layRoughPlan, planRoughly, roughTime } from './roughPlan';
import { high, low, slots } from './rows';
import {
  byRank,
  closedFrom,
  closedUntil,
  NEVER,
  near,
  nearLag,
  order,
  points,
  rankOf,
  serverLength,
  serverOffset,
  serverPointCount,
  serverSlot,
  tail,
} from './shop';
import { isBegun, resetTightness, weigh } from './tightness';

/** In place of the soonest time of a point that is placed. */
const NEVER_SOON: i32 = -NEVER;

/** Per point: its soonest time, NEVER_SOON once it is placed; and what is left of its work. */
let head: usize = 0;
let left: usize = 0;
/** Points not placed in the row aimed at, each after those it waits for, and those of them on the server by their heads. */
let open: usize = 0;
let openCount: i32 = 0;
let waiting: usize = 0;
let waitingCount: i32 = 0;
/** The latter in the row looked at. */
let sorted: usize = 0;
let sortedCount: i32 = 0;
let reached: i32 = 0;
let ranks: Ranks = changetype<Ranks>(0);
let heap: Heap = changetype<Heap>(0);

export function layEstimate(): void {
  head = words(points);
  left = words(points);
  open = words(points);
  waiting = words(serverPointCount);
  sorted = words(serverPointCount);
  ranks = new Ranks(serverPointCount);
  heap = new Heap(points);
  layRoughPlan();
}

/** Prepares for the rows that go on from this one by a step each. */
export function aim(row: usize): void {
  reached = 0;
  openCount = 0;
  for (let i = 0; i < points; i++) {
    const v = at(order, i);
    put(head, v, NEVER_SOON);
    const time = at(row, v);
    if (time < 0) put(open, openCount++, v);
    else reached = max(reached, time + at(tail, v));
  }
  look(row);
  let count = 0;
  for (let i = 0; i < openCount; i++) {
    const v = at(open, i);
    if (at(serverLength, v) > 0) put(waiting, count++, v);
  }
  waitingCount = count;
  sort();
  memory.copy(waiting, sorted, (<usize>count) << 2);
}

/** Least end of a row; NEVER when what is begun cannot be done in time. Sets the tightness. */
export function leastEndOf(row: usize, slack: i32): i32 {
  resetTightness(slack);
  const reachedThen = look(row);
  if (reachedThen >= NEVER) return NEVER;
  sort();
  if (!dispatch(row)) return NEVER;
  const end = max(reachedThen, leastEnd());
  planRoughly(row);
  return end;
}

/** When a point's work on the server can begin. */
function soonestWork(v: i32): i32 {
  return at(head, v) + at(serverOffset, v);
}

/** Soonest times of all points, the server not before it is free; returns the end they lead to. */
function look(row: usize): i32 {
  const free = max(0, at(row, slots + serverSlot));
  let end = reached;
  for (let i = 0; i < openCount; i++) {
    const v = at(open, i);
    let soonest = at(row, v);
    if (soonest >= 0) {
      put(head, v, NEVER_SOON);
      end = max(end, soonest + at(tail, v));
      continue;
    }
    soonest = at(row, low + v);
    for (let k = near.from(v); k < near.until(v); k++) soonest = max(soonest, at(head, near.item(k)) + at(nearLag, k));
    if (at(serverLength, v) > 0) soonest = max(soonest, free - at(serverOffset, v));
    if (soonest > at(row, high + v)) return NEVER;
    put(head, v, soonest);
    put(roughTime, v, soonest);
    end = max(end, soonest + at(tail, v));
  }
  return end;
}

/** Points of the server not placed by their soonest times, from an order that is nearly so. */
function sort(): void {
  let count = 0;
  for (let i = 0; i < waitingCount; i++) {
    const v = at(waiting, i);
    if (at(head, v) === NEVER_SOON) continue;
    const key = soonestWork(v);
    let k = count++;
    for (; k > 0; k--) {
      const w = at(sorted, k - 1);
      const other = soonestWork(w);
      if (other < key || (other === key && w < v)) break;
      put(sorted, k, w);
    }
    put(sorted, k, v);
  }
  sortedCount = count;
}

/** The end of Jackson's preemptive schedule of the server (Carlier 1982, EJOR 11) with what follows each piece of work. */
function leastEnd(): i32 {
  let hour = 0;
  let end = 0;
  let t = 0;
  let i = 0;
  ranks.clear();
  while (i < sortedCount || !ranks.isEmpty) {
    if (ranks.isEmpty) t = max(t, soonestWork(at(sorted, i)));
    let next = NEVER;
    while (i < sortedCount) {
      const v = at(sorted, i);
      next = soonestWork(v);
      if (next > t) break;
      put(left, v, at(serverLength, v));
      ranks.add(at(rankOf, v));
      next = NEVER;
      i++;
    }
    while (at(closedUntil, hour) <= t) hour++;
    if (at(closedFrom, hour) <= t) {
      t = at(closedUntil, hour);
      continue;
    }
    const v = at(byRank, ranks.first());
    const run = min(at(left, v), min(next - t, at(closedFrom, hour) - t));
    t += run;
    put(left, v, at(left, v) - run);
    if (at(left, v) > 0) continue;
    ranks.remove(at(rankOf, v));
    end = max(end, t - at(serverOffset, v) - at(serverLength, v) + at(tail, v));
  }
  return end;
}

/** What is begun on the server, the most pressing first and in pieces (Jackson 1955); false when something would be late. */
function dispatch(row: usize): bool {
  let hour = 0;
  let t = 0;
  let i = 0;
  heap.size = 0;
  while (true) {
    while (i < sortedCount && !isBegun(row, at(sorted, i))) i++;
    if (i >= sortedCount && heap.size === 0) return true;
    let next = NEVER;
    if (i < sortedCount) {
      const v = at(sorted, i);
      next = soonestWork(v);
      if (heap.size === 0 || next <= t) {
        t = max(t, next);
        put(left, v, at(serverLength, v));
        heap.push(v, at(row, high + v));
        i++;
        continue;
      }
    }
    while (at(closedUntil, hour) <= t) hour++;
    if (at(closedFrom, hour) <= t) {
      t = at(closedUntil, hour);
      continue;
    }
    const v = heap.first;
    const run = min(at(left, v), min(next - t, at(closedFrom, hour) - t));
    t += run;
    put(left, v, at(left, v) - run);
    if (at(left, v) > 0) continue;
    heap.drop();
    const begun = t - at(serverLength, v) - at(serverOffset, v);
    put(roughTime, v, max(at(roughTime, v), begun));
    if (begun > at(row, high + v)) return false;
    weigh(row, v, begun);
  }
}
