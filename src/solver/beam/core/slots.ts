// The places of pools and chambers in a schedule in the making, each a slot: free from some time on, or held by something whose end is
// not placed yet. When a use or a stay fits, and what taking and freeing slots means. Part of the beam's core.
import { at, put, words } from '../../assembly/memory';
import { HELD, high, inside, lastEnd, low, slots } from './rows';
import {
  chamberRoom,
  chamberSlot,
  gaps,
  groupCount,
  groupOf,
  indexInPart,
  lags,
  NEVER,
  partOf,
  parts,
  poolCapacity,
  poolHours,
  poolSlot,
  reach,
  slotCount,
  stayEnd,
  stayEndOff,
  stayRoom,
  stayStartOff,
  useAmount,
  useFromOff,
  useLength,
  useUntil,
  useUntilOff,
} from './shop';

/** Lag where there is no path: see network.ts. */
export const NO_PATH: i32 = -1000000000;

/** What may hold a slot; a stay or a use that begins later than its point may follow one of its kind: see take. */
export const NONE: i32 = 0;
export const USE: i32 = 1;
export const STAY: i32 = 2;

let times: usize = 0;

export function laySlots(): void {
  times = words(slotCount);
}

/** Earliest time at or after `from` at which a pool has room and hours for a use. */
export function fitUse(row: usize, u: i32, p: i32, from: i32): i32 {
  const slot = slots + at(poolSlot, p);
  const holder = at(useFromOff, u) > 0 ? USE : NONE;
  const free = max(from, kthFree(row, slot, at(poolCapacity, p), at(useAmount, u), from, holder));
  if (free >= NEVER) return NEVER;
  const length = at(useLength, u);
  for (let k = poolHours.from(p); k < poolHours.until(p); k += 2) {
    const begin = max(poolHours.item(k), free);
    if (begin + length <= poolHours.item(k + 1)) return begin;
  }
  return NEVER;
}

/** Earliest time at or after `from` at which a chamber has room and a state for a stay. */
export function fitStay(row: usize, s: i32, c: i32, from: i32): i32 {
  const g = at(groupOf, s);
  const gap = gaps.items + ((<usize>gaps.from(c)) << 2);
  const base = c * groupCount;
  let soonest = max(from, reach.item(reach.from(c) + g));
  for (let other = 0; other < groupCount; other++) {
    const before = at(gap, other * groupCount + g);
    if (before === 0 && at(gap, g * groupCount + other) === 0) continue;
    if (at(row, inside + base + other) > 0) return NEVER;
    soonest = max(soonest, at(row, lastEnd + base + other) + before);
  }
  const slot = slots + at(chamberSlot, c);
  const holder = at(stayStartOff, s) > 0 ? STAY : NONE;
  return max(soonest, kthFree(row, slot, at(chamberRoom, c), at(stayRoom, s), soonest, holder));
}

/** When so many of the slots are free, or sure to be free if what they hold ends as soon as it can. */
function kthFree(row: usize, slot: i32, count: i32, amount: i32, from: i32, holder: i32): i32 {
  if (amount === 1) {
    let soonest = NEVER;
    for (let k = slot; k < slot + count; k++) {
      soonest = min(soonest, freeAt(row, k, holder));
      if (soonest <= from) return from;
    }
    return soonest;
  }
  if (amount < 1 || amount > count) return NEVER;
  for (let k = 0; k < count; k++) {
    const time = freeAt(row, slot + k, holder);
    let i = k;
    for (; i > 0 && at(times, i - 1) > time; i--) put(times, i, at(times, i - 1));
    put(times, i, time);
  }
  return at(times, amount - 1);
}

function freeAt(row: usize, slot: i32, holder: i32): i32 {
  const held = at(row, slot);
  if (held >= 0) return held;
  return holder === NONE ? NEVER : endOf(row, HELD - held, holder);
}

/** Earliest end of what holds a slot. */
function endOf(row: usize, held: i32, holder: i32): i32 {
  if (holder === USE) return at(row, low + at(useUntil, held)) + at(useUntilOff, held);
  return at(row, low + at(stayEnd, held)) + at(stayEndOff, held);
}

/** Takes free slots, the last freed first, or one whose holder is then made to end in time. */
export function take(row: usize, slot: i32, count: i32, amount: i32, from: i32, held: i32, holder: i32): void {
  for (let a = 0; a < amount; a++) {
    let best = -1;
    for (let k = slot; k < slot + count; k++) {
      const free = at(row, k);
      if (free >= 0 && free <= from && (best < 0 || free > at(row, best))) best = k;
    }
    if (best < 0) {
      best = slot;
      let soonest = NEVER;
      for (let k = slot; k < slot + count; k++) {
        if (at(row, k) >= 0) continue;
        const end = endOf(row, HELD - at(row, k), holder);
        if (end >= soonest) continue;
        soonest = end;
        best = k;
      }
      endBy(row, HELD - at(row, best), holder, from);
    }
    put(row, best, held);
  }
}

function endBy(row: usize, held: i32, holder: i32, time: i32): void {
  if (holder === USE) cap(row, at(useUntil, held), time - at(useUntilOff, held));
  else cap(row, at(stayEnd, held), time - at(stayEndOff, held));
}

/** Frees the slots that something holds from a time on. */
export function letGo(row: usize, slot: i32, count: i32, held: i32, from: i32): void {
  for (let k = slot; k < slot + count; k++) if (at(row, k) === held) put(row, k, from);
}

/** A point comes no later than a time, and what must come before it accordingly. */
export function cap(row: usize, w: i32, time: i32): void {
  if (at(row, high + w) <= time) return;
  const c = at(partOf, w);
  const first = parts.from(c);
  const n = parts.until(c) - first;
  const lag = lags.from(c) + at(indexInPart, w);
  for (let j = 0; j < n; j++) {
    const x = parts.item(first + j);
    const ahead = lags.item(lag + j * n);
    if (ahead === NO_PATH || at(row, x) >= 0) continue;
    if (at(row, high + x) > time - ahead) put(row, high + x, time - ahead);
  }
}
