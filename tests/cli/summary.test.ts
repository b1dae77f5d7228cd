// The terminal summary, word for word.
import { expect, test } from 'vitest';
import { inkFor } from '../../src/cli/ink.ts';
import { percentGap } from '../../src/cli/sayHowGood.ts';
import { summary } from '../../src/cli/summary.ts';
import type { Plan } from '../../src/model/plan.ts';
import { finePlan, samplePlan } from './samplePlan.ts';

const plain = inkFor(false);
const colourCode = '\u001b[';

test('a plan with a late and a left-out tray, on one screen', () => {
  expect(summary(samplePlan, ['out/plan.json', 'out/sheet.svg'], plain)).toBe(`\
A short morning, 2026-05-16, Europe/Lisbon
1 tray left out, trays late by 1 h 15 min in all. start -1d 23:10, last ready 07:15, 2 trays from 1 batch

Ready  Due    Order
05:15  05:30  24 Seed roll
07:15  06:00  10 Long stick  1 h 15 min late
-      07:00  6 Tin loaf     not all of it: trays left out

Decks
Top deck     1 temperature change  200 C from 04:56, 240 C from 05:30
Bottom deck  not used

People
Ida  -1d 23:10 to 06:50  14 min hands-on
Jon  nothing to do

Left out
1 tray of Tin loaf
  No shelf is free from 03:00 to 05:00. Would fit if the proofer had one shelf more.

How good
Price 6012.5, at most 3.6 % from the best possible.
No plan costs less than 5800. The decks cannot take more trays in the day.
The search ended after 2000 rounds, 1.9 s.

Take care
Ovens and trays are hot.

Written
out/plan.json
out/sheet.svg
`);
});

test('a proved plan with everything on time says so, and shows no empty parts', () => {
  const text = summary(finePlan, [], plain);
  expect(text).toContain('Every tray is planned and on time.');
  expect(text).toContain('Price 555, proved: no plan costs less.');
  expect(text).not.toMatch(/Left out|Written|late/);
});

test('colours only where they are on', () => {
  expect(summary(samplePlan, [], plain)).not.toContain(colourCode);
  expect(summary(samplePlan, [], inkFor(true))).toContain(colourCode);
});

test('of many orders the ones in trouble are shown and the rest are counted', () => {
  const [late, fine] = samplePlan.orders;
  if (late === undefined || fine === undefined) throw new Error('the sample has lost its orders');
  const orders = [...Array.from({ length: 30 }, () => fine), late];
  const text = summary({ ...samplePlan, orders }, [], plain);
  expect(text).toContain('1 h 15 min late');
  expect(text).toContain('and 15 more orders, on time');
  const allLate = summary({ ...samplePlan, orders: Array.from({ length: 20 }, () => late) }, [], plain);
  expect(allLate).toContain('and 4 more orders, 4 of them late or left out');
});

test.each<[Plan['stopped'], string]>([
  ['time', 'The search ended at its time limit, after 1.9 s.'],
  ['cancelled', 'The search was stopped after 1.9 s; this is the best plan it had.'],
])('why the search ended: %s', (stopped, says) => {
  expect(summary({ ...samplePlan, stopped }, [], plain)).toContain(says);
});

test('a deck hot enough to bake before its first move counts every move', () => {
  const [upper, lower] = samplePlan.decks;
  if (upper === undefined || lower === undefined) throw new Error('the sample has lost its decks');
  const setPoints = upper.setPoints.map((move) => ({ ...move, start: move.start + 60, end: move.end + 60 }));
  expect(summary({ ...samplePlan, decks: [{ ...upper, setPoints }, lower] }, [], plain)).toContain('2 temperature changes');
  expect(summary({ ...samplePlan, decks: [{ ...upper, setPoints: [] }, lower] }, [], plain)).toContain('20 C all day');
});

test('decks of one name are told apart by their ids', () => {
  const decks = samplePlan.bakehouse.decks.map((deck) => ({ ...deck, name: 'Deck' }));
  const text = summary({ ...samplePlan, bakehouse: { ...samplePlan.bakehouse, decks } }, [], plain);
  expect(text).toContain('Deck (oven/top) ');
  expect(text).toContain('Deck (oven/bottom)  not used');
});

test('the distance from the floor is rounded up, and unknown over a floor of 0', () => {
  expect(percentGap({ cost: 100.01, lowerBound: 100 })).toBe('0.1');
  expect(percentGap({ cost: 110, lowerBound: 99 })).toBe('10.0');
  expect(percentGap({ cost: 100, lowerBound: 100 })).toBe('0.0');
  expect(percentGap({ cost: 100, lowerBound: 0 })).toBeUndefined();
});
