// ORDER_FIGURES: where orders are stated, there is one entry for each order of the scenario, with the ready time and the late
// minutes of the recount.
import type { PlanOrder } from '../../model/plan.ts';
import type { Figures, Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';

function moment(stated: string): string {
  const epochMs = Date.parse(stated);
  return Number.isNaN(epochMs) ? stated : String(epochMs);
}

function orderKey({ product, pieces, readyBy }: PlanOrder): string {
  return JSON.stringify([product, pieces, moment(readyBy)]);
}

function wholeKey(order: PlanOrder): string {
  const { readyAt, lateMinutes } = order;
  return JSON.stringify([orderKey(order), readyAt === null ? null : moment(readyAt), lateMinutes]);
}

/** Entries of one list without their like in the other, each used once. */
function unmatched(list: readonly PlanOrder[], other: readonly PlanOrder[]): readonly PlanOrder[] {
  const left = new Map<string, number>();
  for (const order of other) left.set(wholeKey(order), (left.get(wholeKey(order)) ?? 0) + 1);
  return list.filter((order) => {
    const count = left.get(wholeKey(order)) ?? 0;
    left.set(wholeKey(order), count - 1);
    return count <= 0;
  });
}

function sayReady({ readyAt, lateMinutes }: PlanOrder): string {
  return readyAt === null ? 'not ready' : `ready at ${readyAt}, ${lateMinutes} minutes late`;
}

export function orderFigures(day: JudgedDay, { orders }: Figures): readonly Finding[] {
  const stated = day.plan.orders;
  if (stated === undefined) return [];
  const wrong = [...unmatched(stated, orders)];
  const missing = unmatched(orders, stated).map((order) => {
    const name = `The order of ${order.pieces} ${order.product} by ${order.readyBy}`;
    const at = wrong.findIndex((other) => orderKey(other) === orderKey(order));
    const [like] = at === -1 ? [] : wrong.splice(at, 1);
    const states = like === undefined ? 'is not stated' : `is stated as ${sayReady(like)}`;
    return { says: `${name} ${states}; it is ${sayReady(order)}.`, taskIds: [] };
  });
  const extra = wrong.map(({ pieces, product, readyBy }) => ({
    says: `An order of ${pieces} ${product} by ${readyBy} is stated, which the scenario does not have.`,
    taskIds: [],
  }));
  return [...missing, ...extra];
}
