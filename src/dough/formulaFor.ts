// Baker's percentages to grams: what to weigh out for a mass of dough. Used by the sheet and the doughs' page.
// Baker's percentage: each ingredient by weight of all flours, which together are 100 %
// ("Baker's Math", teaching slides, slideplayer.com/slide/7820492).

/** A formula weighed out. */
export type WeighedFormula = {
  /** Sum of all percentages, above 0. */
  readonly totalPercent: number;
  /** Grams that stand for 100 %: all flours together. */
  readonly flourG: number;
  /** Grams of each ingredient, in the order of the formula; they add up to the dough. */
  readonly ingredientG: Readonly<Record<string, number>>;
};

/**
 * Flour = dough / (total % / 100); each ingredient = flour x its % / 100. Grams are not rounded.
 * @param formula percent of each ingredient, 0 or more, at least one above 0
 * @param doughKg kilograms of mixed dough, 0 or more
 */
export function formulaFor(formula: Readonly<Record<string, number>>, doughKg: number): WeighedFormula {
  const totalPercent = Object.values(formula).reduce((sum, percent) => sum + percent, 0);
  if (totalPercent <= 0) throw new RangeError('a formula needs at least one ingredient above 0 percent');
  const flourG = (doughKg * 1000) / (totalPercent / 100);
  const weighed = Object.entries(formula).map(([ingredient, percent]) => [ingredient, (flourG * percent) / 100] as const);
  return { totalPercent, flourG, ingredientG: Object.fromEntries(weighed) };
}
