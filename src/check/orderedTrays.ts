// Trays the orders of each product need, counted afresh from the scenario.
import type { Order, Scenario } from '../model/scenario.ts';

export type ProductOrders = {
  readonly productId: string;
  readonly piecesPerTray: number;
  /** Pieces of all its orders over pieces on a tray, rounded up. */
  readonly trays: number;
  /** Its orders by their times, those of the same time as the scenario lists them. */
  readonly orders: readonly { readonly order: Order; readonly number: number; readonly dueMinute: number }[];
};

/** One entry for each product of the scenario, ordered or not. `minuteOf` gives the minute of a clock time. */
export function orderedTrays(scenario: Scenario, minuteOf: (clockTime: string) => number): readonly ProductOrders[] {
  const numbered = scenario.orders.map((order, number) => ({ order, number, dueMinute: minuteOf(order.readyBy) }));
  return scenario.products.map(({ id, piecesPerTray }) => {
    const orders = numbered.filter(({ order }) => order.product === id).sort((a, b) => a.dueMinute - b.dueMinute);
    const pieces = orders.reduce((sum, { order }) => sum + order.pieces, 0);
    return { productId: id, piecesPerTray, trays: Math.ceil(pieces / piecesPerTray), orders };
  });
}
