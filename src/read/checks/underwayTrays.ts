// TRAYS_NOT_ORDERED: trays of a product under way <= trays its orders need.
import { traysFor } from '../../dough/traysFor.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';
import { amount, shown } from '../shown.ts';

export function underwayTrays({ underway, products, orders }: Parts): readonly CodedError[] {
  if (underway === undefined || !orders.isWhole) return [];
  const trays = underway.batches.sound.flatMap(({ at, value }) =>
    value.trays.map(({ product }, index) => ({ at: `${at}/trays/${index}`, product })),
  );
  return products.sound.flatMap(({ value: { id, piecesPerTray } }) => {
    const pieces = orders.sound.reduce((sum, { value }) => sum + (value.product === id ? value.pieces : 0), 0);
    const needed = traysFor(pieces, piecesPerTray);
    const own = trays.filter(({ product }) => product === id);
    const first = own[needed];
    if (first === undefined) return [];
    const says = `${amount(own.length, 'tray')} of ${shown(id)} are under way, and the orders need ${needed}.`;
    return [inputErrorAt('TRAYS_NOT_ORDERED', first.at, says, 'Take out the trays nobody wants any more, with their steps.')];
  });
}
