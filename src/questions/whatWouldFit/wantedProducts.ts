// The products of the orders that are to fit. Used by the kinds of change.
import type { Product } from '../../model/scenario.ts';
import type { Ground } from './ladder.ts';

export function productsOf({ scenario, wanted }: Ground): readonly Product[] {
  const ids = new Set(wanted.orders.map((index) => scenario.orders[index]?.product));
  return scenario.products.filter(({ id }) => ids.has(id));
}
