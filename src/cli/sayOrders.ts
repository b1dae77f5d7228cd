// When each order is ready, lateness in words. Part of the terminal summary.
import { dayClockOf } from '../draw/dayClock.ts';
import type { Plan, PlanOrder } from '../model/plan.ts';
import { columns } from './columns.ts';
import type { Ink } from './ink.ts';
import { sayMinutes, sayTime } from './sayTime.ts';

/** Most orders listed one by one; a screen holds no more beside the rest. */
const MAX_ROWS = 16;

function isFine(order: PlanOrder): boolean {
  return order.readyAt !== null && (order.lateMinutes ?? 0) === 0;
}

function howLate(order: PlanOrder): string {
  if (order.readyAt === null) return 'not all of it: trays left out';
  return isFine(order) ? '' : `${sayMinutes(order.lateMinutes ?? 0)} late`;
}

/** The orders to list, in the order of their times, and the rest; those in trouble are listed first when not all fit. */
function parted(orders: readonly PlanOrder[]): { readonly shown: readonly PlanOrder[]; readonly rest: readonly PlanOrder[] } {
  const ranked = orders.length <= MAX_ROWS ? orders : [...orders].sort((a, b) => Number(isFine(a)) - Number(isFine(b)));
  const shown = ranked.slice(0, MAX_ROWS);
  shown.sort((a, b) => Date.parse(a.readyBy) - Date.parse(b.readyBy) || a.product.localeCompare(b.product, 'en'));
  return { shown, rest: ranked.slice(MAX_ROWS) };
}

function sayRest(rest: readonly PlanOrder[]): string {
  const notFine = rest.filter((order) => !isFine(order)).length;
  const orders = rest.length === 1 ? 'order' : 'orders';
  return `and ${rest.length} more ${orders}, ${notFine === 0 ? 'on time' : `${notFine} of them late or left out`}`;
}

export function sayOrders(plan: Plan, ink: Ink): readonly string[] {
  const clock = dayClockOf(plan);
  const nameOf = new Map(plan.bakehouse.products.map(({ id, name }) => [id, name]));
  const { shown, rest } = parted(plan.orders);
  const rows = shown.map((order) => [
    order.readyAt === null ? '-' : sayTime(clock, clock.minuteOf(order.readyAt)),
    sayTime(clock, clock.minuteOf(order.readyBy)),
    `${order.pieces} ${nameOf.get(order.product) ?? order.product}`,
    howLate(order),
  ]);
  const [head, ...lines] = columns([['Ready', 'Due', 'Order', ''], ...rows]);
  return [
    ink.quiet(head ?? ''),
    ...lines.map((line, index) => (shown[index] !== undefined && isFine(shown[index]) ? line : ink.bad(line))),
    ...(rest.length === 0 ? [] : [sayRest(rest)]),
  ];
}
