// Clauses over literals of bounds, two of each watched (Moskewicz, Madigan, Zhao, Zhang and Malik 2001, DAC 38, section 2).
// A clause whose literals are all false but one makes that one true. Part of the learning core.

import { at, Growing, grown, put, words } from '../../assembly/memory';
import { BY_CLAUSE, DECISION, isFalse, isTrue, low, raise } from './bounds';

/** Words of a clause before its literals: size, and how far apart in levels its literals were when it was learned. */
export const HEADER: i32 = 2;

/** Bytes of a watch: threshold, clause, and a literal of the clause that spares a look when true. */
const WATCH_SHIFT: usize = 4;

/** Bytes of what is known of a side's watches: where they are, how many, and how many there is room for. */
const LIST_SHIFT: usize = 4;

/** Learned clauses whose literals came from so few levels are kept for good. */
const GLUE_KEPT: i32 = 2;

let arenaRoom: i32 = 1 << 15;
export let arena: usize = words(arenaRoom);
let arenaSize: i32 = 0;
/** Where clauses were before they were last laid out anew, for the next time. */
let spareRoom: i32 = 0;
let spare: usize = 0;

let watchedSides: i32 = 256;
let watches: usize = words(4 * watchedSides);

/** Learned clauses, oldest first. */
const learned = new Growing();
const given = new Growing();
/** Literals of a clause that is being added. */
const kept = new Growing();
/** Learned clauses by how many levels they come from. */
const ofGlue = new Growing();

export function learnedCount(): i32 {
  return learned.size;
}

/** Adds a clause of the problem, `count` literals as pairs of side and number. False when it makes the problem impossible. Level 0 only. */
export function addClause(literals: usize, count: i32): bool {
  kept.size = 0;
  for (let i = 0; i < count; i++) {
    const side = at(literals, 2 * i);
    const value = at(literals, 2 * i + 1);
    if (isTrue(side, value)) return true;
    if (!isFalse(side, value)) keepLiteral(side, value);
  }
  if (kept.size === 0) return false;
  if (kept.size === 2) return raise(at(kept.list, 0), at(kept.list, 1), DECISION);
  given.add(attach(kept.list, kept.size / 2, 0));
  return true;
}

/** Of two literals of a side the one that is easier to fulfil says it all. */
function keepLiteral(side: i32, value: i32): void {
  for (let i = 0; i < kept.size; i += 2) {
    if (at(kept.list, i) !== side) continue;
    put(kept.list, i + 1, min(at(kept.list, i + 1), value));
    return;
  }
  kept.add(side);
  kept.add(value);
}

/** Adds a learned clause; its first literal is the one it makes true now, its second the latest of the others. */
export function learnClause(literals: usize, size: i32, glue: i32): i32 {
  const clause = attach(literals, size, glue);
  learned.add(clause);
  return clause;
}

function attach(literals: usize, size: i32, glue: i32): i32 {
  const count = HEADER + 2 * size;
  if (arenaSize + count > arenaRoom) {
    arenaRoom = max(arenaSize + count, 2 * arenaRoom);
    arena = grown(arena, arenaSize, arenaRoom);
  }
  const clause = arenaSize;
  put(arena, clause, size);
  put(arena, clause + 1, glue);
  memory.copy(arena + ((<usize>(clause + HEADER)) << 2), literals, (<usize>(2 * size)) << 2);
  arenaSize += count;
  const a = clause + HEADER;
  watch(at(arena, a), at(arena, a + 1), clause, at(arena, a + 2), at(arena, a + 3));
  watch(at(arena, a + 2), at(arena, a + 3), clause, at(arena, a), at(arena, a + 1));
  return clause;
}

/** Watches a literal: the clause is looked at when its opposite side rises past the threshold. */
function watch(side: i32, value: i32, clause: i32, otherSide: i32, otherLow: i32): void {
  const watched = side ^ 1;
  if (watched >= watchedSides) makeRoom(max(watched + 1, 2 * watchedSides));
  const list = watches + ((<usize>watched) << LIST_SHIFT);
  const count = load<i32>(list, 4);
  const room = load<i32>(list, 8);
  if (count === room) {
    const larger = max(4, 2 * room);
    store<i32>(list, <i32>grown(<usize>load<i32>(list), 4 * count, 4 * larger));
    store<i32>(list, larger, 8);
  }
  const entry = <usize>load<i32>(list) + ((<usize>count) << WATCH_SHIFT);
  store<i32>(entry, 1 - value);
  store<i32>(entry, clause, 4);
  store<i32>(entry, otherSide, 8);
  store<i32>(entry, otherLow, 12);
  store<i32>(list, count + 1, 4);
}

function makeRoom(sides: i32): void {
  watches = grown(watches, 4 * watchedSides, 4 * sides);
  watchedSides = sides;
}

/** Makes room for what is watched of so many sides, all there are. Called once, before clauses are propagated. */
export function freezeClauses(sides: i32): void {
  if (sides > watchedSides) makeRoom(sides);
}

/** Looks at the clauses whose watched literal a rise from `old` made false. False on a conflict. */
export function propagateClauses(side: i32, old: i32): bool {
  const list = watches + ((<usize>side) << LIST_SHIFT);
  const count = load<i32>(list, 4);
  if (count === 0) return true;
  const now = at(low, side);
  const from = <usize>load<i32>(list);
  const end = from + ((<usize>count) << WATCH_SHIFT);
  let to = from;
  for (let entry = from; entry < end; entry += 1 << WATCH_SHIFT) {
    const threshold = load<i32>(entry);
    let otherSide = load<i32>(entry, 8);
    let otherLow = load<i32>(entry, 12);
    if (threshold <= old || threshold > now || at(low, otherSide) >= otherLow) {
      v128.store(to, v128.load(entry));
      to += 1 << WATCH_SHIFT;
      continue;
    }
    const clause = load<i32>(entry, 4);
    let isUnit = false;
    const a = arena + ((<usize>(clause + HEADER)) << 2);
    if (load<i32>(a) === (side ^ 1) && load<i32>(a, 4) === 1 - threshold) {
      store<i32>(a, load<i32>(a, 8));
      store<i32>(a, load<i32>(a, 12), 4);
      store<i32>(a, side ^ 1, 8);
      store<i32>(a, 1 - threshold, 12);
    }
    otherSide = load<i32>(a);
    otherLow = load<i32>(a, 4);
    if (at(low, otherSide) < otherLow) {
      const last = a + ((<usize>at(arena, clause)) << 3);
      let next = a + 16;
      while (next < last && -at(low, load<i32>(next) ^ 1) < load<i32>(next, 4)) next += 8;
      if (next < last) {
        const nextSide = load<i32>(next);
        const nextLow = load<i32>(next, 4);
        store<i32>(next, side ^ 1);
        store<i32>(next, 1 - threshold, 4);
        store<i32>(a, nextSide, 8);
        store<i32>(a, nextLow, 12);
        watch(nextSide, nextLow, clause, otherSide, otherLow);
        continue;
      }
      isUnit = true;
    }
    store<i32>(to, threshold);
    store<i32>(to, clause, 4);
    store<i32>(to, otherSide, 8);
    store<i32>(to, otherLow, 12);
    to += 1 << WATCH_SHIFT;
    if (isUnit && !raise(otherSide, otherLow, (clause << 2) | BY_CLAUSE)) {
      const unread = entry + (1 << WATCH_SHIFT);
      memory.copy(to, unread, end - unread);
      store<i32>(list, <i32>((to - from + end - unread) >> WATCH_SHIFT), 4);
      return false;
    }
  }
  store<i32>(list, <i32>((to - from) >> WATCH_SHIFT), 4);
  return true;
}

/** Drops the half of the learned clauses that is least likely to help, and what is true for good. Level 0 only. */
export function forgetHalf(): void {
  const count = learned.size;
  const list = learned.list;
  // How many come from so many levels.
  ofGlue.size = 0;
  let loose = 0;
  for (let i = 0; i < count; i++) {
    const glue = at(arena, at(list, i) + 1);
    while (ofGlue.size <= glue) ofGlue.add(0);
    put(ofGlue.list, glue, at(ofGlue.list, glue) + 1);
    if (glue > GLUE_KEPT) loose++;
  }
  // How many of those go: first those of most levels.
  let left = loose >> 1;
  for (let glue = ofGlue.size - 1; glue >= 0; glue--) {
    const dropped = glue > GLUE_KEPT ? min(left, at(ofGlue.list, glue)) : 0;
    put(ofGlue.list, glue, dropped);
    left -= dropped;
  }
  // Of as many levels the oldest.
  learned.size = 0;
  for (let i = 0; i < count; i++) {
    const clause = at(list, i);
    const glue = at(arena, clause + 1);
    const isDropped = at(ofGlue.list, glue) > 0;
    if (isDropped) put(ofGlue.list, glue, at(ofGlue.list, glue) - 1);
    else learned.add(clause);
  }
  layOutAnew();
}

/** Lays the kept clauses out anew, without literals that are false for good. */
function layOutAnew(): void {
  const old = arena;
  const oldRoom = arenaRoom;
  if (spareRoom < arenaRoom) {
    spareRoom = arenaRoom;
    spare = words(spareRoom);
  }
  arena = spare;
  arenaRoom = spareRoom;
  spare = old;
  spareRoom = oldRoom;
  arenaSize = 0;
  for (let side = 0; side < watchedSides; side++) store<i32>(watches + ((<usize>side) << LIST_SHIFT), 0, 4);
  move(old, given);
  move(old, learned);
}

function move(from: usize, clauses: Growing): void {
  const count = clauses.size;
  const list = clauses.list;
  clauses.size = 0;
  for (let i = 0; i < count; i++) {
    const clause = at(list, i);
    if (!readOpen(from, clause)) continue;
    if (kept.size >= 4) clauses.add(attach(kept.list, kept.size / 2, at(from, clause + 1)));
    else raise(at(kept.list, 0), at(kept.list, 1), DECISION);
  }
}

/** Reads the literals of a clause that are not false for good into `kept`; false when one is true for good. */
function readOpen(from: usize, clause: i32): bool {
  kept.size = 0;
  for (let i = 0; i < at(from, clause); i++) {
    const side = at(from, clause + HEADER + 2 * i);
    const value = at(from, clause + HEADER + 2 * i + 1);
    if (isTrue(side, value)) return false;
    if (isFalse(side, value)) continue;
    kept.add(side);
    kept.add(value);
  }
  return true;
}
