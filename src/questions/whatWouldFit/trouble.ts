// Which orders of a plan are late or left out, and what it means that they fit. Used by whatWouldFit and fit.
import type { Plan, PlanOrder } from '../../model/plan.ts';

/** The orders that are to fit, those that may stay late or left out because they are so already, those a change may touch. */
export type Wanted = {
  /** Indexes of orders, as in the scenario. */
  readonly orders: readonly number[];
  readonly mayFail: ReadonlySet<number>;
  /** Orders that may be moved or made smaller to make them fit. */
  readonly changeable: readonly number[];
};

function isOnTime(order: PlanOrder | undefined): boolean {
  return order !== undefined && order.readyAt !== null && (order.lateMinutes ?? 0) === 0;
}

/** Indexes of the orders that are late or not all there. */
export function troubledOrders(plan: Plan): readonly number[] {
  return plan.orders.flatMap((order, index) => (isOnTime(order) ? [] : [index]));
}

/** Whether every wanted order is whole and on time, and no other is in trouble but those that may be. */
export function doFit(plan: Plan, { orders, mayFail }: Wanted): boolean {
  const wanted = new Set(orders);
  return plan.orders.every((order, index) => isOnTime(order) || (mayFail.has(index) && !wanted.has(index)));
}
