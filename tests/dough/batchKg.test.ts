import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchKg } from '../../src/dough/batchKg.ts';

const trayKgs = fc.array(fc.double({ min: 0.01, max: 50, noNaN: true }), { minLength: 1, maxLength: 40 });
const lossPercent = fc.double({ min: 0, max: 50, noNaN: true });

describe('batchKg', () => {
  it('adds up trays when nothing is lost', () => {
    // IREKS Compendium, section 5.3: 20 presses of 1.800 kg are 36.000 kg.
    expect(
      batchKg(
        Array.from({ length: 20 }, () => 1.8),
        0,
      ),
    ).toBe(36);
  });

  it('takes the loss on the mixed dough, not on what reaches the trays', () => {
    // The rule of scaling for a loss: wanted / (1 - loss). Gisslen, Professional Baking, ch. 6 "Scaling", as arithmetic:
    // 500 g wanted at 10 % is 555.6 g, not 550 g; at 13 % 574.7 g, not 565 g.
    expect(batchKg([0.5], 10)).toBeCloseTo(0.5556, 4);
    expect(batchKg([0.5], 13)).toBeCloseTo(0.5747, 4);
    expect(batchKg([0.5], 10)).not.toBeCloseTo(0.55, 3);
  });

  it('is exact to the milligram, so a full bowl is not refused', () => {
    expect(0.1 + 0.1 + 0.1).toBeGreaterThan(0.3);
    expect(batchKg([0.1, 0.1, 0.1], 0)).toBe(0.3);
  });

  it('leaves the trays their dough after the loss', () => {
    fc.assert(
      fc.property(trayKgs, lossPercent, (kgs, loss) => {
        const onTraysKg = kgs.reduce((sum, kg) => sum + kg, 0);
        expect(batchKg(kgs, loss) * (1 - loss / 100)).toBeCloseTo(onTraysKg, 5);
      }),
    );
  });
});
