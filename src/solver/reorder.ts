// Schedules laid out from nothing in other orders of the blocks: orders near the best one yet, each block moved by chance (sampling
// with a bias: Kolisch and Drexl 1996, Naval Research Logistics 43). What is made first decides how loads and temperatures go together,
// which exchanges and steps of the improver seldom turn over. Used by solve.ts.
import type { Random } from './random.ts';
import type { Search } from './search.ts';

/** How far a block is moved, as a share of all blocks: between these, small ones as often as large ones. */
const LEAST_NOISE = 0.1;
const MOST_NOISE = 1;

/** Lays out one schedule after the other, for as long as it is asked. Yields whether it is the cheapest from nothing yet. */
export function* reorder(search: Search, random: Random): Generator<boolean> {
  for (let k = 0; ; k++) {
    const before = search.orderTotal;
    search.layOut(nearby(search.order, random), k % 2 === 1 ? search.hint : null);
    yield search.orderTotal < before;
  }
}

function nearby(order: readonly number[], random: Random): number[] {
  const most = LEAST_NOISE * (MOST_NOISE / LEAST_NOISE) ** random.next() * order.length;
  const keys = order.map((block, i) => ({ block, key: i + most * (random.next() - 0.5) }));
  return keys.sort((a, b) => a.key - b.key).map(({ block }) => block);
}
