// The change "fewer pieces": of one of the orders that are to fit, where it takes away a tray or makes one due later. Used by
// whatWouldFit.
import { minuteAt } from '../../model/clock.ts';
import type { Order } from '../../model/scenario.ts';
import type { Ground, LadderOf, Variant } from './ladder.ts';
import { productWords } from './orderWords.ts';

/**
 * Numbers of pieces to drop at which something changes. With the pieces of the product counted up in the order of their times,
 * the count c after this order or a later one falls by k; the day is another one where c - k reaches a whole number of trays.
 */
export function telling(orders: readonly Pick<Order, 'pieces'>[], from: number, piecesPerTray: number): readonly number[] {
  const most = (orders[from]?.pieces ?? 0) - 1;
  const numbers = new Set<number>();
  let count = 0;
  for (const [at, { pieces }] of orders.entries()) {
    count += pieces;
    if (at < from) continue;
    for (let k = count % piecesPerTray === 0 ? piecesPerTray : count % piecesPerTray; k <= most; k += piecesPerTray)
      numbers.add(k);
  }
  return [...numbers].sort((a, b) => a - b);
}

function tellingOf({ scenario, clock }: Ground, index: number): readonly number[] {
  const mine = scenario.orders[index];
  const product = scenario.products.find(({ id }) => id === mine?.product);
  if (mine === undefined || product === undefined) return [];
  const same = scenario.orders
    .flatMap((order, at) => (order.product === mine.product ? [{ at, order, minute: minuteAt(clock, order.readyBy) }] : []))
    .sort((a, b) => a.minute - b.minute || a.at - b.at);
  const from = same.findIndex(({ at }) => at === index);
  return telling(
    same.map(({ order }) => order),
    from,
    product.piecesPerTray,
  );
}

export const dropPieces: LadderOf = (ground) => {
  const { scenario, wanted } = ground;
  const numbersOf = new Map(wanted.changeable.map((index) => [index, tellingOf(ground, index)]));
  const rungs = [...new Set([...numbersOf.values()].flat())].sort((a, b) => a - b);
  if (rungs.length === 0) return 'Fewer pieces of it would still take as many trays.';
  const variantFor = (index: number, fewer: number): Variant[] => {
    const order = scenario.orders[index];
    if (order === undefined || !numbersOf.get(index)?.includes(fewer)) return [];
    const left = order.pieces - fewer;
    return [
      {
        amount: fewer,
        operations: [{ op: 'replace', path: `/orders/${index}/pieces`, value: left }],
        does: `Bake ${fewer} ${productWords(scenario, order.product)} fewer for ${order.readyBy}, ${left} instead of ${order.pieces}`,
        earlierBy: 0,
      },
    ];
  };
  return {
    kind: 'drop-pieces',
    top: rungs.length,
    first: 1,
    at: (rung) => wanted.changeable.flatMap((index) => variantFor(index, rungs[rung - 1] ?? 0)),
    topWords: 'Baking only a tray of it',
    // Fewer trays are dealt to batches anew.
    isRising: false,
  };
};
