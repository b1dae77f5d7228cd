// FLOUR_NOT_100: where "flour" is the only flour of a formula, it is 100; the other numbers are shares of it.
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';
import { shown } from '../shown.ts';

const ROUNDING = 0.05;

/** Words that make an ingredient a possible second flour. Common practice. */
const FLOURS =
  /flour|meal|wheat|rye|spelt|einkorn|emmer|kamut|semolina|durum|oat|barley|corn|maize|rice|millet|buckwheat|bran|malt|starch|t\d{2,3}/i;

export function flour({ doughs }: Parts): readonly CodedError[] {
  return doughs.sound.flatMap(({ at, value }) => {
    const formula = value.formula ?? {};
    const amount = formula.flour;
    const others = Object.keys(formula).filter((name) => name !== 'flour' && FLOURS.test(name));
    if (amount === undefined || others.length > 0 || Math.abs(amount - 100) <= ROUNDING) return [];
    const says = `The only flour of dough ${shown(value.id)} is ${amount}; in baker's percentages all flour together is 100.`;
    return [
      inputErrorAt('FLOUR_NOT_100', `${at}/formula/flour`, says, 'Write flour: 100 and every other ingredient as a share of it.'),
    ];
  });
}
