import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formulaFor } from '../../src/dough/formulaFor.ts';

const formulas = fc.dictionary(
  fc.constantFrom('flour', 'rye', 'water', 'salt', 'yeast'),
  fc.double({ min: 0.01, max: 300, noNaN: true }),
  {
    minKeys: 1,
  },
);

describe('formulaFor', () => {
  it('weighs out ciabatta to the gram', () => {
    // King Arthur Flour, professional formulas, Ciabatta with Biga, overall formula:
    // 10.0 kg flour, 7.6 kg water (76 %), 0.2 kg salt (2 %), 0.12 kg yeast (1.2 %), 17.92 kg, 179.2 %.
    const weighed = formulaFor({ flour: 100, water: 76, salt: 2, yeast: 1.2 }, 17.92);
    expect(weighed.totalPercent).toBeCloseTo(179.2, 9);
    expect(weighed.flourG).toBeCloseTo(10_000, 6);
    expect(weighed.ingredientG.water).toBeCloseTo(7600, 6);
    expect(weighed.ingredientG.salt).toBeCloseTo(200, 6);
    expect(weighed.ingredientG.yeast).toBeCloseTo(120, 6);
  });

  it('finds 736.3 g of flour in 1,340 g of a 182 % lean dough', () => {
    // Dawg House Bakery, "Calculating dough yield", 2022: 100/80/2, 4 x 335 g; printed 736 g.
    const weighed = formulaFor({ flour: 100, water: 80, salt: 2 }, 1.34);
    expect(weighed.totalPercent).toBe(182);
    expect(weighed.flourG).toBeCloseTo(736.3, 1);
  });

  it('adds up 162.125 %', () => {
    // "Baker's Math", teaching slides (slideplayer.com/slide/7820492): 100 / 1.75 / 2 / 0.375 / 58, conversion factor 1.62.
    const weighed = formulaFor({ flour: 100, salt: 1.75, sugar: 2, yeast: 0.375, water: 58 }, 1.62125);
    expect(weighed.totalPercent).toBe(162.125);
    expect(weighed.flourG).toBeCloseTo(1000, 9);
  });

  it('weighs 0.70 lb of salt at 1.75 % of 40 lb of flour, and 23 lb of water is 57.5 %', () => {
    // The same slides. Pounds stand in for kilograms: percentages have no unit.
    const weighed = formulaFor({ flour: 100, water: 57.5, salt: 1.75 }, 40 * 1.5925);
    expect(weighed.ingredientG.salt).toBeCloseTo(700, 9);
    expect(weighed.ingredientG.water).toBeCloseTo(23_000, 9);
  });

  it('adds up the 374 oz of hot rolls at 194.8 %', () => {
    // US Armed Forces recipe card D-033, hot rolls, 100 portions: ounces of yeast 4, water 28 + 88, sugar 24, salt 4,
    // flour 192, dry milk 8, shortening 26.
    const ounces = { flour: 192, water: 28 + 88, yeast: 4, sugar: 24, salt: 4, milkPowder: 8, shortening: 26 };
    const percent = Object.fromEntries(Object.entries(ounces).map(([name, oz]) => [name, (oz / 192) * 100]));
    const weighed = formulaFor(percent, 0.374);
    expect(weighed.totalPercent).toBeCloseTo(194.8, 1);
    for (const [name, oz] of Object.entries(ounces)) expect(weighed.ingredientG[name]).toBeCloseTo(oz, 9);
  });

  it('closes poolish baguette within a gram of the printed whole grams', () => {
    // M. Philip, Breaking Bread, Harper Wave 2017, Poolish Baguette: 1,000 g, 170.5 %: 587 / 398 / 12 / 3 g.
    const weighed = formulaFor({ flour: 100, water: 68, salt: 2, yeast: 0.5 }, 1);
    expect(weighed.totalPercent).toBe(170.5);
    const printedG = { flour: 587, water: 398, salt: 12, yeast: 3 };
    for (const [name, grams] of Object.entries(printedG)) {
      expect(Math.abs((weighed.ingredientG[name] ?? Number.NaN) - grams)).toBeLessThanOrEqual(1);
    }
  });

  it('does not repeat published misprints', () => {
    // King Arthur professional formulas page prints fresh yeast 0.75 kg at 0.75 % of 10 kg flour; 0.075 kg is right, and the
    // page's own total of 17.275 kg, 172.75 %, agrees. Water and salt here are the rest of that total.
    const slowRise = formulaFor({ flour: 100, waterAndSalt: 72, yeast: 0.75 }, 17.275);
    expect(slowRise.ingredientG.yeast).toBeCloseTo(75, 6);
    expect(slowRise.ingredientG.yeast).not.toBeCloseTo(750, 0);
    // King Arthur in Bake magazine 10807, poolish 3.3 + 3.3 + 0.007 kg: prints yeast "20" and total "220"; 0.21 and 200.21 %.
    const poolish = formulaFor({ flour: 100, water: 100, yeast: (0.007 / 3.3) * 100 }, 6.607);
    expect(poolish.totalPercent).toBeCloseTo(200.21, 2);
    expect(poolish.totalPercent).not.toBeCloseTo(220, 0);
    // The same in Bake magazine 10808, levain 1.032 + 1.032 + 0.026 kg: prints total "102.5"; 202.5 %.
    const levain = formulaFor({ flour: 100, water: 100, seed: (0.026 / 1.032) * 100 }, 2.09);
    expect(levain.totalPercent).toBeCloseTo(202.5, 1);
    expect(levain.totalPercent).not.toBeCloseTo(102.5, 0);
  });

  it('counts two flours as 100 % together', () => {
    // J. Hamelman, Bread, Wiley 2004, ch. 5, Vermont Sourdough with Increased Whole Grain, overall formula:
    // bread flour 85, rye 15, water 65, salt 1.9; 16.69 kg, 166.9 %.
    const weighed = formulaFor({ breadFlour: 85, rye: 15, water: 65, salt: 1.9 }, 16.69);
    expect(weighed.totalPercent).toBeCloseTo(166.9, 9);
    expect(weighed.flourG).toBeCloseTo(10_000, 6);
    expect(weighed.ingredientG.breadFlour).toBeCloseTo(8500, 6);
    expect(weighed.ingredientG.rye).toBeCloseTo(1500, 6);
  });

  it('weighs out neither more nor less than the dough', () => {
    fc.assert(
      fc.property(formulas, fc.double({ min: 0.01, max: 5000, noNaN: true }), (formula, doughKg) => {
        const { ingredientG } = formulaFor(formula, doughKg);
        const sumG = Object.values(ingredientG).reduce((sum, grams) => sum + grams, 0);
        expect(Math.abs(sumG - doughKg * 1000)).toBeLessThanOrEqual(doughKg * 1e-9);
      }),
    );
  });

  it('keeps the ratios of the formula', () => {
    fc.assert(
      fc.property(formulas, fc.double({ min: 0.01, max: 5000, noNaN: true }), (formula, doughKg) => {
        const { flourG, ingredientG } = formulaFor(formula, doughKg);
        for (const [name, percent] of Object.entries(formula)) {
          expect(((ingredientG[name] ?? Number.NaN) / flourG) * 100).toBeCloseTo(percent, 6);
        }
      }),
    );
  });

  it('refuses a formula of nothing', () => {
    expect(() => formulaFor({}, 1)).toThrow(RangeError);
    expect(() => formulaFor({ flour: 0 }, 1)).toThrow(RangeError);
  });
});
