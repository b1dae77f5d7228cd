// Requests that arrive together are taken one after the other, with a look at everything else in between: else sixty at once hold the event
// loop for as long as all of them take. Used by createApp.ts for every request and by bodyText.ts for every body that has arrived.

/** Milliseconds after which the event loop goes round before the next is taken. One that takes longer by itself is not cut. */
const SLICE_MS = 8;

export class Turns {
  readonly #now: () => number;
  readonly #waiting: (() => void)[] = [];
  #isCalled = false;

  /** @param now - a clock in milliseconds. */
  constructor(now: () => number) {
    this.#now = now;
  }

  /** Calls `act` in its turn, first come first served, never before this returns. */
  take(act: () => void): void {
    this.#waiting.push(act);
    this.#call();
  }

  #call(): void {
    if (this.#isCalled || this.#waiting.length === 0) return;
    this.#isCalled = true;
    setImmediate(() => this.#slice());
  }

  #slice(): void {
    this.#isCalled = false;
    const began = this.#now();
    try {
      do this.#waiting.shift()?.();
      while (this.#waiting.length > 0 && this.#now() - began < SLICE_MS);
    } finally {
      this.#call();
    }
  }
}
