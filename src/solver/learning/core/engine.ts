// The learning core: decide, propagate, learn from the conflict, go back, restart. Knows variables, clauses, arcs and propagators;
// what they stand for is the business of whoever built the model. One core serves one engine: its state is that of these files.

import { at, Growing, put, words } from '../../assembly/memory';
import { beginActivity, bump, decay, offer, take } from './activity';
import { analyse, backLevel, beginAnalysis, glue, literals, met, size } from './analysis';
import { freezeArcs, hasRows, propagateArcs, takeBackArcs } from './arcs';
import {
  BY_CLAUSE,
  DECISION,
  entryOld,
  entrySide,
  leastOf,
  level,
  mostOf,
  openLevel,
  raise,
  sideCount,
  takeBackTo,
  trailSize,
} from './bounds';
import { forgetHalf, freezeClauses, learnClause, learnedCount, propagateClauses } from './clauses';
import { Propagator } from './propagator';

/** How a search ended: a solution stands in the bounds; none exists; none exists under what was assumed; or the limit came. */
const SOLUTION: i32 = 0;
const IMPOSSIBLE: i32 = 1;
const REFUTED: i32 = 2;
const LIMIT: i32 = 3;
/** Within a search: it starts anew, or goes on. */
const RESTARTED: i32 = 4;
const ON: i32 = 5;

/** Conflicts before the first restart (times the Luby sequence). */
const RESTART: i32 = 150;
/** Learned clauses kept at first, and how many more after each clearing. */
const FIRST_KEPT: i32 = 3000;
const MORE_KEPT: i32 = 300;

/** Conflicts, and decisions without one, after which whoever asked is asked whether to go on; powers of 2. */
const CONFLICTS_TO_ASK: i32 = 32;
const DECISIONS_TO_ASK: i32 = 256;

/** Whether the search may go on; answered by whoever asked. */
declare function mayGoOn(): bool;

/** Addresses of the propagators. */
const propagators = new Growing();
/** Pairs of address and item, side by side in the order of the sides; where each side's begin, and the last end. */
let watchers: usize = 0;
let firstWatcher: usize = 0;
/** Propagators that have something to do, the fast and the slow. */
const queue = new Growing();
const slowQueue = new Growing();
let head: i32 = 0;
/** Per variable: the value to decide for first. */
let target: usize = 0;
/** The measure of work. */
let conflicts: i32 = 0;
let mostKept: i32 = FIRST_KEPT;
let restarts: i32 = 0;
let isImpossible: bool = false;

export function conflictCount(): i32 {
  return conflicts;
}

export function targetAddress(): usize {
  return target;
}

export function addPropagator(propagator: Propagator): void {
  propagators.add(<i32>changetype<usize>(propagator));
}

function propagatorAt(address: i32): Propagator {
  return changetype<Propagator>(<usize>address);
}

/** The k-th number of 1 1 2 1 1 2 4 ... (Luby, Sinclair and Zuckerman 1993, Information Processing Letters 47). */
function luby(k: i32): i32 {
  let length = 1;
  let power = 0;
  while (length < k + 1) {
    length = 2 * length + 1;
    power++;
  }
  let here = k;
  while (length - 1 !== here) {
    length = (length - 1) >> 1;
    power--;
    here %= length;
  }
  return 1 << power;
}

/** Ends building. `worth`: of each variable a double, which to decide first, 0 to 1. False when there is no solution. */
export function freeze(worth: usize): bool {
  const sides = sideCount;
  const variables = sides >> 1;
  freezeArcs(sides);
  freezeClauses(sides);
  layOutWatchers(sides);
  beginAnalysis(sides);
  beginActivity(worth, variables);
  target = words(variables);
  for (let v = 0; v < variables; v++) put(target, v, leastOf(v));
  for (let side = 0; side < sides; side++) if (!propagateArcs(side, i32.MIN_VALUE)) isImpossible = true;
  for (let p = 0; p < propagators.size; p++) enqueue(propagatorAt(at(propagators.list, p)));
  if (!isImpossible && !propagate()) isImpossible = true;
  return !isImpossible;
}

function layOutWatchers(sides: i32): void {
  firstWatcher = words(sides + 1);
  for (let p = 0; p < propagators.size; p++) {
    const watched = propagatorAt(at(propagators.list, p)).watched;
    for (let k = 0; k < watched.size; k += 2) {
      const side = at(watched.list, k);
      put(firstWatcher, side + 1, at(firstWatcher, side + 1) + 2);
    }
  }
  for (let side = 0; side < sides; side++) put(firstWatcher, side + 1, at(firstWatcher, side + 1) + at(firstWatcher, side));
  watchers = words(at(firstWatcher, sides));
  const next = words(sides);
  for (let side = 0; side < sides; side++) put(next, side, at(firstWatcher, side));
  for (let p = 0; p < propagators.size; p++) {
    const address = at(propagators.list, p);
    const watched = propagatorAt(address).watched;
    for (let k = 0; k < watched.size; k += 2) {
      const side = at(watched.list, k);
      const place = at(next, side);
      put(watchers, place, address);
      put(watchers, place + 1, at(watched.list, k + 1));
      put(next, side, place + 2);
    }
  }
}

function enqueue(propagator: Propagator): void {
  if (propagator.isQueued) return;
  propagator.isQueued = true;
  if (propagator.isSlow) slowQueue.add(<i32>changetype<usize>(propagator));
  else queue.add(<i32>changetype<usize>(propagator));
}

/** Follows every rise to its end. False on a conflict, which the bounds note. */
function propagate(): bool {
  while (true) {
    while (head < trailSize) {
      const entry = head++;
      const side = entrySide(entry);
      const end = at(firstWatcher, side + 1);
      for (let i = at(firstWatcher, side); i < end; i += 2) {
        const propagator = propagatorAt(at(watchers, i));
        propagator.touch(at(watchers, i + 1));
        enqueue(propagator);
      }
      const old = entryOld(entry);
      if (!propagateArcs(side, old) || !propagateClauses(side, old)) return false;
    }
    const from = queue.size > 0 ? queue : slowQueue;
    if (from.size === 0) return true;
    from.size--;
    const propagator = propagatorAt(at(from.list, from.size));
    propagator.isQueued = false;
    if (!propagator.propagate()) return false;
  }
}

function forgetQueue(): void {
  forget(queue);
  forget(slowQueue);
}

function forget(waiting: Growing): void {
  for (let k = 0; k < waiting.size; k++) propagatorAt(at(waiting.list, k)).isQueued = false;
  waiting.size = 0;
}

/** Goes back to a level; variables that lose their value are open again. */
function backTo(wanted: i32): void {
  if (wanted >= level) return;
  const before = trailSize;
  takeBackTo(wanted);
  for (let entry = trailSize; entry < before; entry++) {
    const side = entrySide(entry);
    offer(side >> 1);
    if (hasRows) takeBackArcs(side);
    const end = at(firstWatcher, side + 1);
    for (let i = at(firstWatcher, side); i < end; i += 2) propagatorAt(at(watchers, i)).touch(at(watchers, i + 1));
  }
  head = min(head, trailSize);
  forgetQueue();
}

/** Adds a fact that holds from now on. False when there is no solution left. */
export function assertRise(side: i32, value: i32): bool {
  backTo(0);
  if (isImpossible || !raise(side, value, DECISION) || !propagate()) {
    forgetQueue();
    isImpossible = true;
  }
  return !isImpossible;
}

/**
 * Searches for a solution in which all assumptions hold, `count` pairs of side and number, for so many conflicts at most; whoever
 * asked is asked every few whether to go on. After SOLUTION the bounds hold it until the next call.
 */
export function search(assumptions: usize, count: i32, mostConflicts: i32): i32 {
  const until = conflicts + min(mostConflicts, i32.MAX_VALUE - conflicts);
  if (isImpossible) return IMPOSSIBLE;
  while (true) {
    backTo(0);
    if (!propagate()) return giveUp();
    if (learnedCount() > mostKept) {
      forgetHalf();
      mostKept += MORE_KEPT;
      if (!propagate()) return giveUp();
    }
    if (count > 0) {
      openLevel();
      for (let i = 0; i < count; i++) if (!raise(at(assumptions, 2 * i), at(assumptions, 2 * i + 1), DECISION)) return REFUTED;
    }
    const stretch = min(until - conflicts, RESTART * luby(restarts++));
    const outcome = descend(stretch, count > 0 ? 1 : 0);
    if (outcome !== RESTARTED) return outcome;
    if (conflicts >= until || !mayGoOn()) return LIMIT;
  }
}

function giveUp(): i32 {
  forgetQueue();
  isImpossible = true;
  return IMPOSSIBLE;
}

function descend(stretch: i32, baseLevel: i32): i32 {
  const until = conflicts + stretch;
  let decisions = 0;
  while (true) {
    decisions++;
    if ((decisions & (DECISIONS_TO_ASK - 1)) === 0 && !mayGoOn()) return LIMIT;
    if (!propagate()) {
      forgetQueue();
      conflicts++;
      if (level === 0) return giveUp();
      const went = learn(baseLevel);
      if (went !== ON) return went;
      if (conflicts >= until) return RESTARTED;
      if ((conflicts & (CONFLICTS_TO_ASK - 1)) === 0 && !mayGoOn()) return LIMIT;
      continue;
    }
    if (!decide()) return SOLUTION;
  }
}

function learn(baseLevel: i32): i32 {
  if (!analyse()) return REFUTED;
  if (size === 0) return giveUp();
  for (let k = 0; k < met.size; k++) bump(at(met.list, k));
  decay();
  const list = literals.list;
  const reason = size > 1 ? (learnClause(list, size, glue) << 2) | BY_CLAUSE : DECISION;
  const wanted = backLevel;
  backTo(wanted);
  if (!raise(at(list, 0), at(list, 1), reason)) {
    if (level === 0) return giveUp();
    // A learned clause is false where it should make its first literal true: a fault.
    unreachable();
  }
  // Below the assumptions: they are made again from the beginning.
  return wanted < baseLevel ? RESTARTED : ON;
}

/** Decides the next open variable for its target. False when every variable has its value. */
function decide(): bool {
  while (true) {
    const v = take();
    if (v < 0) return false;
    const least = leastOf(v);
    const most = mostOf(v);
    if (least === most) continue;
    offer(v);
    const wanted = min(most, max(least, at(target, v)));
    openLevel();
    if (most > wanted) raise(2 * v + 1, -wanted, DECISION);
    else raise(2 * v, wanted, DECISION);
    return true;
  }
}
