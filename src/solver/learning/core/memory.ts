// Numbers in the memory of the learning core: lists of whole numbers and of doubles by their address. Nothing is given back: a core
// serves one engine and goes with it. AssemblyScript, as all of this folder.

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
