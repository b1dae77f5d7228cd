// Orders in words: pieces, when they are wanted, when they are ready, and how late.
import type { PlanOrder } from '../model/plan.ts';
import type { Book } from './sentences.ts';

export type OrderWords = {
  readonly order: PlanOrder;
  /** Minute it is wanted by. */
  readonly minute: number;
  readonly product: string;
  readonly tag: string;
  /** "ready 07:12", "ready 07:42, late 12 min" or "not complete: trays left out". */
  readonly outcome: string;
  readonly isLate: boolean;
  /** "30 Cardamom knot for 07:30: ready 07:12". */
  readonly sentence: string;
};

function outcomeOf(order: PlanOrder, book: Book): string {
  if (order.readyAt === null) return 'not complete: trays left out';
  const ready = `ready ${book.clock.says(book.clock.minuteOf(order.readyAt))}`;
  return (order.lateMinutes ?? 0) > 0 ? `${ready}, late ${order.lateMinutes} min` : ready;
}

/** Words of every order, by time, then in the order of the plan. */
export function orderWordsOf(book: Book): readonly OrderWords[] {
  const all = book.plan.orders.map((order) => {
    const minute = book.clock.minuteOf(order.readyBy);
    const { name, tag } = book.kinds.ofProduct(order.product);
    const outcome = outcomeOf(order, book);
    return {
      order,
      minute,
      product: name,
      tag,
      outcome,
      isLate: order.readyAt === null || (order.lateMinutes ?? 0) > 0,
      sentence: `${order.pieces} ${name} for ${book.clock.says(minute)}: ${outcome}`,
    };
  });
  return all.sort((a, b) => a.minute - b.minute);
}
