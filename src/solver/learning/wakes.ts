// Which items of a propagator changed since it last ran, each once. The engine notes rises and what is taken back; the
// propagator reads the list and clears it when it is through.

export class Wakes {
  readonly list: Int32Array;
  count = 0;
  private readonly isListed: Uint8Array;

  /** At first every item counts as changed. */
  constructor(items: number) {
    this.list = new Int32Array(items);
    this.isListed = new Uint8Array(items);
    for (let i = 0; i < items; i++) this.touch(i);
  }

  touch(item: number): void {
    if (this.isListed[item] === 1) return;
    this.isListed[item] = 1;
    this.list[this.count++] = item;
  }

  clear(): void {
    for (let k = 0; k < this.count; k++) this.isListed[this.list[k] as number] = 0;
    this.count = 0;
  }
}
