// From orders to trays: how many trays of each product, and which order each serves. Used by the compiler.
import { traysFor } from '../dough/traysFor.ts';
import type { Clock } from '../model/clock.ts';
import { minuteAt } from '../model/clock.ts';
import type { Product, Scenario } from '../model/scenario.ts';

/** The trays one product needs. `dues[k]` is the minute by which the k-th tray to be ready is due. */
export type ProductTrays = { readonly product: Product; readonly trays: number; readonly dues: readonly number[] };

/** Orders of a product in the order of their times, then as written. */
export function ordersOf(
  scenario: Scenario,
  clock: Clock,
  productId: string,
): { readonly index: number; readonly pieces: number; readonly dueMinute: number }[] {
  return scenario.orders
    .map((order, index) => ({ product: order.product, index, pieces: order.pieces, dueMinute: minuteAt(clock, order.readyBy) }))
    .filter((order) => order.product === productId)
    .sort((a, b) => a.dueMinute - b.dueMinute || a.index - b.index);
}

/** The k-th tray holds pieces k x piecesPerTray + 1 and on; it is due when the first order it serves is. */
function duesOf(
  orders: readonly { readonly pieces: number; readonly dueMinute: number }[],
  piecesPerTray: number,
  trays: number,
): number[] {
  const dues: number[] = [];
  let at = 0;
  let servedUpTo = 0;
  for (let k = 0; k < trays; k++) {
    while (servedUpTo + (orders[at]?.pieces ?? 0) <= k * piecesPerTray) {
      servedUpTo += orders[at]?.pieces ?? 0;
      at++;
    }
    dues.push((orders[at] as { readonly dueMinute: number }).dueMinute);
  }
  return dues;
}

/** Every product that is ordered, in the scenario's order. */
export function traysOf(scenario: Scenario, clock: Clock): readonly ProductTrays[] {
  return scenario.products.flatMap((product) => {
    const orders = ordersOf(scenario, clock, product.id);
    const pieces = orders.reduce((sum, order) => sum + order.pieces, 0);
    if (pieces === 0) return [];
    const trays = traysFor(pieces, product.piecesPerTray);
    return [{ product, trays, dues: duesOf(orders, product.piecesPerTray, trays) }];
  });
}
