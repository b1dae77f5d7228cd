// What becomes of the orders: when each is ready, how late, and which trays are left out. Trays serve orders in the order
// of the orders' times, as they get ready.
import { instantAt } from '../model/clock.ts';
import type { PlanOrder } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { Compiled } from './shopProblem.ts';
import type { Names } from './traySlots.ts';
import { ordersOf } from './trays.ts';

/** Minutes at which the planned trays of a product are ready, in order. */
export function readyMinutes(compiled: Compiled, names: Names, productId: string): number[] {
  return compiled.trays
    .flatMap((tray, t) => (tray.product.id === productId ? [names.trays[t]?.readyMinute ?? null] : []))
    .filter((minute): minute is number => minute !== null)
    .sort((a, b) => a - b);
}

/** Orders of the plan, in the scenario's order. */
export function planOrders(scenario: Scenario, compiled: Compiled, names: Names): PlanOrder[] {
  const rows: PlanOrder[] = [];
  for (const { product } of compiled.products) {
    const ready = readyMinutes(compiled, names, product.id);
    let served = 0;
    for (const order of ordersOf(scenario, compiled.clock, product.id)) {
      served += order.pieces;
      const last = ready[Math.ceil(served / product.piecesPerTray) - 1];
      rows[order.index] = {
        product: product.id,
        pieces: order.pieces,
        readyBy: instantAt(compiled.clock, order.dueMinute),
        readyAt: last === undefined ? null : instantAt(compiled.clock, last),
        lateMinutes: last === undefined ? null : Math.max(0, last - order.dueMinute),
      };
    }
  }
  return rows;
}

/** Minutes late summed over the planned trays. */
export function lateTrayMinutes(compiled: Compiled, names: Names): number {
  let late = 0;
  for (const { product, dues } of compiled.products) {
    readyMinutes(compiled, names, product.id).forEach((ready, k) => {
      late += Math.max(0, ready - (dues[k] as number));
    });
  }
  return late;
}
