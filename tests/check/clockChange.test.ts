// The nights in which the clocks change: minutes run on, the wall clock jumps. Lisbon, 29 March and 25 October 2026: the
// last Sundays of the months, at 01:00 universal time (Directive 2000/84/EC, articles 2 and 3).
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import { scenarioSchema } from '../../src/model/scenario.ts';
import type { WrittenPlan } from '../../src/model/writtenPlan.ts';

/** One tray that rests from 22:00 the evening before, ready at a minute; due at 06:00; the day ends at 06:00 too. */
function judgeRestUntil(date: string, ready: number) {
  const scenario = scenarioSchema.parse({
    scenario: 1,
    name: 'A night',
    date,
    timeZone: 'Europe/Lisbon',
    day: { from: '-1d 22:00', until: '06:00' },
    equipment: {},
    people: [{ id: 'rui', from: '-1d 22:00', until: '06:00', breaks: [{ from: '00:00', until: '05:30' }] }],
    doughs: [{ id: 'dough', steps: [{ do: 'mix', minutes: 10 }] }],
    products: [
      {
        id: 'loaf',
        dough: 'dough',
        pieceG: 500,
        piecesPerTray: 4,
        steps: [
          { do: 'rest', minutes: [300, 600] },
          { do: 'finish', minutesPerTray: 5 },
        ],
      },
    ],
    orders: [{ product: 'loaf', pieces: 4, readyBy: '06:00' }],
  });
  const work = (kind: 'mix' | 'finish', start: number, end: number) => [{ person: 'rui', start, end, for: kind }];
  const tray = { product: 'loaf', batch: 'dough-1', tray: 'loaf-1' };
  const plan: WrittenPlan = {
    tasks: [
      { step: 'mix', batch: 'dough-1', start: 0, end: 10, handsOn: work('mix', 0, 10) },
      { step: 'rest', ...tray, start: 10, end: ready - 5, handsOn: [] },
      { step: 'finish', ...tray, start: ready - 5, end: ready, handsOn: work('finish', ready - 5, ready) },
    ],
    decks: [],
  };
  return judge(scenario, plan);
}

describe('clock changes', () => {
  it('an ordinary night from 22:00 to 06:00 has 480 minutes', () => {
    const { breaches, figures } = judgeRestUntil('2026-05-16', 480);
    expect(breaches).toEqual([]);
    expect(figures.orders[0]).toMatchObject({ readyAt: '2026-05-16T06:00:00+01:00', lateMinutes: 0 });
    expect(judgeRestUntil('2026-05-16', 481).breaches.map(({ rule }) => rule)).toContain('DAY_WINDOW');
  });

  it('the night the clocks go forward has 420', () => {
    const { breaches, figures } = judgeRestUntil('2026-03-29', 420);
    expect(breaches).toEqual([]);
    expect(figures.orders[0]).toMatchObject({ readyAt: '2026-03-29T06:00:00+01:00', lateMinutes: 0 });
    const late = judgeRestUntil('2026-03-29', 421);
    expect(late.figures.lateTrayMinutes).toBe(1);
    expect(new Set(late.breaches.map(({ rule }) => rule))).toEqual(new Set(['DAY_WINDOW', 'PERSON_HOURS']));
  });

  it('the night the clocks go back has 540', () => {
    const { breaches, figures } = judgeRestUntil('2026-10-25', 540);
    expect(breaches).toEqual([]);
    expect(figures.orders[0]).toMatchObject({ readyAt: '2026-10-25T06:00:00+00:00', lateMinutes: 0 });
  });

  it('a break until 05:30 lasts until the wall clock says so', () => {
    // 05:30 is minute 390 on 29 March, 450 on an ordinary night, 510 on 25 October.
    const nights = [
      ['2026-03-29', 390],
      ['2026-05-16', 450],
      ['2026-10-25', 510],
    ] as const;
    for (const [date, minute] of nights) {
      expect(judgeRestUntil(date, minute + 5).breaches, date).toEqual([]);
      expect(
        judgeRestUntil(date, minute + 4).breaches.map(({ rule }) => rule),
        date,
      ).toEqual(['PERSON_HOURS']);
    }
  });
});
