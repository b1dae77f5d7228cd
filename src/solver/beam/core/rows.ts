// Schedules in the making, one a row: what is placed, what the rest may still be, and what each place holds. Rows are named by their
// addresses, what stands in them by `at(row, part + i)`. Part of the beam's core.
import { at, put, words } from '../../assembly/memory';
import { burstCount, chamberCount, earliest, groupCount, latest, points, slotCount, stayCount, useCount } from './shop';

/** A slot that holds something whose end is not placed yet keeps its number as this less the number. */
export const HELD: i32 = -1;

/** How many values each half of a mark can have, in bits. */
const MARK_BITS: i64 = 26;

/** Before any time. */
const LONG_AGO: i32 = -1000000;

/** Where in a row each part begins; times come first, -1 while not placed. Slots: free from that time on, or held. */
export let low: i32 = 0;
export let high: i32 = 0;
export let slots: i32 = 0;
export let lastEnd: i32 = 0;
export let inside: i32 = 0;
export let poolOf: i32 = 0;
export let chamberOf: i32 = 0;
export let lead: i32 = 0;
export let mark: i32 = 0;
/** The latest time of a point placed by itself. */
export let now: i32 = 0;
let width: i32 = 0;
let rows: usize = 0;

/** Lays out a row for the shop there is. Returns how many numbers it has. */
export function layOutRow(): i32 {
  const groups = chamberCount * groupCount;
  low = points;
  high = 2 * points;
  slots = 3 * points;
  lastEnd = slots + slotCount;
  inside = lastEnd + groups;
  poolOf = inside + groups;
  chamberOf = poolOf + useCount;
  lead = chamberOf + stayCount;
  mark = lead + burstCount;
  now = mark + 2;
  width = now + 1;
  return width;
}

export function layRows(count: i32): void {
  rows = words(count * width);
}

export function rowAt(i: i32): usize {
  return rows + ((<usize>(i * width)) << 2);
}

/** Makes a row the empty schedule. */
export function clearRow(row: usize): void {
  for (let i = 0; i < width; i++) put(row, i, 0);
  for (let v = 0; v < points; v++) {
    put(row, v, -1);
    put(row, low + v, at(earliest, v));
    put(row, high + v, at(latest, v));
  }
  for (let i = lastEnd; i < inside; i++) put(row, i, LONG_AGO);
  for (let i = poolOf; i < mark; i++) put(row, i, -1);
}

export function copyRow(from: usize, to: usize): void {
  memory.copy(to, from, (<usize>width) << 2);
}

/** A number that rows share when the same points are placed in them. */
export function markOf(row: usize): i64 {
  return ((<i64>at(row, mark)) << MARK_BITS) | <i64>at(row, mark + 1);
}
