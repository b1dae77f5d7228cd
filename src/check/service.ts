// Which tray serves which order, when each tray and each order is ready, and how late.
// The k-th tray of a product to be ready serves its pieces (k-1) x piecesPerTray + 1 to k x piecesPerTray, the orders taken
// in the order of their times.
import type { Order } from '../model/scenario.ts';
import type { JudgedDay, TrayRun } from './judgedDay.ts';
import type { ProductOrders } from './orderedTrays.ts';

export type ServingTray = {
  readonly trayId: string;
  readonly readyMinute: number;
  /** Time of the earliest order it serves; undefined when there are more trays than the orders need. */
  readonly dueMinute: number | undefined;
  readonly lateMinutes: number;
};

export type ServedOrder = {
  readonly order: Order;
  /** Place in the scenario's list of orders, from 0. */
  readonly number: number;
  readonly dueMinute: number;
  /** When its last tray is ready; null when some of its pieces are on no planned tray. */
  readonly readyMinute: number | null;
};

export type Service = { readonly trays: readonly ServingTray[]; readonly orders: readonly ServedOrder[] };

/** When a tray is ready: its last step is done. Of a tray that lacks it, when what it has is done. */
export function readyMinute(tray: TrayRun): number {
  return tray.runs.reduce((latest, run) => (run === undefined ? latest : Math.max(latest, run.done)), 0);
}

function serveProduct({ piecesPerTray, orders }: ProductOrders, trays: readonly TrayRun[]): Service {
  const ready = trays
    .map((tray) => ({ trayId: tray.id, readyMinute: readyMinute(tray) }))
    .sort((a, b) => a.readyMinute - b.readyMinute);
  const dueMinutes = new Array<number | undefined>(ready.length).fill(undefined);
  let piecesBefore = 0;
  const served = orders.map(({ order, number, dueMinute }) => {
    const first = Math.floor(piecesBefore / piecesPerTray);
    const last = Math.floor((piecesBefore + order.pieces - 1) / piecesPerTray);
    piecesBefore += order.pieces;
    for (let k = first; k <= Math.min(last, ready.length - 1); k++) dueMinutes[k] ??= dueMinute;
    return { order, number, dueMinute, readyMinute: ready[last]?.readyMinute ?? null };
  });
  const serving = ready.map((tray, k) => {
    const dueMinute = dueMinutes[k];
    return { ...tray, dueMinute, lateMinutes: dueMinute === undefined ? 0 : Math.max(0, tray.readyMinute - dueMinute) };
  });
  return { trays: serving, orders: served };
}

/** All planned trays and all orders of the day; the orders as the scenario lists them. */
export function serviceOf(day: JudgedDay): Service {
  const services = day.ordered.map((product) =>
    serveProduct(
      product,
      day.trays.filter((tray) => tray.product.id === product.productId),
    ),
  );
  return {
    trays: services.flatMap(({ trays }) => trays),
    orders: services.flatMap(({ orders }) => orders).sort((a, b) => a.number - b.number),
  };
}
