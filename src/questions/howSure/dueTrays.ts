// Which order each tray of a product serves in a morning: the trays as they get ready, the orders by their times.
import { orderedTrays } from '../../check/orderedTrays.ts';
import { type Clock, minuteAt } from '../../model/clock.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { Course } from './course.ts';

export type DueProduct = {
  readonly product: string;
  /** Numbers of its trays in the course. */
  readonly trays: readonly number[];
  /** Minute at which the k-th tray to be ready is due; Infinity when no order waits for it. */
  readonly dueMinutes: readonly number[];
  /** Its orders: place in the scenario's list, and which tray to be ready is the last one it waits for. */
  readonly orders: readonly { readonly number: number; readonly dueMinute: number; readonly lastTray: number }[];
};

export function dueProducts(scenario: Scenario, course: Course, clock: Clock): readonly DueProduct[] {
  return orderedTrays(scenario, (text) => minuteAt(clock, text)).map(({ productId, piecesPerTray, orders }) => {
    const trays = course.trays.flatMap(({ product }, number) => (product === productId ? [number] : []));
    const dueMinutes = trays.map(() => Number.POSITIVE_INFINITY);
    let piecesBefore = 0;
    const due = orders.map(({ order, number, dueMinute }) => {
      const first = Math.floor(piecesBefore / piecesPerTray);
      piecesBefore += order.pieces;
      const lastTray = Math.floor((piecesBefore - 1) / piecesPerTray);
      for (let k = first; k <= Math.min(lastTray, trays.length - 1); k++)
        dueMinutes[k] = Math.min(dueMinutes[k] ?? dueMinute, dueMinute);
      return { number, dueMinute, lastTray };
    });
    return { product: productId, trays, dueMinutes, orders: due };
  });
}
