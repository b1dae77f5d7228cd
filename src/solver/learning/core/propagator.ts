// Something that raises bounds when a side it watches has risen, and which of its items changed since it last ran, each once. The
// engine notes rises and what is taken back; the propagator reads the list and clears it when it is through. Part of the learning core.
import { at, bytes, Growing, put, words } from '../../assembly/memory';

export abstract class Propagator {
  /** Slow ones run when the others have nothing left to say. */
  readonly isSlow: bool;
  /** Sides and the items they belong to, in pairs. */
  readonly watched: Growing = new Growing();
  isQueued: bool = false;
  /** Items that changed. */
  wakeList: usize;
  wakes: i32 = 0;
  private readonly isListed: usize;

  /** At first every item counts as changed. */
  constructor(isSlow: bool, items: i32) {
    this.isSlow = isSlow;
    this.wakeList = words(items);
    this.isListed = bytes(items);
    for (let item = 0; item < items; item++) this.touch(item);
  }

  abstract propagate(): bool;

  protected watch(side: i32, item: i32): void {
    this.watched.add(side);
    this.watched.add(item);
  }

  /** Watches a side, once, where there is a single item. */
  protected watchWhole(side: i32): void {
    for (let k = 0; k < this.watched.size; k += 2) if (at(this.watched.list, k) === side) return;
    this.watch(side, 0);
  }

  touch(item: i32): void {
    const listed = this.isListed + <usize>item;
    if (load<u8>(listed) !== 0) return;
    store<u8>(listed, 1);
    put(this.wakeList, this.wakes, item);
    this.wakes++;
  }

  protected clearWakes(): void {
    for (let k = 0; k < this.wakes; k++) store<u8>(this.isListed + <usize>at(this.wakeList, k), 0);
    this.wakes = 0;
  }
}
