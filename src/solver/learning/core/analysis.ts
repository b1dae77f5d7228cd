// Learns a clause from a conflict: its reasons are followed back until one literal of the last level is left that implies the
// rest (first unique implication point: Marques-Silva and Sakallah 1999, IEEE Transactions on Computers 48), literals being
// bounds that are explained when asked (lazy clause generation: Ohrimenko, Stuckey and Codish 2009, Constraints 14). Part of the
// learning core.

import { at, bytes, Growing, put, words } from '../../assembly/memory';
import { arcFrom, arcIfLow, arcIfSide, arcLag } from './arcs';
import {
  BY_ARC,
  BY_CLAUSE,
  BY_NOTE,
  conflictLow,
  conflictReason,
  conflictSide,
  DECISION,
  entryLevel,
  entryOf,
  entryReason,
  entrySide,
  level,
  NO_SIDE,
  notes,
  trailSize,
} from './bounds';
import { arena, HEADER } from './clauses';

const UNNEEDED: i32 = -2_000_000_000;

/** Per side: how far it must have risen for the conflict, or UNNEEDED, and the trail entry behind that. */
let need: usize = 0;
let entry: usize = 0;
let isTouched: usize = 0;
const touched = new Growing();
let openAtLevel: i32 = 0;
/** The level that the conflict comes from. */
let blamed: i32 = 0;
/** The learned clause: pairs of side and number, the asserting literal first, the latest other second. */
export const literals = new Growing();
export let size: i32 = 0;
export let backLevel: i32 = 0;
/** How many levels its literals come from. */
export let glue: i32 = 0;
/** Variables met on the way, for the order of decisions. */
export const met = new Growing();
/** Per level: in which clause it was last met. */
const metIn = new Growing();
let clausesWritten: i32 = 0;
let isImplied: bool = true;
let checkedEntry: i32 = 0;

export function beginAnalysis(sides: i32): void {
  need = words(sides);
  entry = words(sides);
  isTouched = bytes(sides);
  for (let side = 0; side < sides; side++) {
    put(need, side, UNNEEDED);
    put(entry, side, -1);
  }
}

/**
 * Follows the conflict of the bounds back. `size` is 0 afterwards when it holds for good: there is no solution. False when
 * it comes from several decisions of one level.
 */
export function analyse(): bool {
  blamed = level;
  openAtLevel = 0;
  met.size = 0;
  follow(conflictReason, conflictSide, conflictLow, false);
  if (conflictSide !== NO_SIDE) require(conflictSide ^ 1, 1 - conflictLow);
  if (openAtLevel === 0 && !takeLatestLevel()) {
    size = 0;
    return true;
  }
  let e = trailSize - 1;
  for (;;) {
    while (!isBehindNeed(e)) e--;
    if (openAtLevel === 1) break;
    const side = entrySide(e);
    const value = at(need, side);
    const reason = entryReason(e);
    if (reason === DECISION) {
      clear();
      return false;
    }
    put(need, side, UNNEEDED);
    openAtLevel--;
    follow(reason, side, value, false);
    e--;
  }
  write(e);
  clear();
  return true;
}

/** When nothing of the present level is to blame: goes on from the latest level that is. False when there is none. */
function takeLatestLevel(): bool {
  blamed = 0;
  for (let k = 0; k < touched.size; k++) blamed = max(blamed, entryLevel(at(entry, at(touched.list, k))));
  openAtLevel = 0;
  for (let k = 0; k < touched.size; k++) if (entryLevel(at(entry, at(touched.list, k))) === blamed) openAtLevel++;
  return blamed > 0;
}

function isBehindNeed(e: i32): bool {
  const side = entrySide(e);
  return at(need, side) !== UNNEEDED && at(entry, side) === e;
}

/** Goes through all that made `side` rise to `value`: asks for it, or, to check, whether it is asked for already. */
function follow(reason: i32, side: i32, value: i32, isCheck: bool): void {
  const which = reason >> 2;
  switch (reason & 3) {
    case BY_CLAUSE: {
      const end = which + HEADER + 2 * at(arena, which);
      for (let i = which + HEADER; i < end; i += 2) {
        const other = at(arena, i);
        if (other !== side) meet(other ^ 1, 1 - at(arena, i + 1), isCheck);
      }
      return;
    }
    case BY_ARC: {
      meet(arcFrom(which), value - arcLag(which), isCheck);
      if (arcIfSide(which) !== NO_SIDE) meet(arcIfSide(which), arcIfLow(which), isCheck);
      return;
    }
    case BY_NOTE: {
      const end = which + 1 + 2 * at(notes, which);
      for (let i = which + 1; i < end; i += 2) meet(at(notes, i), at(notes, i + 1), isCheck);
      return;
    }
    default:
  }
}

function meet(side: i32, value: i32, isCheck: bool): void {
  if (isCheck) checkImplied(side, value);
  else require(side, value);
}

/** Asks that a literal, true now, is among the reasons. */
function require(side: i32, value: i32): void {
  const known = at(need, side);
  if (known >= value) return;
  const e = entryOf(side, value);
  if (e < 0) return;
  const levelOf = entryLevel(e);
  if (levelOf === 0) return;
  if (load<u8>(isTouched + <usize>side) === 0) {
    store<u8>(isTouched + <usize>side, 1);
    touched.add(side);
  }
  if (known !== UNNEEDED && entryLevel(at(entry, side)) === blamed) openAtLevel--;
  if (levelOf === blamed) openAtLevel++;
  put(need, side, value);
  put(entry, side, e);
  met.add(side >> 1);
}

function write(assertingEntry: i32): void {
  const asserting = entrySide(assertingEntry);
  literals.size = 0;
  literals.add(asserting ^ 1);
  literals.add(1 - at(need, asserting));
  clausesWritten++;
  let latest = 0;
  let levels = 0;
  for (let k = 0; k < touched.size; k++) {
    const side = at(touched.list, k);
    if (side === asserting || at(need, side) === UNNEEDED || isRedundant(side)) continue;
    const levelOf = entryLevel(at(entry, side));
    while (metIn.size <= levelOf) metIn.add(0);
    if (at(metIn.list, levelOf) !== clausesWritten) {
      put(metIn.list, levelOf, clausesWritten);
      levels++;
    }
    literals.add(side ^ 1);
    literals.add(1 - at(need, side));
    if (levelOf > latest) {
      latest = levelOf;
      swapLastWithSecond();
    }
  }
  size = literals.size / 2;
  backLevel = latest;
  glue = levels + 1;
}

function swapLastWithSecond(): void {
  const list = literals.list;
  const last = literals.size - 2;
  const side = at(list, 2);
  const value = at(list, 3);
  put(list, 2, at(list, last));
  put(list, 3, at(list, last + 1));
  put(list, last, side);
  put(list, last + 1, value);
}

/** Whether needs of earlier entries imply this one already. */
function isRedundant(side: i32): bool {
  const e = at(entry, side);
  const reason = entryReason(e);
  if (reason === DECISION) return false;
  isImplied = true;
  checkedEntry = e;
  follow(reason, side, at(need, side), true);
  return isImplied;
}

function checkImplied(side: i32, value: i32): void {
  if (!isImplied || (at(need, side) >= value && at(entry, side) < checkedEntry)) return;
  const e = entryOf(side, value);
  if (e >= 0 && entryLevel(e) !== 0) isImplied = false;
}

function clear(): void {
  for (let k = 0; k < touched.size; k++) {
    const side = at(touched.list, k);
    put(need, side, UNNEEDED);
    store<u8>(isTouched + <usize>side, 0);
  }
  touched.size = 0;
}
