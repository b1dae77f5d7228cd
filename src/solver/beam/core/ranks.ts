// A set of whole numbers below some count that knows its least, one bit a number. Used by the estimate. Part of the beam's core.
import { at, put, words } from '../../assembly/memory';

export class Ranks {
  private readonly bits: usize;
  private readonly wordCount: i32;
  private size: i32 = 0;

  constructor(count: i32) {
    this.wordCount = (count + 31) >> 5;
    this.bits = words(this.wordCount);
  }

  get isEmpty(): bool {
    return this.size === 0;
  }

  clear(): void {
    for (let i = 0; i < this.wordCount; i++) put(this.bits, i, 0);
    this.size = 0;
  }

  add(rank: i32): void {
    put(this.bits, rank >> 5, at(this.bits, rank >> 5) | bitOf(rank));
    this.size++;
  }

  remove(rank: i32): void {
    put(this.bits, rank >> 5, at(this.bits, rank >> 5) & ~bitOf(rank));
    this.size--;
  }

  /** The least, of a set that is not empty. */
  first(): i32 {
    let word = 0;
    while (at(this.bits, word) === 0) word++;
    return (word << 5) + clz(at(this.bits, word));
  }
}

/** The first of a word is its highest. */
function bitOf(rank: i32): i32 {
  return <i32>(<u32>0x80000000 >>> (rank & 31));
}
