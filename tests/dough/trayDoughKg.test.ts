import { describe, expect, it } from 'vitest';
import { trayDoughKg } from '../../src/dough/trayDoughKg.ts';
import { traysFor } from '../../src/dough/traysFor.ts';

/** The international avoirdupois pound is 0.45359237 kg exactly (1959 agreement); 16 ounces to the pound. */
const KG_PER_POUND = 0.45359237;
const G_PER_OUNCE = (KG_PER_POUND * 1000) / 16;

describe('trayDoughKg', () => {
  it('weighs 200 rolls of 2 oz as 25 lb', () => {
    // USDA school lunch recipes, 1988 (copy at recipelink), soft rolls: 2 oz each, 50 to a pan.
    const kg = traysFor(200, 50) * trayDoughKg({ pieceG: 2 * G_PER_OUNCE, piecesPerTray: 50 });
    expect(kg / KG_PER_POUND).toBeCloseTo(25, 9);
  });

  it('weighs 47 loaves of 1.250 kg as 58.75 kg and 20 presses of 1.800 kg as 36 kg', () => {
    // IREKS Compendium, section 5.3, dough from pieces.
    expect(trayDoughKg({ pieceG: 1250, piecesPerTray: 47 })).toBe(58.75);
    expect(trayDoughKg({ pieceG: 1800, piecesPerTray: 20 })).toBe(36);
  });
});
