// Schedules from nothing in other orders: the cheapest of them is kept and holds, and chance is seeded.
import { describe, expect, it } from 'vitest';
import { audit } from '../../src/solver/audit.ts';
import { randomOf } from '../../src/solver/random.ts';
import { reorder } from '../../src/solver/reorder.ts';
import { Search } from '../../src/solver/search.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { jobShop } from './shops.ts';

/** Twelve jobs of four operations whose machines and lengths follow from their numbers. */
const TWELVE_JOBS = jobShop(
  Array.from({ length: 12 }, (_, j) =>
    [0, 1, 2, 3].map((o) => [(o * (1 + 2 * (j % 2)) + j) % 4, 1 + ((j * 7 + o * 5) % 9)] as const),
  ),
);

type Tried = {
  readonly first: number;
  readonly best: number;
  readonly order: readonly number[];
  readonly seen: readonly string[];
};

function tried(seed: number, count: number): Tried {
  const shop = shopOf(TWELVE_JOBS);
  const search = new Search(shop, randomOf(1));
  for (const _ of search.construct());
  const first = search.bestCost.total;
  const seen: string[] = [];
  const others = reorder(search, randomOf(seed));
  for (let k = 0; k < count; k++) {
    const before = search.orderTotal;
    const isGain = others.next().value;
    expect(isGain).toBe(search.orderTotal < before);
    seen.push(search.order.join(' '));
    // Throws when what it keeps does not hold, or is counted wrongly.
    audit(shop, search.bestLayout(), search.bestCost);
  }
  return { first, best: search.bestCost.total, order: search.order, seen };
}

describe('schedules from nothing in other orders', () => {
  it('hold every block once, and the cheapest is kept', () => {
    const { first, best, order } = tried(1, 200);
    expect([...order].sort((a, b) => a - b)).toEqual(shopOf(TWELVE_JOBS).blocks.map(({ id }) => id));
    expect(best).toBeLessThan(first);
  });

  it('are the same again from the same seed, and others from another', () => {
    expect(tried(7, 60)).toEqual(tried(7, 60));
    expect(tried(7, 60).seen).not.toEqual(tried(8, 60).seen);
  });
});
