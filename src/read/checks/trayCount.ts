// TOO_MANY_TRAYS: the trays of all products together are at most MAX_TRAYS.
import { traysFor } from '../../dough/traysFor.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import { MAX_TRAYS } from '../limits.ts';
import type { Parts } from '../parts.ts';

export function trayCount({ products, orders }: Parts): readonly CodedError[] {
  const pieces = new Map<string, number>();
  for (const { value } of orders.sound) pieces.set(value.product, (pieces.get(value.product) ?? 0) + value.pieces);
  const perTray = new Map(products.sound.map(({ value }) => [value.id, value.piecesPerTray]));
  const trays = [...perTray].reduce((count, [id, piecesPerTray]) => count + traysFor(pieces.get(id) ?? 0, piecesPerTray), 0);
  if (trays <= MAX_TRAYS) return [];
  const says = `The orders make ${trays} trays; a day may hold ${MAX_TRAYS}.`;
  return [inputErrorAt('TOO_MANY_TRAYS', '/orders', says, 'Check pieces and piecesPerTray, or split the day.')];
}
