// Which variable to decide next: choices between yes and no before all else, for a time follows from what comes before what, and a
// contradiction between choices says more than one between minutes; then those met in recent conflicts first (variable state
// independent decaying sum: Moskewicz et al. 2001, DAC 38, section 3). Kept in a binary heap. Part of the learning core.
import { at, bytes, put, putReal, realAt, reals, words } from '../../assembly/memory';
import { leastOf, mostOf } from './bounds';

const DECAY: f64 = 1 / 0.9;
const LARGEST: f64 = 1e100;

let worth: usize = 0;
/** Per variable whether it is a choice between yes and no. */
let isChoice: usize = 0;
let variables: i32 = 0;
let open: usize = 0;
let place: usize = 0;
let size: i32 = 0;
let step: f64 = 1;

/** `given`: first worth of each of so many variables, 0 to 1; of those of a kind higher goes first. Every variable is open. */
export function beginActivity(given: usize, count: i32): void {
  worth = reals(count);
  memory.copy(worth, given, (<usize>count) << 3);
  variables = count;
  isChoice = bytes(count);
  for (let v = 0; v < count; v++) store<u8>(isChoice + <usize>v, leastOf(v) === 0 && mostOf(v) === 1 ? 1 : 0);
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

function isAhead(a: i32, b: i32): bool {
  const choiceA = load<u8>(isChoice + <usize>a);
  const choiceB = load<u8>(isChoice + <usize>b);
  return choiceA === choiceB ? realAt(worth, a) > realAt(worth, b) : choiceA > choiceB;
}

function up(from: i32): void {
  const v = at(open, from);
  let here = from;
  while (here > 0) {
    const parent = (here - 1) >> 1;
    const p = at(open, parent);
    if (!isAhead(v, p)) break;
    put(open, here, p);
    put(place, p, here);
    here = parent;
  }
  put(open, here, v);
  put(place, v, here);
}

function down(from: i32): void {
  const v = at(open, from);
  let here = from;
  for (;;) {
    let child = 2 * here + 1;
    if (child >= size) break;
    if (child + 1 < size && isAhead(at(open, child + 1), at(open, child))) child++;
    const c = at(open, child);
    if (!isAhead(c, v)) break;
    put(open, here, c);
    put(place, c, here);
    here = child;
  }
  put(open, here, v);
  put(place, v, here);
}
