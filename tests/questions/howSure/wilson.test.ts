// The interval around a counted chance (Wilson 1927, Journal of the American Statistical Association 22).
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wilson } from '../../../src/questions/howSure/wilson.ts';

// Newcombe 1998, Statistics in Medicine 17, Table I, score method. Written down from memory and worked out again from the formula.
test.each([
  [81, 263, 0.2553, 0.3662],
  [15, 148, 0.0624, 0.1605],
  [0, 20, 0, 0.1611],
  [1, 29, 0.0061, 0.1718],
])('%i of %i', (counted, mornings, low, high) => {
  expect(wilson(counted, mornings)).toEqual({ chance: Math.round((counted / mornings) * 1e4) / 1e4, low, high });
});

test('the ends are those shares p for which the count is 1.96 standard errors of p away', () => {
  const z = 1.959963984540054;
  fc.assert(
    fc.property(fc.integer({ min: 20, max: 5000 }), fc.double({ min: 0.01, max: 0.99, noNaN: true }), (mornings, share) => {
      const counted = Math.round(share * mornings);
      fc.pre(counted > 0 && counted < mornings);
      const { chance, low, high } = wilson(counted, mornings);
      expect(low).toBeLessThan(chance);
      expect(high).toBeGreaterThan(chance);
      for (const end of [low, high]) {
        const away = Math.abs(counted / mornings - end);
        // Both ends are rounded to four decimals.
        expect(Math.abs(away - z * Math.sqrt((end * (1 - end)) / mornings))).toBeLessThan(3e-4);
      }
    }),
  );
});
