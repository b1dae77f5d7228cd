// The last look at a schedule that costs what it costs: each unit, in the order in which they are ready, is taken out and put
// back where it fits earliest, or else somewhat later but before where it stood, and stays there when the schedule costs no more,
// changes states no more often, and is ready no later on the whole. What a baker would point at (a free place beside something that
// waits, a change for nothing) goes away.
import type { Search } from './search.ts';

/** Passes over all units at most: each pass may open gaps for the next. */
const MOST_PASSES = 12;

/** From where on a unit is put back, and whether in its own chamber only. */
const WAYS = [
  ['beginning', false],
  ['beginning', true],
  ['stay', false],
  ['stay', true],
] as const;

/** Polishes the best schedule of a search while there is time. */
export function polish(search: Search, mayGoOn: () => boolean): void {
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    let isBetter = false;
    for (const { block, child } of search.unitsByReady()) {
      if (!mayGoOn()) return;
      if (WAYS.some(([from, keepsChamber]) => search.tryEarlier(block, child, from, keepsChamber))) isBetter = true;
    }
    if (!isBetter) return;
  }
}
