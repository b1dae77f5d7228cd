// Arcs on a condition that lead from one side to most others, such as the orders of one pair of hands: laid side by side, a cell for
// each variable, so that four are looked at at once. A row says which of its arcs may have something to do; what they do is the
// business of arcs.ts. Part of the learning core.
import { at, put, words } from '../../assembly/memory';
import { leastOf, low, mostOf, NO_SIDE } from './bounds';

/** A row has so many arcs at least, one in so many of its cells at least. */
const LEAST_ARCS: i32 = 32;
const MOST_CELLS_PER_ARC: i32 = 2;

/** Lags and bounds of arcs in rows are nearer to 0 than this. */
const NEAR: i32 = 100_000_000;
/** A lag that asks for nothing. */
const NONE: i32 = -1_000_000_000;

/**
 * Four cells stand together: four lags of arcs that hold, four of arcs that hold or may, NONE where there is no such arc, and the
 * numbers of the four arcs, -1 where there is none. In bytes.
 */
export const FOUR: usize = 48;
/** Bytes of the bounds of four variables. */
export const BOUNDS_OF_FOUR: usize = 32;
const OPEN: usize = 16;
const ARC: usize = 32;

/** Of each side: where its row is, 0: nowhere, the variable of its first cell, and how many fours there are. */
let rows: usize = 0;
let firsts: usize = 0;
let lengths: usize = 0;

export function beginRows(sides: i32): void {
  rows = words(sides);
  firsts = words(sides);
  lengths = words(sides);
}

/** Whether an arc may stand in a row: its condition is a choice between yes and no, and no sum of its numbers runs over. */
export function fitsRow(from: i32, to: i32, lag: i32, ifSide: i32, ifLow: i32): bool {
  if (ifSide === NO_SIDE || from === to || abs(lag) >= NEAR || !isNear(from >> 1) || !isNear(to >> 1)) return false;
  return leastOf(ifSide >> 1) === 0 && mostOf(ifSide >> 1) === 1 && ifLow === 1 - (ifSide & 1);
}

function isNear(variable: i32): bool {
  return leastOf(variable) > -NEAR && mostOf(variable) < NEAR;
}

/** Whether so many arcs, from one side to variables `least` to `most`, are worth a row. */
export function isWorthARow(arcs: i32, least: i32, most: i32): bool {
  return arcs >= LEAST_ARCS && arcs * MOST_CELLS_PER_ARC >= most - least + 1;
}

/** Lays an empty row out from a side to variables `least` to `most`. */
export function layRow(side: i32, least: i32, most: i32): void {
  const length = (most - least + 4) >> 2;
  const row = words(12 * length);
  for (let four = 0; four < length; four++) {
    for (let k = 0; k < 8; k++) put(row, 12 * four + k, NONE);
    for (let k = 8; k < 12; k++) put(row, 12 * four + k, -1);
  }
  put(rows, side, <i32>row);
  put(firsts, side, least);
  put(lengths, side, length);
}

/** The cell of a side's row for a variable. */
export function cellOf(side: i32, variable: i32): usize {
  const place = variable - at(firsts, side);
  return <usize>at(rows, side) + <usize>(place >> 2) * FOUR + ((<usize>(place & 3)) << 2);
}

export function isTaken(cell: usize): bool {
  return load<i32>(cell, ARC) >= 0;
}

/** Gives a cell to an arc, which may hold and may not. */
export function giveCell(cell: usize, arc: i32, lag: i32): void {
  store<i32>(cell, lag, OPEN);
  store<i32>(cell, arc, ARC);
}

/** Its condition became true, or is not any more. */
export function setHeld(cell: usize, isHeld: bool): void {
  store<i32>(cell, isHeld ? load<i32>(cell, OPEN) : NONE);
}

/** Its condition became false, or is not any more. */
export function setOpen(cell: usize, isOpen: bool, lag: i32): void {
  store<i32>(cell, isOpen ? lag : NONE, OPEN);
}

export function rowOf(side: i32): usize {
  return <usize>at(rows, side);
}

export function endOfRow(side: i32): usize {
  return <usize>at(rows, side) + <usize>at(lengths, side) * FOUR;
}

/** Where the bounds of the variables of a row's first four are: both sides of a variable next to each other. */
export function boundsOfRow(side: i32): usize {
  return low + ((<usize>at(firsts, side)) << 3);
}

/**
 * Which of four arcs have something to do, as bits, when they start from a side that stands at `now`: those that hold and lead
 * beyond a bound, and those that may and would lead beyond the opposite bound. `bounds`: of their four variables; what stands beyond
 * the last variable does no harm, for there are no arcs to it.
 */
export function due(four: usize, bounds: usize, isUpper: bool, now: v128): i32 {
  const a = v128.load(bounds);
  const b = v128.load(bounds, 16);
  const lower = v128.shuffle<i32>(a, b, 0, 2, 4, 6);
  const upper = v128.shuffle<i32>(a, b, 1, 3, 5, 7);
  const mine = isUpper ? upper : lower;
  const other = isUpper ? lower : upper;
  const leads = i32x4.gt_s(i32x4.add(v128.load(four), now), mine);
  const wouldLead = i32x4.gt_s(i32x4.add(i32x4.add(v128.load(four, OPEN), now), other), i32x4.splat(0));
  return i32x4.bitmask(v128.or(leads, wouldLead));
}

export function arcIn(four: usize, k: i32): i32 {
  return load<i32>(four + ((<usize>k) << 2), ARC);
}
