// A rough plan of what is begun in a schedule in the making: its stays in chambers, then its uses of pools, each where it can
// begin soonest. Says how tight that is. Used by the estimate. Part of the beam's core.
import { at, put, words } from '../../assembly/memory';
import { HELD, high, inside, lastEnd, low, slots } from './rows';
import {
  chamberCount,
  chamberRoom,
  chamberSlot,
  gaps,
  groupCount,
  groupOf,
  NEVER,
  points,
  poolCapacity,
  poolCount,
  poolSlot,
  reach,
  slotCount,
  stayChambers,
  stayCount,
  stayEnd,
  stayEndOff,
  stayLength,
  stayStart,
  stayStartOff,
  useCount,
  useFrom,
  useFromOff,
  useLength,
  usesOfPool,
  useUntil,
  useUntilOff,
} from './shop';
import { isBegun, weigh } from './tightness';

/** Per point: roughly when it will come, at first by what the server alone allows. */
export let roughTime: usize = 0;
let slotFree: usize = 0;
let listed: usize = 0;
/** Per chamber: the group it held last, or -1. */
let lastGroup: usize = 0;
/** Where the stay last asked about begins, and in which chamber. */
let begin: i32 = 0;
let chosen: i32 = 0;

export function layRoughPlan(): void {
  roughTime = words(points);
  // One more: a pool may have no place at all.
  slotFree = words(slotCount + 1);
  listed = words(max(useCount, stayCount));
  lastGroup = words(chamberCount);
}

/** Plans a row, from the times there are, and weighs what comes of it. */
export function planRoughly(row: usize): void {
  planStays(row);
  for (let p = 0; p < poolCount; p++) {
    const count = listUses(row, p);
    if (count > 0) planPool(row, p, count);
  }
}

/** Stays begun, by their latest beginnings, each in turn in the chamber where it can begin soonest. */
function planStays(row: usize): void {
  const count = listStays(row);
  if (count === 0) return;
  seeChambers(row);
  for (let i = 0; i < count; i++) {
    const s = at(listed, i);
    const first = at(stayStart, s);
    const slot = soonestSlot(s, at(roughTime, first) + at(stayStartOff, s));
    if (slot < 0) continue;
    put(slotFree, slot, begin + at(stayLength, s));
    put(lastGroup, chosen, at(groupOf, s));
    put(roughTime, first, begin - at(stayStartOff, s));
    const end = begin + at(stayLength, s) - at(stayEndOff, s);
    if (end > at(roughTime, at(stayEnd, s))) put(roughTime, at(stayEnd, s), end);
    weigh(row, first, begin - at(stayStartOff, s));
  }
}

function listStays(row: usize): i32 {
  let count = 0;
  for (let s = 0; s < stayCount; s++) {
    const v = at(stayStart, s);
    if (!isBegun(row, v)) continue;
    const due = at(row, high + v);
    let k = count++;
    for (; k > 0 && at(row, high + at(stayStart, at(listed, k - 1))) > due; k--) put(listed, k, at(listed, k - 1));
    put(listed, k, s);
  }
  return count;
}

/** The slot in which a stay can begin soonest; sets `begin` and `chosen`, its chamber. */
function soonestSlot(s: i32, from: i32): i32 {
  const g = at(groupOf, s);
  let found = -1;
  begin = NEVER;
  for (let k = stayChambers.from(s); k < stayChambers.until(s); k++) {
    const c = stayChambers.item(k);
    const slot = at(chamberSlot, c);
    const end = slot + at(chamberRoom, c);
    const gap = gapBefore(c, g);
    const least = max(from, reach.item(reach.from(c) + g));
    // After a change of state all slots wait for the last to be free.
    let all = 0;
    if (gap > 0) for (let i = slot; i < end; i++) all = max(all, at(slotFree, i) + gap);
    for (let i = slot; i < end; i++) {
      const soonest = max(least, gap > 0 ? all : at(slotFree, i));
      if (soonest >= begin) continue;
      begin = soonest;
      chosen = c;
      found = i;
    }
  }
  if (found >= 0 && gapBefore(chosen, g) !== 0) {
    const slot = at(chamberSlot, chosen);
    for (let i = slot; i < slot + at(chamberRoom, chosen); i++) put(slotFree, i, max(at(slotFree, i), begin));
  }
  return found;
}

/** Time a chamber needs after what it held last before a stay of a group. */
function gapBefore(c: i32, g: i32): i32 {
  const last = at(lastGroup, c);
  return last < 0 ? 0 : gaps.item(gaps.from(c) + last * groupCount + g);
}

/** When each chamber's slots are free, and the group it held last. */
function seeChambers(row: usize): void {
  for (let c = 0; c < chamberCount; c++) {
    const base = c * groupCount;
    let last = -1;
    let latest = -1;
    for (let g = 0; g < groupCount; g++) {
      const end = at(row, inside + base + g) > 0 ? NEVER : at(row, lastEnd + base + g);
      if (end <= latest) continue;
      latest = end;
      last = g;
    }
    put(lastGroup, c, last);
    const slot = at(chamberSlot, c);
    for (let k = slot; k < slot + at(chamberRoom, c); k++) {
      const held = at(row, slots + k);
      const s = HELD - held;
      put(slotFree, k, held >= 0 ? held : at(row, low + at(stayEnd, s)) + at(stayEndOff, s));
    }
  }
}

/** Lists the uses begun of a pool in the order in which they come. */
function listUses(row: usize, p: i32): i32 {
  let count = 0;
  for (let i = usesOfPool.from(p); i < usesOfPool.until(p); i++) {
    const u = usesOfPool.item(i);
    const v = at(useFrom, u);
    if (!isBegun(row, v)) continue;
    const time = at(roughTime, v);
    let k = count++;
    for (; k > 0 && at(roughTime, at(useFrom, at(listed, k - 1))) > time; k--) put(listed, k, at(listed, k - 1));
    put(listed, k, u);
  }
  return count;
}

function planPool(row: usize, p: i32, count: i32): void {
  const slot = at(poolSlot, p);
  const end = slot + at(poolCapacity, p);
  for (let k = slot; k < end; k++) {
    const held = at(row, slots + k);
    let free = held;
    if (held < 0) {
      const until = at(useUntil, HELD - held);
      free = max(at(roughTime, until), at(row, low + until)) + at(useUntilOff, HELD - held);
    }
    put(slotFree, k, free);
  }
  for (let i = 0; i < count; i++) {
    const u = at(listed, i);
    const first = at(useFrom, u);
    const from = at(roughTime, first) + at(useFromOff, u);
    let best = slot;
    for (let k = slot + 1; k < end; k++) if (max(from, at(slotFree, k)) < max(from, at(slotFree, best))) best = k;
    const soonest = max(from, at(slotFree, best));
    const until = at(useUntil, u);
    put(slotFree, best, max(soonest + at(useLength, u), first !== until ? at(roughTime, until) + at(useUntilOff, u) : 0));
    weigh(row, first, soonest - at(useFromOff, u));
  }
}
