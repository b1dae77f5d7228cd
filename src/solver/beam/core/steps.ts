// One step further from the beginnings kept: every piece of work that could come next in any of them is tried, and the most promising
// are kept, one of those that have placed the same points. Part of the beam's core.
import { at, put, putReal, realAt, reals, words } from '../../assembly/memory';
import { aim, layEstimate, leastEndOf } from './estimate';
import { BLOCKED, DEAD, earliestOf, layPlacing, notBefore, place } from './placing';
import { clearRow, copyRow, layOutRow, layRows, markOf, rowAt } from './rows';
import {
  before,
  choices,
  isFollower,
  NEVER,
  points,
  readShop,
  serverLength,
  serverOffset,
  stayChambers,
  stayCount,
  stayFrom,
  tail,
  twinBefore,
} from './shop';
import { laySlots } from './slots';
import { lack, late } from './tightness';

/** A number in [0, 1). */
declare function chance(): f64;

/** Weight of what would be late. */
const LATE_WEIGHT: i32 = 4;

/** Most beginnings kept at a time. */
let most: i32 = 0;
/** Beginnings are kept for good at depths that are multiples of this; between them, only those of the last two depths. */
let every: i32 = 1;
/** Beginnings kept at each depth. */
let kept: usize = 0;
/** The row behind those that are kept for good. */
let passing: i32 = 0;
let scratch: usize = 0;
/** What can come next in the row last asked about. */
let nextPoint: usize = 0;
let nextChamber: usize = 0;
let nextTime: usize = 0;
/** Ways to go on from the rows of a depth: row, point, time, chamber, score, and what those share that have placed the same points. */
let stepCount: i32 = 0;
let stepRow: usize = 0;
let stepPoint: usize = 0;
let stepTime: usize = 0;
let stepChamber: usize = 0;
let stepScore: usize = 0;
let stepMark: usize = 0;
/** Per point that waits for none: how often it was to blame for a dead end, and when it had begun. */
let blame: usize = 0;
let begun: usize = 0;
/** Beginnings that cannot end before this time are dropped. */
let limit: i32 = NEVER;
/** Steps looked at so far. */
let looked: i32 = 0;

/**
 * Takes over a shop (see shop.ts). Beginnings are kept for good at depths that are multiples of `keptEvery`, at each depth `widest` at
 * most, and no more than `room` numbers hold. Returns how many, perhaps none: then it does nothing else.
 */
export function begin(shop: usize, widest: i32, keptEvery: i32, room: i32): i32 {
  readShop(shop);
  every = keptEvery;
  const depths = choices / every + 1;
  const rows = room / layOutRow();
  most = min(widest, (rows - 1) / (depths + 2));
  if (most < 1) return 0;
  passing = most * depths;
  layRows(passing + 2 * most + 1);
  scratch = rowAt(passing + 2 * most);
  laySlots();
  layPlacing();
  layEstimate();
  kept = words(choices + 1);
  const options = points + stayChambers.from(stayCount);
  nextPoint = words(options);
  nextChamber = words(options);
  nextTime = words(options);
  const steps = most * options;
  stepRow = words(steps);
  stepPoint = words(steps);
  stepTime = words(steps);
  stepChamber = words(steps);
  stepScore = reals(steps);
  stepMark = reals(steps);
  blame = words(points);
  begun = words(points);
  return most;
}

export function setLimit(time: i32): void {
  limit = time;
}

export function stepsLooked(): i32 {
  return looked;
}

/** Goes back to the empty schedule. */
export function clear(): void {
  clearRow(rowAt(numberOf(0)));
  put(kept, 0, 1);
  for (let v = 0; v < points; v++) {
    put(notBefore, v, 0);
    put(blame, v, 0);
  }
}

/** Number of the first row of a depth. */
function numberOf(depth: i32): i32 {
  return depth % every === 0 ? most * (depth / every) : passing + most * (depth & 1);
}

/** Where the most promising beginning of a depth is: times of all points, and more (see rows.ts). */
export function bestRow(depth: i32): usize {
  return rowAt(numberOf(depth));
}

/** When the most promising of a depth, in which every point is placed, ends. */
export function endOf(depth: i32): i32 {
  const row = bestRow(depth);
  let end = 0;
  for (let v = 0; v < points; v++) end = max(end, at(row, v) + at(tail, v));
  return end;
}

/** Goes a point further from the beginnings of a depth, of which as many as `width` are kept. False where none leads on. */
export function goOn(depth: i32, width: i32, noise: f64, slack: i32, lackWeight: f64): bool {
  // Counted even where none can be taken, so that whoever counts steps comes to an end.
  looked++;
  stepCount = 0;
  for (let i = 0; i < at(kept, depth); i++) expand(numberOf(depth) + i, noise, slack, lackWeight);
  if (stepCount === 0) return false;
  keep(depth + 1, width);
  return true;
}

/** Keeps the best steps, one of those that have placed the same points. */
function keep(depth: i32, width: i32): void {
  const first = numberOf(depth);
  let count = 0;
  while (count < width) {
    const step = bestStep();
    if (step < 0) break;
    const row = rowAt(first + count++);
    copyRow(rowAt(at(stepRow, step)), row);
    place(row, at(stepPoint, step), at(stepTime, step), at(stepChamber, step));
    dropLike(load<i64>(stepMark + ((<usize>step) << 3)));
  }
  put(kept, depth, count);
}

/** The step with the least score, the soonest and first of equals; -1: none is left. */
function bestStep(): i32 {
  let best = -1;
  for (let i = 0; i < stepCount; i++) {
    if (best >= 0) {
      const score = realAt(stepScore, i);
      const least = realAt(stepScore, best);
      if (score > least || (score === least && at(stepTime, i) >= at(stepTime, best))) continue;
    }
    best = i;
  }
  return best;
}

/** Drops the steps of a mark; the others keep their order. */
function dropLike(mark: i64): void {
  let count = 0;
  for (let i = 0; i < stepCount; i++) {
    const other = load<i64>(stepMark + ((<usize>i) << 3));
    if (other === mark) continue;
    put(stepRow, count, at(stepRow, i));
    put(stepPoint, count, at(stepPoint, i));
    put(stepTime, count, at(stepTime, i));
    put(stepChamber, count, at(stepChamber, i));
    putReal(stepScore, count, realAt(stepScore, i));
    store<i64>(stepMark + ((<usize>count) << 3), other);
    count++;
  }
  stepCount = count;
}

/** Adds the ways to go on from a row. */
function expand(number: i32, noise: f64, slack: i32, lackWeight: f64): void {
  const row = rowAt(number);
  const count = lookAhead(row);
  if (count === 0) return;
  const until = soonestEnd(count);
  aim(row);
  for (let i = 0; i < count; i++) {
    const v = at(nextPoint, i);
    const time = at(nextTime, i);
    const chamber = at(nextChamber, i);
    if (time >= until) continue;
    looked++;
    copyRow(row, scratch);
    if (!place(scratch, v, time, chamber)) continue;
    const end = leastEndOf(scratch, slack);
    if (end >= limit || end >= NEVER) continue;
    const pressure = <f64>(LATE_WEIGHT * late) + lackWeight * <f64>lack;
    const step = stepCount++;
    put(stepRow, step, number);
    put(stepPoint, step, v);
    put(stepTime, step, time);
    put(stepChamber, step, chamber);
    putReal(stepScore, step, <f64>end + pressure + noise * chance());
    store<i64>(stepMark + ((<usize>step) << 3), markOf(scratch));
  }
}

/** When the first of the next pieces of work could have ended: what begins later would only come after it. */
function soonestEnd(count: i32): i32 {
  let first = NEVER;
  let end = NEVER;
  for (let i = 0; i < count; i++) {
    const v = at(nextPoint, i);
    const time = at(nextTime, i);
    const length = at(serverLength, v);
    first = min(first, time);
    if (length > 0) end = min(end, time + at(serverOffset, v) + length);
  }
  return max(first + 1, end);
}

/** Notes which points can come next in a row, and when; returns how many, 0 when some point can come no more. */
function lookAhead(row: usize): i32 {
  let count = 0;
  for (let v = 0; v < points; v++) {
    if (at(row, v) >= 0 || at(isFollower, v) === 1 || !isNext(row, v)) continue;
    const s = at(stayFrom, v);
    const from = s < 0 ? 0 : stayChambers.from(s);
    const until = s < 0 ? 1 : stayChambers.until(s);
    let isAlive = false;
    for (let k = from; k < until; k++) {
      const chamber = s < 0 ? -1 : stayChambers.item(k);
      const time = earliestOf(row, v, chamber);
      if (time < DEAD) isAlive = true;
      if (time >= BLOCKED) continue;
      put(nextPoint, count, v);
      put(nextChamber, count, chamber);
      put(nextTime, count, time);
      count++;
    }
    if (isAlive) continue;
    accuse(row, v);
    return 0;
  }
  return count;
}

/** Whether all that a point waits for is placed. */
function isNext(row: usize, v: i32): bool {
  const twin = at(twinBefore, v);
  if (twin >= 0 && at(row, twin) < 0) return false;
  for (let k = before.from(v); k < before.until(v); k++) if (at(row, before.item(k)) < 0) return false;
  return true;
}

/** Blames the first of the points a dead one waited for: it began too soon. */
function accuse(row: usize, v: i32): void {
  let first = v;
  for (let k = before.from(v); k < before.until(v); k++) {
    const u = before.item(k);
    if (before.from(u) !== before.until(u)) continue;
    first = u;
    break;
  }
  put(blame, first, at(blame, first) + 1);
  put(begun, first, max(0, at(row, first)));
}

/** What was to blame most often waits so much longer from now on. */
export function delay(later: i32): void {
  let most = 0;
  for (let v = 1; v < points; v++) if (at(blame, v) > at(blame, most)) most = v;
  if (at(blame, most) > 0) put(notBefore, most, max(at(notBefore, most), at(begun, most)) + later);
  for (let v = 0; v < points; v++) put(blame, v, 0);
}
