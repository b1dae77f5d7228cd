// How many pieces more fit at most, against trying everything on tiny days; and that fewer fit where more do.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Scenario } from '../../../src/model/scenario.ts';
import { trialOf } from '../../../src/questions/fit/addedTo.ts';
import { MostPieces } from '../../../src/questions/fit/mostPieces.ts';
import { EarliestReady } from '../../../src/questions/fit/readyTimes.ts';
import { AS_IT_IS } from '../../../src/questions/whatWouldFit/ladder.ts';
import { Pace } from '../../../src/questions/whatWouldFit/trial.ts';
import { planned } from '../../laws/planned.ts';
import { askingFor } from '../askingFor.ts';
import { anyTinyDay, canBeDone, scenarioOf } from '../capacity/tinyDays.ts';
import { patching } from '../whatWouldFit/actedOn.ts';

const ROUNDS = 60;

const withMore = (before: Scenario, pieces: number, readyBy: string): Scenario => ({
  ...before,
  orders: [...before.orders, { product: 'bread-0', pieces, readyBy }],
});

/** Whether it fits, how much does at most, and from when on, of pieces more of the first bread for its own time. */
async function found(before: Scenario, pieces: number) {
  const readyBy = before.orders[0]?.readyBy ?? '';
  const after = withMore(before, pieces, readyBy);
  const base = await planned(before, ROUNDS);
  const day = { before, after };
  const trial = trialOf({ day, base, patch: patching, rounds: ROUNDS, pace: new Pace() }, base, askingFor());
  const { is, plan } = await trial.decide(AS_IT_IS);
  const order = { product: 'bread-0', pieces, readyBy, index: before.orders.length };
  const known = { fits: is === 'possible', isImpossible: is === 'impossible' };
  return {
    is,
    isWhole: trial.isWhole,
    most: await new MostPieces(after, order, trial, known).search(),
    ready: await new EarliestReady(day, order, trial, is === 'possible' ? plan : null).search(),
  };
}

const drawn = fc.sample(fc.tuple(anyTinyDay, fc.integer({ min: 1, max: 25 })), { numRuns: 120, seed: 4 });
const days = drawn.filter(([day]) =>
  canBeDone(
    day,
    day.breads.map(({ trays }) => trays),
  ),
);

it('whether it fits, how much, and by when: as trying everything tells', { timeout: 120_000 }, async () => {
  let exact = 0;
  let fitting = 0;
  let earliest = 0;
  for (const [day, pieces] of days.slice(0, 24)) {
    const more = (trays: number): readonly number[] => day.breads.map((bread, at) => bread.trays + (at === 0 ? trays : 0));
    let most = 0;
    while (canBeDone(day, more(most + 1))) most++;
    const { is, isWhole, most: answer, ready } = await found(scenarioOf(day), pieces);
    if (is === 'possible') expect(Math.ceil(pieces / 10)).toBeLessThanOrEqual(most);
    if (is === 'impossible' && isWhole) expect(Math.ceil(pieces / 10)).toBeGreaterThan(most);
    expect(answer.mostPieces).toBeLessThanOrEqual(10 * most);
    expect(answer.limitPieces ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(10 * most);
    if (answer.isExact) {
      exact++;
      expect(answer.mostPieces).toBe(10 * most);
    }
    if (is === 'possible') fitting++;
    if (ready.isEarliest) earliest++;
    if (is === 'possible') expect(ready.earliest).not.toBeNull();
  }
  expect(fitting).toBeGreaterThan(5);
  expect(exact).toBeGreaterThan(12);
  expect(earliest).toBeGreaterThan(5);
});

it('where so many fit, fewer fit, and the most is the same however many are asked for', { timeout: 120_000 }, async () => {
  let told = 0;
  for (const [day] of days.slice(0, 14)) {
    const before = scenarioOf(day);
    const { most } = await found(before, 10);
    if (most.mostPieces < 20) continue;
    told++;
    for (const pieces of [1, 5, most.mostPieces - 10, most.mostPieces]) {
      const fewer = await found(before, pieces);
      expect(fewer.is).toBe('possible');
      expect(fewer.most.mostPieces).toBe(most.mostPieces);
    }
  }
  expect(told).toBeGreaterThan(1);
});
