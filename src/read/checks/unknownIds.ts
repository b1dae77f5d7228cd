// UNKNOWN_DOUGH, UNKNOWN_PRODUCT: the dough of a product and the product of an order are there.
import { didYouMean } from '../didYouMean.ts';
import type { ErrorCode } from '../errorCodes.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import { MAX_ERRORS } from '../limits.ts';
import type { Parts } from '../parts.ts';
import { shown } from '../shown.ts';

type Reference = { readonly at: string; readonly id: string; readonly says: string };

const SHOWN_IDS = 12;

function choices(kind: string, ids: readonly string[]): string {
  const more = ids.length > SHOWN_IDS ? ', ...' : '';
  return `Name a ${kind} that is there: ${ids.slice(0, SHOWN_IDS).map(shown).join(', ')}${more}.`;
}

/** Suggestions are sought for as many errors as are shown: comparing thousands of words with thousands takes long. */
function unknown(code: ErrorCode, kind: string, ids: readonly string[], references: readonly Reference[]): readonly CodedError[] {
  // An empty list is an error of its own.
  if (ids.length === 0) return [];
  const known = new Set(ids);
  const otherwise = choices(kind, ids);
  return references
    .filter(({ id }) => !known.has(id))
    .map(({ at, id, says }, index) => {
      const close = index < MAX_ERRORS ? didYouMean(id, ids) : undefined;
      const doThis = close === undefined ? otherwise : `Did you mean "${close}"? ${otherwise}`;
      return inputErrorAt(code, at, `${says}, and no ${kind} has that id.`, doThis);
    });
}

export function unknownIds({ doughs, products, orders }: Parts): readonly CodedError[] {
  const ofProducts = products.sound.map(({ at, value }) => ({
    at: `${at}/dough`,
    id: value.dough,
    says: `Product ${shown(value.id)} names the dough ${shown(value.dough)}`,
  }));
  const ofOrders = orders.sound.map(({ at, value }) => ({
    at: `${at}/product`,
    id: value.product,
    says: `Order ${Number(at.split('/').at(-1)) + 1} names the product ${shown(value.product)}`,
  }));
  return [
    ...unknown('UNKNOWN_DOUGH', 'dough', doughs.ids, ofProducts),
    ...unknown('UNKNOWN_PRODUCT', 'product', products.ids, ofOrders),
  ];
}
