// Minimum lags between variables, some on a condition: when `condition` is true, to >= from + lag. Part of the learning core.

import { at, Growing, put, words } from '../../assembly/memory';
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
/** Arcs by the side of their condition. */
let firstIf: usize = 0;
let onIf: usize = 0;

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
  onIf = words(at(firstIf, sides));
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
  for (let side = 0; side < sides; side++) put(next, side, at(firstIf, side));
  for (let arc = 0; arc < count; arc++) {
    const ifSide = arcIfSide(arc);
    if (ifSide < 0) continue;
    put(onIf, at(next, ifSide), arc);
    put(next, ifSide, at(next, ifSide) + 1);
  }
}

/** Carries a rise of a side along its arcs, and along those whose condition it fulfils. False on a conflict. */
export function propagateArcs(side: i32, old: i32): bool {
  const now = at(low, side);
  const end = at(first, side + 1);
  for (let arc = at(first, side); arc < end; arc++) {
    const lead = leads + ((<usize>arc) << LEAD_SHIFT);
    if (now + load<i32>(lead, 4) <= at(low, load<i32>(lead))) continue;
    const ifSide = load<i32>(lead, 8);
    if (ifSide !== NO_SIDE && -at(low, ifSide ^ 1) < load<i32>(lead, 12)) continue;
    if (!pull(arc)) return false;
  }
  const endIf = at(firstIf, side + 1);
  for (let i = at(firstIf, side); i < endIf; i++) {
    const arc = at(onIf, i);
    const needed = arcIfLow(arc);
    if (needed > old && needed <= now && !pull(arc)) return false;
  }
  return true;
}

/** Applies one arc as far as its condition goes. */
function pull(arc: i32): bool {
  const from = at(starts, arc);
  const lead = leads + ((<usize>arc) << LEAD_SHIFT);
  const to = load<i32>(lead);
  const reached = at(low, from) + load<i32>(lead, 4);
  if (reached <= at(low, to)) return true;
  const ifSide = load<i32>(lead, 8);
  const ifLow = load<i32>(lead, 12);
  if (ifSide === NO_SIDE || at(low, ifSide) >= ifLow) return raise(to, reached, (arc << 2) | BY_ARC);
  if (reached <= -at(low, to ^ 1) || -at(low, ifSide ^ 1) < ifLow) return true;
  const begun = beginNote();
  note(begun, from, at(low, from));
  note(begun, to ^ 1, 1 - reached);
  return raise(ifSide ^ 1, 1 - ifLow, (begun << 2) | BY_NOTE);
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
