// A binary heap of numbers by keys kept beside them, the smallest key first. Used by the estimate.

export class Heap {
  private readonly items: Int32Array;
  private readonly keys: Int32Array;
  size = 0;

  constructor(most: number) {
    this.items = new Int32Array(most + 1);
    this.keys = new Int32Array(most + 1);
  }

  get first(): number {
    return this.items[0] as number;
  }

  push(item: number, key: number): void {
    const { items, keys } = this;
    let at = this.size++;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if ((keys[parent] as number) <= key) break;
      items[at] = items[parent] as number;
      keys[at] = keys[parent] as number;
      at = parent;
    }
    items[at] = item;
    keys[at] = key;
  }

  drop(): void {
    const { items, keys } = this;
    const size = --this.size;
    const item = items[size] as number;
    const key = keys[size] as number;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= size) break;
      if (child + 1 < size && (keys[child + 1] as number) < (keys[child] as number)) child++;
      if ((keys[child] as number) >= key) break;
      items[at] = items[child] as number;
      keys[at] = keys[child] as number;
      at = child;
    }
    items[at] = item;
    keys[at] = key;
  }
}
