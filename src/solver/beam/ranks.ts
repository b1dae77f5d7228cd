// A set of whole numbers below some count that knows its least, one bit a number. Used by the estimate.

export class Ranks {
  private readonly words: Int32Array;
  private size = 0;

  constructor(count: number) {
    this.words = new Int32Array((count + 31) >> 5);
  }

  get isEmpty(): boolean {
    return this.size === 0;
  }

  clear(): void {
    this.words.fill(0);
    this.size = 0;
  }

  add(rank: number): void {
    this.words[rank >> 5] = (this.words[rank >> 5] as number) | (0x80000000 >>> (rank & 31));
    this.size++;
  }

  remove(rank: number): void {
    this.words[rank >> 5] = (this.words[rank >> 5] as number) & ~(0x80000000 >>> (rank & 31));
    this.size--;
  }

  /** The least, of a set that is not empty. */
  first(): number {
    let word = 0;
    while (this.words[word] === 0) word++;
    return (word << 5) + Math.clz32(this.words[word] as number);
  }
}
