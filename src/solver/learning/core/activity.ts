// Which variable to decide next: those met in recent conflicts first (variable state independent decaying sum: Moskewicz et
// al. 2001, DAC 38, section 3), kept in a binary heap. Part of the learning core.
import { at, put, putReal, realAt, reals, words } from '../../assembly/memory';

const DECAY: f64 = 1 / 0.9;
const LARGEST: f64 = 1e100;

let worth: usize = 0;
let variables: i32 = 0;
let open: usize = 0;
let place: usize = 0;
let size: i32 = 0;
let step: f64 = 1;

/** `given`: first worth of each of so many variables, 0 to 1; higher goes first. Every variable is open. */
export function beginActivity(given: usize, count: i32): void {
  worth = reals(count);
  memory.copy(worth, given, (<usize>count) << 3);
  variables = count;
  open = words(count);
  place = words(count);
  for (let v = 0; v < count; v++) put(place, v, -1);
  for (let v = 0; v < count; v++) offer(v);
}

/** Puts a variable back among the open ones. */
export function offer(variable: i32): void {
  if (at(place, variable) >= 0) return;
  put(open, size, variable);
  put(place, variable, size);
  size++;
  up(size - 1);
}

/** Takes the most active variable out; -1 when none is left. */
export function take(): i32 {
  if (size === 0) return -1;
  const top = at(open, 0);
  put(place, top, -1);
  size--;
  if (size > 0) {
    const last = at(open, size);
    put(open, 0, last);
    put(place, last, 0);
    down(0);
  }
  return top;
}

export function bump(variable: i32): void {
  putReal(worth, variable, realAt(worth, variable) + step);
  if (realAt(worth, variable) > LARGEST) {
    for (let v = 0; v < variables; v++) putReal(worth, v, realAt(worth, v) / LARGEST);
    step /= LARGEST;
  }
  const held = at(place, variable);
  if (held >= 0) up(held);
}

export function decay(): void {
  step *= DECAY;
}

function up(from: i32): void {
  const v = at(open, from);
  const w = realAt(worth, v);
  let here = from;
  while (here > 0) {
    const parent = (here - 1) >> 1;
    const p = at(open, parent);
    if (realAt(worth, p) >= w) break;
    put(open, here, p);
    put(place, p, here);
    here = parent;
  }
  put(open, here, v);
  put(place, v, here);
}

function down(from: i32): void {
  const v = at(open, from);
  const w = realAt(worth, v);
  let here = from;
  for (;;) {
    let child = 2 * here + 1;
    if (child >= size) break;
    if (child + 1 < size && realAt(worth, at(open, child + 1)) > realAt(worth, at(open, child))) child++;
    const c = at(open, child);
    if (realAt(worth, c) <= w) break;
    put(open, here, c);
    put(place, c, here);
    here = child;
  }
  put(open, here, v);
  put(place, v, here);
}
