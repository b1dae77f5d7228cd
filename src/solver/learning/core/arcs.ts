// Minimum lags between variables, some on a condition: when `condition` is true, to >= from + lag. Part of the learning core.

import { at, bytes, Growing, put, words } from '../../assembly/memory';
import {
  arcIn,
  BOUNDS_OF_FOUR,
  beginRows,
  boundsOfRow,
  cellOf,
  due,
  endOfRow,
  FOUR,
  fitsRow,
  giveCell,
  isTaken,
  isWorthARow,
  layRow,
  rowOf,
  setHeld,
  setOpen,
} from './arcRows';
import { BY_ARC, BY_NOTE, beginNote, low, NO_SIDE, note, raise } from './bounds';

/** While they are added: from, to, lag, side and number of the condition, five numbers an arc. */
const ADDED: i32 = 5;
const added = new Growing();

/** Arcs in the order of the side they start from: where it leads, its lag, and side and number of its condition. */
let leads: usize = 0;
/** Bytes of these. */
const LEAD_SHIFT: usize = 4;
/** And from where. */
let starts: usize = 0;
/** The first arc of each side, and where the last one's end. */
let first: usize = 0;
/** Arcs by the side of their condition, each with its cell in a row, 0: it has none. */
let firstIf: usize = 0;
let onIf: usize = 0;
/** Of each side: the first of its arcs that stand in a row; those before are looked at one by one. */
let firstInRow: usize = 0;
/** Of each arc its cell in a row, 0: it has none. */
let cells: usize = 0;
/** Whether a side, or its opposite, is the condition of arcs in rows. */
let isIfInRow: usize = 0;
/** Whether there are rows at all. */
export let hasRows: bool = false;

/** Asks that variable `to` is at least variable `from` plus `lag`, on a condition; NO_SIDE: always. */
export function addArc(from: i32, to: i32, lag: i32, ifSide: i32, ifLow: i32): void {
  push(2 * from, 2 * to, lag, ifSide, ifLow);
  push(2 * to + 1, 2 * from + 1, lag, ifSide, ifLow);
}

function push(from: i32, to: i32, lag: i32, ifSide: i32, ifLow: i32): void {
  added.add(from);
  added.add(to);
  added.add(lag);
  added.add(ifSide);
  added.add(ifLow);
}

/** Turns counts, each one place after its key, into where each key's run begins. */
function runs(counts: usize, keys: i32): void {
  for (let key = 0; key < keys; key++) put(counts, key + 1, at(counts, key + 1) + at(counts, key));
}

/** Lays the arcs out for propagation. Called once, when all are added. */
export function freezeArcs(sides: i32): void {
  const count = added.size / ADDED;
  const list = added.list;
  first = words(sides + 1);
  firstIf = words(sides + 1);
  for (let arc = 0; arc < count; arc++) {
    const from = at(list, ADDED * arc);
    const ifSide = at(list, ADDED * arc + 3);
    put(first, from + 1, at(first, from + 1) + 1);
    if (ifSide >= 0) put(firstIf, ifSide + 1, at(firstIf, ifSide + 1) + 1);
  }
  runs(first, sides);
  runs(firstIf, sides);
  leads = words(4 * count);
  starts = words(count);
  onIf = words(2 * at(firstIf, sides));
  // Arcs of a side keep the order in which they were added.
  const next = words(sides);
  for (let side = 0; side < sides; side++) put(next, side, at(first, side));
  for (let arc = 0; arc < count; arc++) {
    const from = at(list, ADDED * arc);
    const place = at(next, from);
    put(next, from, place + 1);
    put(starts, place, from);
    for (let k = 0; k < 4; k++) put(leads, 4 * place + k, at(list, ADDED * arc + 1 + k));
  }
  cells = words(count);
  isIfInRow = bytes(sides);
  firstInRow = words(sides);
  beginRows(sides);
  for (let side = 0; side < sides; side++) putInRow(side);
  for (let side = 0; side < sides; side++) put(next, side, at(firstIf, side));
  for (let arc = 0; arc < count; arc++) {
    const ifSide = arcIfSide(arc);
    if (ifSide < 0) continue;
    put(onIf, 2 * at(next, ifSide), arc);
    put(onIf, 2 * at(next, ifSide) + 1, at(cells, arc));
    put(next, ifSide, at(next, ifSide) + 1);
  }
}

function fits(side: i32, arc: i32): bool {
  return fitsRow(side, arcTo(arc), arcLag(arc), arcIfSide(arc), arcIfLow(arc));
}

/** Lays the arcs from a side that can stand in a row behind the others, and in a row, if they are many. */
function putInRow(side: i32): void {
  const begin = at(first, side);
  const end = at(first, side + 1);
  put(firstInRow, side, end);
  let least = i32.MAX_VALUE;
  let most = -1;
  let many = 0;
  for (let arc = begin; arc < end; arc++) {
    if (!fits(side, arc)) continue;
    least = min(least, arcTo(arc) >> 1);
    most = max(most, arcTo(arc) >> 1);
    many++;
  }
  if (!isWorthARow(many, least, most)) return;
  hasRows = true;
  layRow(side, least, most);
  // Those of the row come after the others; of two to one variable the earlier stays with the others.
  let place = end;
  for (let arc = end - 1; arc >= begin; arc--) {
    if (!fits(side, arc) || isTaken(cellOf(side, arcTo(arc) >> 1))) continue;
    place--;
    exchange(arc, place);
    takeCell(side, place);
  }
  put(firstInRow, side, place);
}

/** Exchanges what is known of two arcs of one side. */
function exchange(a: i32, b: i32): void {
  for (let k = 0; k < 4; k++) {
    const kept = at(leads, 4 * a + k);
    put(leads, 4 * a + k, at(leads, 4 * b + k));
    put(leads, 4 * b + k, kept);
  }
}

function takeCell(side: i32, arc: i32): void {
  const cell = cellOf(side, arcTo(arc) >> 1);
  giveCell(cell, arc, arcLag(arc));
  put(cells, arc, <i32>cell);
  store<u8>(isIfInRow + <usize>arcIfSide(arc), 1);
  store<u8>(isIfInRow + <usize>(arcIfSide(arc) ^ 1), 1);
}

/** Carries a rise of a side along its arcs, and along those whose condition it fulfils. False on a conflict. */
export function propagateArcs(side: i32, old: i32): bool {
  const now = at(low, side);
  const end = leadOf(at(firstInRow, side));
  for (let lead = leadOf(at(first, side)); lead < end; lead += 1 << LEAD_SHIFT) {
    const to = load<i32>(lead);
    const reached = now + load<i32>(lead, 4);
    if (reached <= at(low, to)) continue;
    const ifSide = load<i32>(lead, 8);
    if (ifSide !== NO_SIDE) {
      const ifLow = load<i32>(lead, 12);
      if (at(low, ifSide) < ifLow) {
        // Open, and not to be ruled out yet; or false.
        if (reached <= -at(low, to ^ 1) || -at(low, ifSide ^ 1) < ifLow) continue;
        if (!ruleOutIf(lead, side, now)) return false;
        continue;
      }
    }
    if (!raise(to, reached, ((<i32>((lead - leads) >> LEAD_SHIFT)) << 2) | BY_ARC)) return false;
  }
  if (hasRows && rowOf(side) !== 0 && !carryRow(side, now)) return false;
  if (hasRows && load<u8>(isIfInRow + <usize>side) !== 0 && now === 1 - (side & 1)) setRows(side, true);
  const endIf = at(firstIf, side + 1);
  for (let i = at(firstIf, side); i < endIf; i++) {
    const arc = at(onIf, 2 * i);
    const needed = arcIfLow(arc);
    if (needed > old && needed <= now && !pull(arc)) return false;
  }
  return true;
}

/** The same for the arcs in its row. */
function carryRow(side: i32, now: i32): bool {
  const end = endOfRow(side);
  const isUpper: bool = (side & 1) === 1;
  const each = i32x4.splat(now);
  let bounds = boundsOfRow(side);
  for (let four = rowOf(side); four < end; four += FOUR) {
    let which = due(four, bounds, isUpper, each);
    while (which !== 0) {
      const arc = arcIn(four, ctz(which));
      if (arc >= 0 && !pull(arc)) return false;
      which &= which - 1;
    }
    bounds += BOUNDS_OF_FOUR;
  }
  return true;
}

/** A condition became true, or is open again: what the arcs in rows that hang on it are to do. */
function setRows(side: i32, isTrue: bool): void {
  const end = at(firstIf, side + 1);
  for (let i = at(firstIf, side); i < end; i++) {
    const cell = <usize>at(onIf, 2 * i + 1);
    if (cell !== 0) setHeld(cell, isTrue);
  }
  const endOther = at(firstIf, (side ^ 1) + 1);
  for (let i = at(firstIf, side ^ 1); i < endOther; i++) {
    const cell = <usize>at(onIf, 2 * i + 1);
    if (cell !== 0) setOpen(cell, !isTrue, arcLag(at(onIf, 2 * i)));
  }
}

/** A rise of a side is taken back. */
export function takeBackArcs(side: i32): void {
  if (load<u8>(isIfInRow + <usize>side) !== 0) setRows(side, false);
}

/** Makes the condition of an arc false that would lead too far. */
function ruleOutIf(lead: usize, from: i32, now: i32): bool {
  const begun = beginNote();
  note(begun, from, now);
  note(begun, load<i32>(lead) ^ 1, 1 - now - load<i32>(lead, 4));
  return raise(load<i32>(lead, 8) ^ 1, 1 - load<i32>(lead, 12), (begun << 2) | BY_NOTE);
}

/** Where an arc's numbers are. */
function leadOf(arc: i32): usize {
  return leads + ((<usize>arc) << LEAD_SHIFT);
}

/** Applies one arc as far as its condition goes. */
function pull(arc: i32): bool {
  const from = at(starts, arc);
  const lead = leadOf(arc);
  const to = load<i32>(lead);
  const now = at(low, from);
  const reached = now + load<i32>(lead, 4);
  if (reached <= at(low, to)) return true;
  const ifSide = load<i32>(lead, 8);
  const ifLow = load<i32>(lead, 12);
  if (ifSide === NO_SIDE || at(low, ifSide) >= ifLow) return raise(to, reached, (arc << 2) | BY_ARC);
  if (reached <= -at(low, to ^ 1) || -at(low, ifSide ^ 1) < ifLow) return true;
  return ruleOutIf(lead, from, now);
}

/** Of an arc: where it leads. */
function arcTo(arc: i32): i32 {
  return at(leads, 4 * arc);
}

/** Why an arc's end rose: where it comes from, how far that is ahead, and side (NO_SIDE: none) and number of its condition. */
export function arcFrom(arc: i32): i32 {
  return at(starts, arc);
}

export function arcLag(arc: i32): i32 {
  return at(leads, 4 * arc + 1);
}

export function arcIfSide(arc: i32): i32 {
  return at(leads, 4 * arc + 2);
}

export function arcIfLow(arc: i32): i32 {
  return at(leads, 4 * arc + 3);
}
