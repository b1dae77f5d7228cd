// Compare on a morning whose answer is known: shelves bind first, then the oven; more room never looks worse; what is proved says so.
import { describe, expect, it } from 'vitest';
import { type Comparison, comparisonSchema } from '../../../src/model/comparison.ts';
import type { Scenario } from '../../../src/model/scenario.ts';
import { compare } from '../../../src/questions/compare.ts';
import { readChanges } from '../../../src/read/readChanges.ts';
import { sweepScenario } from '../../../src/read/sweepScenario.ts';
import { askingFor } from '../askingFor.ts';
import { shelfMorning } from './shelfMorning.ts';

async function sweptShelves(base: Scenario, from: number, to: number): Promise<Comparison> {
  const sweep = { pointer: '/equipment/proofers/0/shelves', from, to, step: 1 };
  const read = sweepScenario(base, sweep);
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  const { place, now, swept } = read.value;
  const days = swept.map(({ value, scenario }) => ({ title: String(value), value, scenario }));
  return compare({ base, days, sweep: { pointer: sweep.pointer, place, now }, effort: 300 }, askingFor());
}

async function changed(base: Scenario, text: string): Promise<Comparison> {
  const read = readChanges(text, base);
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  const days = read.value.map((change) => ({ ...change, value: null }));
  return compare({ base, days, sweep: null, effort: 300 }, askingFor());
}

describe('a sweep of shelves on a morning bound by shelves', () => {
  it('never takes fewer trays or costs more as shelves grow, and flattens where the oven takes over', {
    timeout: 60_000,
  }, async () => {
    const comparison = await sweptShelves(shelfMorning(3), 1, 9);
    expect(comparisonSchema.parse(comparison)).toEqual(comparison);
    const trays = comparison.days.map(({ figures }) => figures.capacity?.foundTrays ?? Number.NaN);
    const prices = comparison.days.map(({ figures }) => figures.score.cost);
    for (let k = 1; k < trays.length; k++) {
      expect(trays[k]).toBeGreaterThanOrEqual(trays[k - 1] ?? Number.NaN);
      expect(prices[k]).toBeLessThanOrEqual(prices[k - 1] ?? Number.NaN);
    }
    // The first tray can bake at 05:25: until 07:00 there is time for 4 loads of 2.
    expect(trays.at(-1)).toBe(8);
    expect(trays[0]).toBe(2);
    const top = comparison.days.at(-1)?.figures.capacity;
    expect(top?.isExact).toBe(true);
    expect(top?.full).toEqual({ kind: 'deck', words: 'the oven' });
    expect(comparison.sweep?.says).toMatch(/beyond that it takes no more, and that is proved: after that the oven is full/);
  });
});

const CHANGES = `
changes:
  - title: A second proofer
    patch: [{ op: add, path: /equipment/proofers/-, value: { id: second, shelves: 8, temperatureC: 30 } }]
  - title: A second and a third proofer
    patch:
      - { op: add, path: /equipment/proofers/-, value: { id: second, shelves: 8, temperatureC: 30 } }
      - { op: add, path: /equipment/proofers/-, value: { id: third, shelves: 8, temperatureC: 30 } }
  - title: A larger cooling rack
    patch: [{ op: add, path: /equipment/coolingRack, value: { trays: 50 } }]
  - title: One shelf less
    patch: [{ op: replace, path: /equipment/proofers/0/shelves, value: 1 }]
`;

describe('changes', () => {
  it('says what each brings, what is full then, and what is proved', { timeout: 60_000 }, async () => {
    const comparison = await changed(shelfMorning(2, [2]), CHANGES);
    const [second, third, rack, less] = comparison.days;
    expect(second?.difference.capacity).toEqual({ is: 'better', isProved: true });
    expect(second?.difference.says).toMatch(
      /^A second proofer: it takes \d+ more trays of the day's mix \(proved\); after that the oven is full;/,
    );
    expect(third?.figures.capacity?.foundTrays).toBe(second?.figures.capacity?.foundTrays);
    expect(third?.figures.score.cost).toBe(second?.figures.score.cost);
    expect(rack?.difference.capacity).toEqual({ is: 'same', isProved: true });
    expect(less?.difference.capacity).toEqual({ is: 'worse', isProved: true });
    expect(less?.difference.price.is).toBe('worse');
  });

  it('stopped, it gives the day as it is and names what it did not reach', async () => {
    const base = shelfMorning(2, [2]);
    const read = readChanges(CHANGES, base);
    if (!read.ok) throw new Error('the changes are good');
    const days = read.value.map((change) => ({ ...change, value: null }));
    const comparison = await compare({ base, days, sweep: null, effort: 50 }, askingFor({ cancelled: () => true }));
    expect(comparison.base.trays).toBe(2);
    expect(comparison.days).toEqual([]);
    expect(comparison.notReached).toEqual(read.value.map(({ title }) => title));
  });
});
