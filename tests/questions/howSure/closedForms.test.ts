// Simulated mornings against what can be worked out by hand: one tray, and two trays at one pair of hands.
import { describe, expect, test } from 'vitest';
import type { Scenario } from '../../../src/model/scenario.ts';
import { howSure } from '../../../src/questions/howSure/howSure.ts';
import { normalDensity, normalShare, planOfSmallDay, smallDay } from './smallDays.ts';

const MORNINGS = 20_000;

async function lateness(scenario: Scenario): Promise<{ readonly late: number; readonly minutes: number }> {
  const answer = await howSure(scenario, await planOfSmallDay(scenario), { mornings: MORNINGS });
  expect(answer.mornings).toBe(MORNINGS);
  return { late: 1 - answer.allOnTime.chance, minutes: answer.lateTrayMinutes };
}

/** Four standard errors of a chance counted over the mornings. */
function near(chance: number): number {
  return 4 * Math.sqrt((chance * (1 - chance)) / MORNINGS) + 5e-5;
}

/** Minutes above a limit, on average: E(X - limit)+ of a normal X. */
function meanAbove(limit: number, mean: number, deviation: number): number {
  const z = (limit - mean) / deviation;
  return deviation * normalDensity(z) + (mean - limit) * (1 - normalShare(z));
}

describe('one tray whose steps follow one another without a wait', () => {
  const chain = { batchSteps: [{ do: 'mix', minutes: 20 }], trays: 1 } as const;
  const steps = [
    { do: 'shape', minutesPerTray: 30 },
    { do: 'bake', minutes: 40, temperatureC: 200 },
    { do: 'cool', minutes: 60 },
  ] as const;
  const spread = { mix: 10, shape: 20, bake: 5, cool: 10 };
  // The sum of normal minutes is normal: 150 minutes, and the root of the summed squares.
  const deviation = Math.hypot(20 * 0.1, 30 * 0.2, 40 * 0.05, 60 * 0.1);

  test.each(['02:30', '02:35', '02:40', '02:50'])(
    'due at %s: chance and minutes of lateness are those of the normal distribution',
    async (readyBy) => {
      const due = 120 + Number(readyBy.slice(3));
      const found = await lateness(smallDay({ ...chain, steps: [...steps], readyBy, spread, batchSteps: [...chain.batchSteps] }));
      const late = 1 - normalShare((due - 150) / deviation);
      expect(Math.abs(found.late - late)).toBeLessThan(near(late));
      expect(Math.abs(found.minutes - meanAbove(due, 150, deviation))).toBeLessThan(0.05 + (4 * deviation) / Math.sqrt(MORNINGS));
    },
  );

  test('a slow dough is slow in everything: bulk and proof stray together', async () => {
    const day = {
      batchSteps: [{ do: 'bulk', minutes: 100 }],
      steps: [
        { do: 'proof', minutes: 80 },
        { do: 'bake', minutes: 20, temperatureC: 200 },
      ],
      readyBy: '03:40',
      spread: { bulk: 10, proof: 15 },
    } as const;
    const found = await lateness(smallDay({ ...day, batchSteps: [...day.batchSteps], steps: [...day.steps] }));
    const late = 1 - normalShare((220 - 200) / (100 * 0.1 + 80 * 0.15));
    expect(Math.abs(found.late - late)).toBeLessThan(near(late));
  });

  test('real minutes are never less than half of those stated', async () => {
    const day = { ...chain, batchSteps: [...chain.batchSteps], steps: [...steps], readyBy: '02:00', spread: { cool: 100 } };
    // Ready by 120 minutes: the 60 minutes of cooling take at most 30. Half of them are the least there is.
    const found = await lateness(smallDay(day));
    const late = normalShare(0.5);
    expect(Math.abs(found.late - late)).toBeLessThan(near(late));
    const never = await lateness(smallDay({ ...day, readyBy: '01:59' }));
    expect(never.late).toBe(1);
  });
});

test('a range leaves room: what is late at the bench is made up on the shelf', async () => {
  // Mixed at 10, shaped at 40 give or take 6. A proof of exactly 80 carries every minute on; one of 60 to 90 that is planned to
  // last 80 takes up 20 of them.
  const day = (proof: number | [number, number]): Scenario =>
    smallDay({
      batchSteps: [{ do: 'mix', minutes: 10 }],
      steps: [
        { do: 'shape', minutesPerTray: 30 },
        { do: 'proof', minutes: proof },
        { do: 'bake', minutes: 20, temperatureC: 200 },
      ],
      readyBy: '02:20',
      spread: { shape: 20 },
    });
  const plan = await planOfSmallDay(day(80));
  const exact = await howSure(day(80), plan, { mornings: MORNINGS });
  expect(Math.abs(exact.allOnTime.chance - 0.5)).toBeLessThan(near(0.5));
  const roomy = await howSure(day([60, 90]), plan, { mornings: MORNINGS });
  const onTime = normalShare(20 / 6);
  expect(Math.abs(roomy.allOnTime.chance - onTime)).toBeLessThan(near(onTime));
  // Nobody runs ahead of the sheet: a tray that has stood 60 minutes is loaded at its planned minute.
  expect(roomy.orders[0]?.usuallyReadyAt).toBe('2026-05-16T02:20:00+00:00');
});

test('two trays at one pair of hands: the second waits for the first', async () => {
  const scenario = smallDay({
    batchSteps: [{ do: 'bulk', minutes: [10, 600] }],
    steps: [{ do: 'shape', minutesPerTray: 30 }],
    trays: 2,
    people: [{ id: 'ana', from: '00:00', until: '22:00' }],
    readyBy: '01:15',
    spread: { shape: 20 },
  });
  const { late } = await lateness(scenario);
  // Planned at 10 and 40. The second begins when the first is done, not before 40: late when max(40, 10 + X) + Y > 75.
  // Integrated over X, a normal of mean 30 and deviation 6, by the midpoint rule; of the first tray alone nothing is late.
  let expected = 0;
  const step = 0.001;
  for (let z = -8 + step / 2; z < 8; z += step) {
    const begins = Math.max(40, 40 + 6 * z);
    expected += normalDensity(z) * step * (1 - normalShare((75 - begins - 30) / 6));
  }
  expect(Math.abs(late - expected)).toBeLessThan(near(expected));
});
