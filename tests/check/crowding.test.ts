// Counting who holds a place, against another way to count: the fullest minute is one at which somebody comes in.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crowds } from '../../src/check/crowding.ts';
import { judgedDayOf } from '../../src/check/judgedDay.ts';
import { scenarioSchema } from '../../src/model/scenario.ts';
import type { WrittenPlan } from '../../src/model/writtenPlan.ts';

const scenario = scenarioSchema.parse({
  scenario: 1,
  name: 'Shelves',
  date: '2026-01-20',
  timeZone: 'UTC',
  day: { from: '00:00', until: '03:00' },
  equipment: { proofers: [{ id: 'proofer', shelves: 3, temperatureC: 30 }] },
  doughs: [{ id: 'dough', steps: [{ do: 'mix', minutes: 10 }] }],
  products: [{ id: 'roll', dough: 'dough', pieceG: 50, piecesPerTray: 10, steps: [{ do: 'proof', minutes: [1, 180] }] }],
  orders: [{ product: 'roll', pieces: 1000, readyBy: '03:00' }],
});

function planOf(spans: readonly (readonly [number, number])[]): WrittenPlan {
  const tasks = spans.map(([start, minutes], index) => ({
    step: 'proof' as const,
    product: 'roll',
    batch: 'dough-1',
    tray: `roll-${index + 1}`,
    start,
    end: Math.min(180, start + minutes),
    place: { kind: 'shelf' as const, id: 'proofer', position: 1 },
    handsOn: [],
  }));
  return { tasks, decks: [] };
}

const spans = fc.array(fc.tuple(fc.integer({ min: 0, max: 179 }), fc.integer({ min: 1, max: 60 })), { maxLength: 12 });

describe('crowds', () => {
  it('finds the fullest minute and every minute over the room', () => {
    fc.assert(
      fc.property(spans, (all) => {
        const plan = planOf(all);
        const holdersAt = (minute: number) => plan.tasks.filter(({ start, end }) => start <= minute && minute < end).length;
        const most = Math.max(0, ...plan.tasks.map(({ start }) => holdersAt(start)));
        const found = crowds(judgedDayOf(scenario, plan), 'shelf');
        expect(Math.max(0, ...found.map((crowd) => crowd.most))).toBe(most > 3 ? most : 0);
        for (const { from, until } of found) {
          expect(holdersAt(from - 1)).toBeLessThanOrEqual(3);
          expect(holdersAt(until)).toBeLessThanOrEqual(3);
          for (let minute = from; minute < until; minute++) expect(holdersAt(minute)).toBeGreaterThan(3);
        }
      }),
    );
  });
});
