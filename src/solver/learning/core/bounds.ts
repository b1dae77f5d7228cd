// Bounds of whole-number variables and the trail of how each was raised, so that any of it can be taken back and explained.
// A variable v has two sides: side 2v holds its lower bound, side 2v + 1 the lower bound of its negative, so that every
// change is a rise. A literal is a side and a number: true when the side has risen that far. The state of the learning core.
import { at, grown, put, words } from '../../assembly/memory';

/** How an entry of the trail came about: a decision, a clause, an arc, or a note of literals written down at the time. */
export const DECISION: i32 = 0;
export const BY_CLAUSE: i32 = 1;
export const BY_ARC: i32 = 2;
export const BY_NOTE: i32 = 3;

/** No literal: a conflict that is a note alone. */
export const NO_SIDE: i32 = -1;

let sideRoom: i32 = 256;
/** Lower bound of each side. */
export let low: usize = words(sideRoom);
/** Latest trail entry of each side, -1 when it stands where it began. */
export let lastEntry: usize = words(sideRoom);
export let sideCount: i32 = 0;

/** Entries of eight numbers: side, low, old, previous entry of the side, reason, level; two are empty. */
const ENTRY_SHIFT: usize = 5;
let trailRoom: i32 = 4096;
let trail: usize = words(8 * trailRoom);
export let trailSize: i32 = 0;

export let level: i32 = 0;
let levelRoom: i32 = 256;
let levelStart: usize = words(levelRoom);
let levelNotes: usize = words(levelRoom);

/** Notes: a count, then as many pairs of side and number. */
let noteRoom: i32 = 1 << 14;
export let notes: usize = words(noteRoom);
let noteSize: i32 = 0;

/** The failed rise: its side (NO_SIDE when the reason alone is contradictory), its number and its reason. */
export let conflictSide: i32 = NO_SIDE;
export let conflictLow: i32 = 0;
export let conflictReason: i32 = 0;

/** Adds a variable of values `least` to `most`, both included. Returns its number. */
export function addVariable(least: i32, most: i32): i32 {
  const side = sideCount;
  if (side + 2 > sideRoom) {
    sideRoom *= 2;
    low = grown(low, side, sideRoom);
    lastEntry = grown(lastEntry, side, sideRoom);
  }
  put(low, side, least);
  put(low, side + 1, -most);
  put(lastEntry, side, -1);
  put(lastEntry, side + 1, -1);
  sideCount = side + 2;
  return side >> 1;
}

/** Present least and most value of a variable. */
export function leastOf(variable: i32): i32 {
  return at(low, 2 * variable);
}

export function mostOf(variable: i32): i32 {
  return -at(low, 2 * variable + 1);
}

export function isTrue(side: i32, value: i32): bool {
  return at(low, side) >= value;
}

export function isFalse(side: i32, value: i32): bool {
  return -at(low, side ^ 1) < value;
}

/** Of an entry of the trail. A reason has its kind in the two lowest bits, clause, arc or note above them. */
export function entrySide(entry: i32): i32 {
  return load<i32>(trail + ((<usize>entry) << ENTRY_SHIFT));
}

export function entryOld(entry: i32): i32 {
  return load<i32>(trail + ((<usize>entry) << ENTRY_SHIFT), 8);
}

export function entryReason(entry: i32): i32 {
  return load<i32>(trail + ((<usize>entry) << ENTRY_SHIFT), 16);
}

export function entryLevel(entry: i32): i32 {
  return load<i32>(trail + ((<usize>entry) << ENTRY_SHIFT), 20);
}

/** Raises a side. False, with the conflict noted, when its variable has no value left. */
export function raise(side: i32, value: i32, reason: i32): bool {
  const old = at(low, side);
  if (value <= old) return true;
  if (value > -at(low, side ^ 1)) {
    conflictSide = side;
    conflictLow = value;
    conflictReason = reason;
    return false;
  }
  if (trailSize === trailRoom) {
    trail = grown(trail, 8 * trailRoom, 16 * trailRoom);
    trailRoom *= 2;
  }
  const entry = trail + ((<usize>trailSize) << ENTRY_SHIFT);
  store<i32>(entry, side);
  store<i32>(entry, value, 4);
  store<i32>(entry, old, 8);
  store<i32>(entry, at(lastEntry, side), 12);
  store<i32>(entry, reason, 16);
  store<i32>(entry, level, 20);
  put(low, side, value);
  put(lastEntry, side, trailSize);
  trailSize++;
  return true;
}

/** Notes a contradiction among literals written down at `begun`. Returns false. */
export function contradict(begun: i32): bool {
  conflictSide = NO_SIDE;
  conflictReason = (begun << 2) | BY_NOTE;
  return false;
}

/** Begins a note, and returns its number. Literals follow by `note`. */
export function beginNote(): i32 {
  if (noteSize + 1 > noteRoom) growNotes();
  put(notes, noteSize, 0);
  return noteSize++;
}

/** Adds a literal to the note begun last. */
export function note(begun: i32, side: i32, value: i32): void {
  if (noteSize + 2 > noteRoom) growNotes();
  put(notes, noteSize, side);
  put(notes, noteSize + 1, value);
  noteSize += 2;
  put(notes, begun, at(notes, begun) + 1);
}

function growNotes(): void {
  notes = grown(notes, noteSize, 2 * noteRoom);
  noteRoom *= 2;
}

export function openLevel(): void {
  level++;
  if (level >= levelRoom) {
    levelStart = grown(levelStart, levelRoom, 2 * levelRoom);
    levelNotes = grown(levelNotes, levelRoom, 2 * levelRoom);
    levelRoom *= 2;
  }
  put(levelStart, level, trailSize);
  put(levelNotes, level, noteSize);
}

/** Takes back every level above `wanted`. */
export function takeBackTo(wanted: i32): void {
  if (wanted >= level) return;
  const from = at(levelStart, wanted + 1);
  for (let e = trailSize - 1; e >= from; e--) {
    const entry = trail + ((<usize>e) << ENTRY_SHIFT);
    const side = load<i32>(entry);
    put(low, side, load<i32>(entry, 8));
    put(lastEntry, side, load<i32>(entry, 12));
  }
  trailSize = from;
  noteSize = at(levelNotes, wanted + 1);
  level = wanted;
}

/** The entry that made a true literal true; -1 when it was true from the beginning. */
export function entryOf(side: i32, value: i32): i32 {
  let e = at(lastEntry, side);
  while (e >= 0) {
    const entry = trail + ((<usize>e) << ENTRY_SHIFT);
    if (load<i32>(entry, 8) < value) break;
    e = load<i32>(entry, 12);
  }
  return e;
}
