import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { traysFor } from '../../src/dough/traysFor.ts';

const pieces = fc.integer({ min: 0, max: 1_000_000 });
const perTray = fc.integer({ min: 1, max: 10_000 });

describe('traysFor', () => {
  it('puts 200 rolls on 4 trays of 50', () => {
    // USDA school lunch recipes, 1988 (copy at recipelink), soft rolls: 50 rolls on an 18 x 26 in pan; 200 = 4 x 50.
    expect(traysFor(200, 50)).toBe(4);
  });

  it('counts a tray begun as a tray', () => {
    expect(traysFor(201, 50)).toBe(5);
    expect(traysFor(1, 50)).toBe(1);
    expect(traysFor(0, 50)).toBe(0);
  });

  it('gives the fewest trays that hold every piece', () => {
    fc.assert(
      fc.property(pieces, perTray, (count, per) => {
        const trays = traysFor(count, per);
        expect(Number.isInteger(trays)).toBe(true);
        expect(trays * per).toBeGreaterThanOrEqual(count);
        expect((trays - 1) * per).toBeLessThan(count === 0 ? 1 : count);
      }),
    );
  });
});
