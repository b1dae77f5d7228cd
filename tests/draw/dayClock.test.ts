// Tests of src/draw/dayClock.ts, timeWindows.ts and the clock in words, on ordinary days and on nights the clocks change.
// Clock changes: Directive 2000/84/EC, Articles 2 and 3 (01:00 UTC, last Sundays of March and October).
import { describe, expect, test } from 'vitest';
import { changeInWords } from '../../src/draw/clockGutter.ts';
import { dayClockOf } from '../../src/draw/dayClock.ts';
import { timeWindows } from '../../src/draw/timeWindows.ts';
import { PLANS } from './fixtures/plans.ts';
import { smallPlan } from './smallPlan.ts';

function planNamed(name: string) {
  const plan = PLANS[name];
  if (plan === undefined) throw new Error(`no plan ${name}`);
  return plan;
}

describe('dayClockOf', () => {
  const spring = dayClockOf(planNamed('spring-night'));
  const autumn = dayClockOf(planNamed('autumn-night'));

  test('in spring 00:59 is followed by 02:00, four hours after 21:00', () => {
    expect([239, 240].map(spring.shows)).toEqual(['00:59', '02:00']);
    expect(spring.changes).toEqual([{ minute: 240, movesBy: 60 }]);
    expect(spring.localMinute(240)).toBe(120);
    expect(changeInWords(spring, { minute: 240, movesBy: 60 })).toBe('The clocks go forward: 01:00 becomes 02:00.');
  });

  test('in autumn 01:30 comes twice and each says which it is', () => {
    expect([270, 330].map(autumn.shows)).toEqual(['01:30', '01:30']);
    expect([239, 270, 330, 360].map(autumn.says)).toEqual(['00:59', '01:30 (first)', '01:30 (second)', '02:00']);
    expect(changeInWords(autumn, { minute: 300, movesBy: -60 })).toBe('The clocks go back: 02:00 becomes 01:00.');
  });

  test('dates are in words, on both sides of midnight', () => {
    expect([179, 180].map(spring.dateWords)).toEqual(['Saturday 28 March 2026', 'Sunday 29 March 2026']);
    expect(spring.minuteOf('2026-03-29T02:00:00+01:00')).toBe(240);
  });
});

describe('timeWindows', () => {
  test.each(Object.entries(PLANS))('%s: every moment of work is in exactly one window, none too long', (_, plan) => {
    const windows = timeWindows(plan, dayClockOf(plan));
    for (const { start, end } of plan.tasks) {
      for (const minute of [start, end - 1]) {
        const own = windows.filter(({ from, until }) => minute >= from && minute < until);
        expect(own.length, `minute ${minute}`).toBe(1);
      }
    }
    for (const { from, until } of windows) expect(until - from).toBeLessThanOrEqual(390);
  });

  test('a night in which nothing begins or ends has no page', () => {
    const tray = { product: 'tin', tray: 'tin-1' };
    const plan = smallPlan([
      { ...tray, step: 'shape', start: 10, end: 20 },
      { ...tray, step: 'retard', start: 20, end: 420, place: { kind: 'retarder', id: 'cold', position: 1 } },
      { ...tray, step: 'bake', start: 421, end: 460, place: { kind: 'deck', id: 'oven/top', position: 1 } },
    ]);
    const windows = timeWindows(plan, dayClockOf(plan));
    expect(windows).toEqual([
      { from: 0, until: 120 },
      { from: 390, until: 510 },
    ]);
  });

  test('a plan without any task still has a page', () => {
    expect(timeWindows(smallPlan([]), dayClockOf(smallPlan([])))).toHaveLength(1);
  });
});
