// A day under way: what has happened is the same every morning, nothing else comes before now, and what is slow is known to be.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { normalsFrom } from '../../../src/questions/howSure/chance.ts';
import { courseOf } from '../../../src/questions/howSure/courseOf.ts';
import { howSure } from '../../../src/questions/howSure/howSure.ts';
import { Mornings } from '../../../src/questions/howSure/mornings.ts';
import { anyScenario } from '../../laws/anyScenario.ts';
import { planned } from '../../laws/planned.ts';
import { dayUnderway, recordOf } from '../../rules/plans/dayUnderway.ts';
import { planOfSmallDay, smallDay } from './smallDays.ts';

test('what has happened is the same every morning; nothing else comes before now', async () => {
  await fc.assert(
    fc.asyncProperty(anyScenario, fc.integer({ min: 1, max: 400 }), async (scenario, now) => {
      const plan = await planned(scenario, 8);
      const course = courseOf(dayUnderway(scenario, plan, now), plan);
      const mornings = new Mornings(course);
      const chances = new Float64Array(Math.max(1, course.chances) * mornings.block);
      normalsFrom(9)(chances);
      mornings.run(chances, 20, null);
      for (const [index, { planned: minute }] of course.moments.entries()) {
        const times = [...mornings.timesOf(index)];
        if (minute < now) expect(new Set(times)).toEqual(new Set([minute]));
        else expect(Math.min(...times)).toBeGreaterThanOrEqual(now);
      }
      mornings.run(new Float64Array(chances.length), 1, null);
      for (const [index, { planned: minute }] of course.moments.entries())
        expect(Math.abs((mornings.timesOf(index)[0] as number) - minute)).toBeLessThan(0.01);
    }),
    { numRuns: 4, seed: 41 },
  );
});

test('the later it is, the surer the plan; a dough known to need more minutes is late by them', async () => {
  const scenario = smallDay({
    batchSteps: [{ do: 'mix', minutes: 20 }],
    steps: [
      { do: 'shape', minutesPerTray: 30 },
      { do: 'proof', minutes: [60, 90] },
      { do: 'bake', minutes: 30, temperatureC: 200 },
    ],
    readyBy: '02:24',
    spread: { shape: 20, proof: 5, bake: 5 },
  });
  const plan = await planOfSmallDay(scenario);
  const sure = async (now: number) => (await howSure(dayUnderway(scenario, plan, now), plan)).allOnTime.chance;
  const [before, atProof, atBake] = [(await howSure(scenario, plan)).allOnTime.chance, await sure(51), await sure(111)];
  expect(before).toBeLessThan(atProof);
  expect(atProof).toBeLessThan(atBake);
  const slow = dayUnderway(scenario, plan, 51);
  recordOf(slow, 'bread-1/proof').moreMinutes = 20;
  const answer = await howSure(slow, plan);
  expect(answer.allOnTime.chance).toBeLessThan(0.01);
  expect(answer.orders[0]?.usuallyReadyAt).toBe('2026-05-16T02:40:00+00:00');
});
