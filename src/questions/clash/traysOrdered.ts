// How many trays the orders of a day need: more of anything than that cannot bind. Used by the limits of clash.
import { traysFor } from '../../dough/traysFor.ts';
import type { Scenario } from '../../model/scenario.ts';

export function traysOrdered(scenario: Scenario): number {
  return scenario.products.reduce((sum, { id, piecesPerTray }) => {
    const pieces = scenario.orders.reduce((all, order) => all + (order.product === id ? order.pieces : 0), 0);
    return sum + traysFor(pieces, piecesPerTray);
  }, 0);
}
