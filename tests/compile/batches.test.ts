// Trays into batches: as few as the bowl allows, as even as can be, products of one dough sharing a bowl.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchesOf } from '../../src/compile/batches.ts';
import { traysOf } from '../../src/compile/trays.ts';
import { clockOf } from '../../src/model/clock.ts';
import { bakery } from './bakery.ts';

/** Trays of each batch as kilograms, heaviest first, for trays of the given weights and a bowl. */
function dealtKg(kgs: readonly number[], bowlKg: number, lossPercent = 0): number[][] {
  const scenario = bakery({
    breads: kgs.map((kg, i) => ({ id: `bread-${i}`, dough: 'one', pieceG: kg * 1000, piecesPerTray: 1, pieces: 1 })),
    bowlKg,
    lossPercent,
  });
  const batches = batchesOf(scenario, traysOf(scenario, clockOf(scenario)));
  return batches.map((batch) => batch.trays.map((product) => product.pieceG / 1000).sort((a, b) => b - a));
}

/** Fewest bowls that hold the weights, by trying every way. */
function fewest(kgs: readonly number[], bowlKg: number): number {
  const place = (at: number, bowls: readonly number[]): number => {
    const kg = kgs[at];
    if (kg === undefined) return bowls.length;
    const opened = place(at + 1, [...bowls, kg]);
    return Math.min(
      opened,
      ...bowls.flatMap((held, b) => (held + kg <= bowlKg ? [place(at + 1, bowls.with(b, held + kg))] : [])),
    );
  };
  return place(0, []);
}

describe('dealing trays to batches', () => {
  it('takes as few bowls as trying every way does', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 9, max: 16 }),
        (kgs, bowl) => {
          const batches = dealtKg(kgs, bowl);
          expect(batches.length).toBe(fewest(kgs, bowl));
          for (const batch of batches) expect(batch.reduce((sum, kg) => sum + kg, 0)).toBeLessThanOrEqual(bowl);
          expect(batches.flat().sort()).toEqual([...kgs].sort());
        },
      ),
      { numRuns: 300 },
    );
  });

  it('is even in trays when the trays are alike', () => {
    expect(dealtKg([1, 1, 1, 1, 1, 1, 1], 3).map((batch) => batch.length)).toEqual([3, 2, 2]);
    expect(dealtKg([1, 1, 1, 1], 3).map((batch) => batch.length)).toEqual([2, 2]);
  });

  it('fills a bowl to the gram and not over it, loss included', () => {
    expect(dealtKg([0.1, 0.1, 0.1], 0.3)).toHaveLength(1);
    expect(dealtKg([5, 5], 10, 0)).toHaveLength(1);
    expect(dealtKg([5, 5], 10, 1)).toHaveLength(2);
    expect(dealtKg([4.95, 4.95], 10, 1)).toHaveLength(1);
  });

  it('mixes one batch a product when nothing limits it', () => {
    const breads = ['a', 'b'].map((id) => ({ id, dough: 'one', pieceG: 100, piecesPerTray: 10, pieces: 40 }));
    const scenario = bakery({ breads });
    const batches = batchesOf(scenario, traysOf(scenario, clockOf(scenario)));
    expect(batches.map((batch) => batch.trays.map((tray) => tray.id))).toEqual([
      ['a', 'a', 'a', 'a'],
      ['b', 'b', 'b', 'b'],
    ]);
    expect(batches.map((batch) => batch.kg)).toEqual([4, 4]);
  });
});

describe('from orders to trays', () => {
  it('adds up the pieces of a product and rounds up once; a tray is due with the first order it serves', () => {
    const scenario = bakery({
      breads: [{ id: 'bun', dough: 'one', pieceG: 50, piecesPerTray: 10, pieces: 12 }],
      moreOrders: [
        { product: 'bun', pieces: 3, readyBy: '04:30' },
        { product: 'bun', pieces: 10, readyBy: '06:30' },
      ],
    });
    // In order of time: 3 for 04:30, 12 for 06:00, 10 for 06:30: trays hold pieces 1-10, 11-20, 21-25.
    expect(traysOf(scenario, clockOf(scenario)).map(({ trays, dues }) => ({ trays, dues }))).toEqual([
      { trays: 3, dues: [90, 180, 210] },
    ]);
  });
});
