import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { piecesFrom } from '../../src/dough/piecesFrom.ts';

describe('piecesFrom', () => {
  it('cuts 1,254 g into exactly 33 pieces of 38 g', () => {
    // Common practice: a small batch of bun dough scaled at 38 g.
    expect(piecesFrom(1254, 38)).toBe(33);
    expect(piecesFrom(1253.9, 38)).toBe(32);
  });

  it('cuts 17.92 kg of ciabatta at 0.57 kg into 31 pieces with 0.25 kg over', () => {
    // King Arthur Flour, professional formulas, Ciabatta with Biga (kingarthurflour.com/professional/ciabatta.html).
    expect(piecesFrom(17920, 570)).toBe(31);
    expect(17920 - 31 * 570).toBe(250);
  });

  it('cuts 18.90 kg of miche at 900 g into exactly 21 loaves', () => {
    // King Arthur Flour in Bake magazine, "Harpoon Miche" (bakemag.com/articles/10808).
    expect(piecesFrom(18900, 900)).toBe(21);
  });

  it('cuts the 224 oz of dough of eight 28 oz loaves into 8 of 25 oz, never the 12 a card prints', () => {
    // US Armed Forces recipe card D-009 gives 8 x 28 oz or 12 x 25 oz from one dough; 12 x 25 is 300 oz: a misprint
    // (nine would need 225 oz, one more than there is).
    expect(piecesFrom(8 * 28, 28)).toBe(8);
    expect(piecesFrom(8 * 28, 25)).toBe(8);
    expect(piecesFrom(225, 25)).toBe(9);
  });

  it('does not lose a piece to decimals', () => {
    expect(Math.floor(0.3 / 0.1)).toBe(2);
    expect(piecesFrom(0.3, 0.1)).toBe(3);
  });

  it('undoes scaling: n pieces of dough give n pieces, and a gram short gives one fewer', () => {
    const tenthsOfGram = fc.integer({ min: 20, max: 50_000 });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), tenthsOfGram, (pieces, tenths) => {
        const pieceG = tenths / 10;
        expect(piecesFrom(pieces * pieceG, pieceG)).toBe(pieces);
        expect(piecesFrom(pieces * pieceG - 1, pieceG)).toBe(pieces - 1);
      }),
    );
  });
});
