// Numbers in the memory of a core: lists of whole numbers and of doubles by their address. Nothing is given back: a core serves one
// solver and goes with it. AssemblyScript, used by the learning core and the beam's.

/** Room for so many whole numbers, all 0. Returns its address. */
export function words(count: i32): usize {
  const size = (<usize>count) << 2;
  const list = heap.alloc(size);
  memory.fill(list, 0, size);
  return list;
}

/** Room for so many doubles, all 0. */
export function reals(count: i32): usize {
  const size = (<usize>count) << 3;
  const list = heap.alloc(size);
  memory.fill(list, 0, size);
  return list;
}

/** Room for so many bytes, all 0. */
export function bytes(count: i32): usize {
  const list = heap.alloc(<usize>count);
  memory.fill(list, 0, <usize>count);
  return list;
}

/** A larger list with the first `held` numbers of a list. */
export function grown(list: usize, held: i32, count: i32): usize {
  const larger = words(count);
  memory.copy(larger, list, (<usize>held) << 2);
  return larger;
}

export function at(list: usize, i: i32): i32 {
  return load<i32>(list + ((<usize>i) << 2));
}

export function put(list: usize, i: i32, value: i32): void {
  store<i32>(list + ((<usize>i) << 2), value);
}

export function realAt(list: usize, i: i32): f64 {
  return load<f64>(list + ((<usize>i) << 3));
}

export function putReal(list: usize, i: i32, value: f64): void {
  store<f64>(list + ((<usize>i) << 3), value);
}

/** The first of the numbers [from, until) above `most`; `until` or more: none is. Four at a time. */
export function firstAbove(list: usize, from: i32, until: i32, most: i32): i32 {
  const limit = i32x4.splat(most);
  let i = from;
  for (; i + 4 <= until; i += 4) {
    if (v128.any_true(i32x4.gt_s(v128.load(list + ((<usize>i) << 2)), limit))) break;
  }
  while (i < until && at(list, i) <= most) i++;
  return i;
}

/** The last of the numbers [from, until) above `most`; below `from`: none is. */
export function lastAbove(list: usize, from: i32, until: i32, most: i32): i32 {
  const limit = i32x4.splat(most);
  let i = until;
  for (; i - 4 >= from; i -= 4) {
    if (v128.any_true(i32x4.gt_s(v128.load(list + ((<usize>(i - 4)) << 2)), limit))) break;
  }
  i--;
  while (i >= from && at(list, i) <= most) i--;
  return i;
}

/** Adds to each of the numbers [from, until). */
export function addToAll(list: usize, from: i32, until: i32, by: i32): void {
  const each = i32x4.splat(by);
  let i = from;
  for (; i + 4 <= until; i += 4) {
    const four = list + ((<usize>i) << 2);
    v128.store(four, i32x4.add(v128.load(four), each));
  }
  for (; i < until; i++) put(list, i, at(list, i) + by);
}

/** A list of whole numbers that grows as it is added to. */
export class Growing {
  list: usize = words(64);
  size: i32 = 0;
  private room: i32 = 64;

  add(value: i32): void {
    if (this.size === this.room) {
      this.room *= 2;
      this.list = grown(this.list, this.size, this.room);
    }
    put(this.list, this.size, value);
    this.size++;
  }
}

let shared: usize = 0;
let sharedRoom: i32 = 0;

/** An address at which so many whole numbers can be handed over; what was there is over. */
export function sharedWords(count: i32): usize {
  if (count > sharedRoom) {
    sharedRoom = max(2 * count, 1024);
    shared = words(sharedRoom);
  }
  return shared;
}
