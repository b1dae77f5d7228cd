// The orders of a day after what has come in, changed or been cancelled. Used where such events are read, and for re-planning.
import { type Clock, minuteAt } from '../model/clock.ts';
import type { HappenedEvent } from '../model/happened.ts';
import type { Order } from '../model/scenario.ts';

export type ChangedOrders = {
  readonly orders: readonly Order[];
  /** Indexes of the events that name an order that is not there. */
  readonly unfound: readonly number[];
};

/** Orders as they are wanted now. Each event is about the orders as those before it left them. */
export function changedOrders(before: readonly Order[], events: readonly HappenedEvent[], clock: Clock): ChangedOrders {
  const orders = [...before];
  const unfound: number[] = [];
  events.forEach((event, index) => {
    if (event.what === 'ordered') {
      const { product, pieces, readyBy } = event;
      orders.push({ product, pieces, readyBy });
    }
    if (event.what !== 'order-changed' && event.what !== 'order-cancelled') return;
    const minute = minuteAt(clock, event.readyBy);
    const at = orders.findIndex(({ product, readyBy }) => product === event.product && minuteAt(clock, readyBy) === minute);
    const order = orders[at];
    if (order === undefined) unfound.push(index);
    else if (event.what === 'order-cancelled') orders.splice(at, 1);
    else orders[at] = { ...order, pieces: event.pieces ?? order.pieces, readyBy: event.newReadyBy ?? order.readyBy };
  });
  return { orders, unfound };
}
