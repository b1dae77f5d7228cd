// Capacity against every plan there is, on tiny days; and what is proved against what is found.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { orderedTrays, scaledScenario } from '../../../src/questions/capacity/scaledOrders.ts';
import { overfull } from '../../../src/questions/capacity/workLimit.ts';
import { capacity } from '../../../src/questions/capacity.ts';
import { askingFor } from '../askingFor.ts';
import { anyTinyDay, canBeDone, scenarioOf } from './tinyDays.ts';

/** The most trays more (fewer below 0) that can be done, by trying everything. */
function mostByHand(day: Parameters<typeof canBeDone>[0], of?: string): number {
  const scenario = scenarioOf(day);
  let extra = -orderedTrays(scenario);
  for (let next = extra + 1; ; next++) {
    const scaled = scaledScenario(scenario, next, of);
    if (scaled === null) {
      extra = next;
      continue;
    }
    const trays = day.breads.map((_, i) => (scaled.orders.find(({ product }) => product === `bread-${i}`)?.pieces ?? 0) / 10);
    if (!canBeDone(day, trays)) return extra;
    extra = next;
  }
}

describe('capacity on tiny days', () => {
  it('found equals brute force, and no limit lies below it', { timeout: 60_000 }, async () => {
    let exact = 0;
    await fc.assert(
      fc.asyncProperty(anyTinyDay, async (day) => {
        const found = await capacity({ scenario: scenarioOf(day), effort: 300 }, askingFor());
        expect(found.extra).toBe(mostByHand(day));
        if (found.limit !== null) expect(found.limit).toBeGreaterThanOrEqual(found.extra);
        if (found.limit === found.extra) exact++;
      }),
      { numRuns: 40, seed: 7 },
    );
    expect(exact).toBeGreaterThan(30);
  });

  it('the argument by work never rules out what can be done', () => {
    let ruledOut = 0;
    fc.assert(
      fc.property(anyTinyDay, fc.integer({ min: 0, max: 4 }), (day, extra) => {
        const scaled = scaledScenario(scenarioOf(day), extra);
        if (scaled === null || overfull(scaled) === null) return;
        ruledOut++;
        const trays = day.breads.map((_, i) => (scaled.orders.find(({ product }) => product === `bread-${i}`)?.pieces ?? 0) / 10);
        expect(canBeDone(day, trays)).toBe(false);
      }),
      { numRuns: 200, seed: 3 },
    );
    expect(ruledOut).toBeGreaterThan(40);
  });
});
