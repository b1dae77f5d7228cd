// UNKNOWN_DOUGH, UNKNOWN_PRODUCT: the dough of a product and the product of an order are there.
import type { CodedError } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';
import { shown } from '../shown.ts';
import { unknownAmong } from './unknownAmong.ts';

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
    ...unknownAmong('UNKNOWN_DOUGH', 'dough', doughs.ids, ofProducts),
    ...unknownAmong('UNKNOWN_PRODUCT', 'product', products.ids, ofOrders),
  ];
}
