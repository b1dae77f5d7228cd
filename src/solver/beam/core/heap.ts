// A binary heap of numbers by keys kept beside them, the smallest key first. Used by the estimate. Part of the beam's core.
import { at, put, words } from '../../assembly/memory';

export class Heap {
  private readonly items: usize;
  private readonly keys: usize;
  size: i32 = 0;

  constructor(most: i32) {
    this.items = words(most + 1);
    this.keys = words(most + 1);
  }

  get first(): i32 {
    return at(this.items, 0);
  }

  push(item: i32, key: i32): void {
    const items = this.items;
    const keys = this.keys;
    let place = this.size++;
    while (place > 0) {
      const parent = (place - 1) >> 1;
      if (at(keys, parent) <= key) break;
      put(items, place, at(items, parent));
      put(keys, place, at(keys, parent));
      place = parent;
    }
    put(items, place, item);
    put(keys, place, key);
  }

  drop(): void {
    const items = this.items;
    const keys = this.keys;
    const size = --this.size;
    const item = at(items, size);
    const key = at(keys, size);
    let place = 0;
    while (true) {
      let child = 2 * place + 1;
      if (child >= size) break;
      if (child + 1 < size && at(keys, child + 1) < at(keys, child)) child++;
      if (at(keys, child) >= key) break;
      put(items, place, at(items, child));
      put(keys, place, at(keys, child));
      place = child;
    }
    put(items, place, item);
    put(keys, place, key);
  }
}
