// An order in words: "36 Cheese straw". Used by the kinds of change and by fit.
import type { Order, Scenario } from '../../model/scenario.ts';

export function productWords({ products }: Scenario, productId: string): string {
  return products.find(({ id }) => id === productId)?.name ?? productId;
}

export function orderWords(scenario: Scenario, { product, pieces }: Pick<Order, 'product' | 'pieces'>): string {
  return `${pieces} ${productWords(scenario, product)}`;
}
