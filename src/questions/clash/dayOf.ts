// The day with some of its orders and some of its limits only: what is not ordered is left away, other limits are lifted.
// Used by clash.
import type { Order, Scenario } from '../../model/scenario.ts';
import type { Limit } from './limit.ts';

export type Candidate =
  | { readonly is: 'order'; readonly number: number; readonly order: Order }
  | { readonly is: 'limit'; readonly limit: Limit };

/** Orders as the scenario lists them, then limits in the order in which they may be lifted. */
export function candidatesOf(scenario: Scenario, limits: readonly Limit[]): readonly Candidate[] {
  return [
    ...scenario.orders.map((order, index): Candidate => ({ is: 'order', number: index + 1, order })),
    ...limits.map((limit): Candidate => ({ is: 'limit', limit })),
  ];
}

/** Null when no order is left: nothing to bake is ready on time. */
export function dayOf(scenario: Scenario, all: readonly Candidate[], kept: ReadonlySet<Candidate>): Scenario | null {
  const orders = all.flatMap((one) => (one.is === 'order' && kept.has(one) ? [one.order] : []));
  if (orders.length === 0) return null;
  const lifted = all.reduce((day, one) => (one.is === 'limit' && !kept.has(one) ? one.limit.lift(day) : day), scenario);
  const products = lifted.products.filter(({ id }) => orders.some((order) => order.product === id));
  const doughs = lifted.doughs.filter(({ id }) => products.some(({ dough }) => dough === id));
  return { ...lifted, orders, products, doughs };
}
