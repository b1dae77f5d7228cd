// A pool of equal places and the spans in which each is taken. The made-up plans of the drawing tests book their places here.

export type Busy = { readonly start: number; end: number };

function isFree(busy: readonly Busy[], start: number, end: number): boolean {
  return busy.every((span) => span.end <= start || span.start >= end);
}

/** Pools of equal places, each with the spans in which it is taken. */
export class Pool {
  readonly places: Busy[][];
  constructor(size: number) {
    this.places = Array.from({ length: size }, () => []);
  }
  /** The first minute from `earliest` at which a place is free for `minutes`. */
  find(earliest: number, minutes: number): { readonly start: number; readonly index: number } {
    for (let start = earliest; ; start += 1) {
      const index = this.places.findIndex((busy) => isFree(busy, start, start + minutes));
      if (index !== -1) return { start, index };
    }
  }
  take(index: number, start: number, end: number): void {
    this.places[index]?.push({ start, end });
  }
}
