// Places time points one after another, in the order of their times: when a point can come at the earliest, and what placing it
// means for places, chambers and the points that hang on it. Part of the beam's core.
import { at, put, words } from '../../assembly/memory';
import { chamberOf, HELD, high, inside, lastEnd, lead, low, mark, now, poolOf, slots } from './rows';
import {
  burstAfter,
  burstAfterOff,
  burstMembers,
  burstOf,
  burstOffset,
  burstWait,
  burstWithin,
  chamberRoom,
  chamberSlot,
  groupCount,
  groupOf,
  indexInPart,
  isFree,
  lags,
  marks,
  NEVER,
  partOf,
  parts,
  points,
  poolCapacity,
  poolHours,
  poolSlot,
  stayEnd,
  stayEndOff,
  stayFrom,
  stayRoom,
  stayStart,
  stayStartOff,
  staysUntil,
  useAmount,
  useFromOff,
  usePools,
  usesFrom,
  usesUntil,
  useUntil,
  useUntilOff,
} from './shop';
import { cap, fitStay, fitUse, letGo, NO_PATH, STAY, take, USE } from './slots';

/** A point that cannot be placed before something held is let go, and one that cannot be placed any more. */
export const BLOCKED: i32 = NEVER;
export const DEAD: i32 = 2 * NEVER;

/** Per point: not before this time, whatever allows it. */
export let notBefore: usize = 0;

export function layPlacing(): void {
  notBefore = words(points);
}

/** Earliest time of a point, its stay in the given chamber (-1: it begins none); BLOCKED or DEAD when there is none. */
export function earliestOf(row: usize, v: i32, chamber: i32): i32 {
  let t = max(at(row, low + v), at(notBefore, v));
  if (at(isFree, v) === 0) t = max(t, at(row, now));
  let latest = at(row, high + v);
  const b = at(burstOf, v);
  if (b >= 0) {
    const after = at(burstAfter, b);
    const shift = at(burstAfterOff, b) - at(burstOffset, v);
    const wait = shift + at(burstWait, b);
    const end = at(row, after);
    if (end < 0) {
      t = max(t, at(row, low + after) + shift);
      latest = min(latest, at(row, high + after) + wait);
    } else if (at(row, lead + b) < 0) latest = min(latest, end + wait);
  }
  while (t <= latest) {
    const next = nextFit(row, v, chamber, t);
    if (next === t) return t;
    if (next >= BLOCKED) return BLOCKED;
    t = next;
  }
  return DEAD;
}

/** The time itself when the point fits then, otherwise a later one before which it does not. */
function nextFit(row: usize, v: i32, chamber: i32, t: i32): i32 {
  let next = t;
  for (let i = usesFrom.from(v); i < usesFrom.until(v); i++) {
    const u = usesFrom.item(i);
    const fromOff = at(useFromOff, u);
    let soonest = NEVER;
    for (let k = usePools.from(u); k < usePools.until(u); k++) {
      soonest = min(soonest, fitUse(row, u, usePools.item(k), next + fromOff));
    }
    if (soonest >= NEVER) return BLOCKED;
    next = max(next, soonest - fromOff);
  }
  const s = at(stayFrom, v);
  if (s < 0) return next;
  const startOff = at(stayStartOff, s);
  const soonest = fitStay(row, s, chamber, next + startOff);
  return soonest >= NEVER ? BLOCKED : max(next, soonest - startOff);
}

/** Places a point at its earliest time, with what begins and ends there. False when that leads nowhere. */
export function place(row: usize, v: i32, t: i32, chamber: i32): bool {
  if (t > at(row, now)) put(row, now, t);
  const b = at(burstOf, v);
  if (b >= 0 && at(row, lead + b) < 0) {
    put(row, lead + b, v);
    const offset = at(burstOffset, v);
    const after = at(burstAfter, b);
    if (at(row, after) < 0) {
      const end = min(t + offset - at(burstAfterOff, b), at(row, high + after));
      if (!putPoint(row, after, end, -1)) return false;
    }
    gather(row, v, t + offset, b);
  }
  return putPoint(row, v, t, chamber);
}

/** The other members of a burst begin within their time of the first. */
function gather(row: usize, first: i32, start: i32, b: i32): void {
  const within = at(burstWithin, b);
  for (let i = burstMembers.from(b); i < burstMembers.until(b); i++) {
    const w = burstMembers.item(i);
    if (w === first || at(row, w) >= 0) continue;
    const soonest = start - at(burstOffset, w);
    put(row, low + w, max(at(row, low + w), soonest));
    cap(row, w, soonest + within);
  }
}

function putPoint(row: usize, v: i32, t: i32, chamber: i32): bool {
  put(row, v, t);
  put(row, mark, at(row, mark) ^ at(marks, 2 * v));
  put(row, mark + 1, at(row, mark + 1) ^ at(marks, 2 * v + 1));
  endAt(row, v, t);
  for (let i = usesFrom.from(v); i < usesFrom.until(v); i++) if (!beginUse(row, usesFrom.item(i), v, t)) return false;
  const s = at(stayFrom, v);
  if (s >= 0 && !beginStay(row, s, t, chamber)) return false;
  follow(row, v, t);
  return true;
}

/** Frees what ends at a point. */
function endAt(row: usize, v: i32, t: i32): void {
  for (let i = usesUntil.from(v); i < usesUntil.until(v); i++) {
    const u = usesUntil.item(i);
    const p = at(row, poolOf + u);
    // Where it has no pool yet it is not begun, or needs no look.
    if (p >= 0) letGo(row, slots + at(poolSlot, p), at(poolCapacity, p), HELD - u, t + at(useUntilOff, u));
  }
  for (let i = staysUntil.from(v); i < staysUntil.until(v); i++) {
    const s = staysUntil.item(i);
    const c = at(row, chamberOf + s);
    if (c < 0) continue;
    const end = t + at(stayEndOff, s);
    letGo(row, slots + at(chamberSlot, c), at(chamberRoom, c), HELD - s, end);
    const group = c * groupCount + at(groupOf, s);
    put(row, inside + group, at(row, inside + group) - 1);
    put(row, lastEnd + group, max(at(row, lastEnd + group), end));
  }
}

function beginUse(row: usize, u: i32, v: i32, t: i32): bool {
  const from = t + at(useFromOff, u);
  let p = -1;
  for (let k = usePools.from(u); k < usePools.until(u) && p < 0; k++) {
    if (fitUse(row, u, usePools.item(k), from) === from) p = usePools.item(k);
  }
  if (p < 0) return false;
  put(row, poolOf + u, p);
  const until = at(useUntil, u);
  const held = until === v ? t + at(useUntilOff, u) : HELD - u;
  take(row, slots + at(poolSlot, p), at(poolCapacity, p), at(useAmount, u), from, held, USE);
  if (until === v) return true;
  for (let k = poolHours.from(p); k < poolHours.until(p); k += 2) {
    if (poolHours.item(k) > from || from >= poolHours.item(k + 1)) continue;
    cap(row, until, poolHours.item(k + 1) - at(useUntilOff, u));
    break;
  }
  return true;
}

function beginStay(row: usize, s: i32, t: i32, c: i32): bool {
  const from = t + at(stayStartOff, s);
  if (fitStay(row, s, c, from) !== from) return false;
  put(row, chamberOf + s, c);
  const isOpen = at(stayStart, s) !== at(stayEnd, s);
  const end = t + at(stayEndOff, s);
  take(row, slots + at(chamberSlot, c), at(chamberRoom, c), at(stayRoom, s), from, isOpen ? HELD - s : end, STAY);
  const group = c * groupCount + at(groupOf, s);
  if (isOpen) put(row, inside + group, at(row, inside + group) + 1);
  else put(row, lastEnd + group, max(at(row, lastEnd + group), end));
  return true;
}

/** Narrows the windows of the points that hang on one just placed. */
function follow(row: usize, v: i32, t: i32): void {
  const c = at(partOf, v);
  const first = parts.from(c);
  const n = parts.until(c) - first;
  const i = at(indexInPart, v);
  const after = lags.from(c) + i * n;
  const before = lags.from(c) + i;
  for (let j = 0; j < n; j++) {
    const w = parts.item(first + j);
    if (at(row, w) >= 0) continue;
    const later = lags.item(after + j);
    if (later !== NO_PATH && t + later > at(row, low + w)) put(row, low + w, t + later);
    const sooner = lags.item(before + j * n);
    if (sooner !== NO_PATH && t - sooner < at(row, high + w)) put(row, high + w, t - sooner);
  }
}
