// What must hold of every answer: the same seed gives the same bytes, it has the documented shape, nothing strays when nothing may,
// and more spread makes no order surer on a chain.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { howSureSchema } from '../../../src/model/howSure.ts';
import { howSure } from '../../../src/questions/howSure/howSure.ts';
import { anyScenario } from '../../laws/anyScenario.ts';
import { planned } from '../../laws/planned.ts';
import { NO_SPREAD, planOfSmallDay, smallDay } from './smallDays.ts';

test('same scenario, plan and seed: the same bytes, in the documented shape; another seed: other mornings', async () => {
  await fc.assert(
    fc.asyncProperty(anyScenario, async (scenario) => {
      const plan = await planned(scenario, 8);
      const first = await howSure(scenario, plan, { seed: 1, mornings: 200 });
      expect(JSON.stringify(await howSure(scenario, plan, { seed: 1, mornings: 200 }))).toBe(JSON.stringify(first));
      expect(howSureSchema.parse(JSON.parse(JSON.stringify(first)))).toEqual(first);
    }),
    { numRuns: 3, seed: 21 },
  );
  const scenario = smallDay({
    batchSteps: [{ do: 'mix', minutes: 20 }],
    steps: [{ do: 'shape', minutesPerTray: 20 }],
    readyBy: '00:40',
    spread: { shape: 20 },
  });
  const plan = await planOfSmallDay(scenario);
  const [one, two] = [await howSure(scenario, plan, { seed: 1 }), await howSure(scenario, plan, { seed: 2 })];
  expect(one.allOnTime).not.toEqual(two.allOnTime);
});

test('without any spread the answer is the plan', async () => {
  await fc.assert(
    fc.asyncProperty(anyScenario, async (scenario) => {
      const plan = await planned(scenario, 8);
      const still = withoutSpread(scenario);
      const answer = await howSure(still, plan, { mornings: 10 });
      expect(answer.lateTrayMinutes).toBe(plan.score.lateTrayMinutes);
      expect(answer.plannedLateTrayMinutes).toBe(plan.score.lateTrayMinutes);
      expect(answer.hurts).toEqual([]);
      for (const [index, { onTime, usuallyReadyAt, mostlyReadyAt }] of answer.orders.entries()) {
        const order = plan.orders[index];
        expect(onTime.chance).toBe(order?.lateMinutes === 0 ? 1 : 0);
        expect([usuallyReadyAt, mostlyReadyAt]).toEqual([order?.readyAt, order?.readyAt]);
      }
      expect(
        answer.traysAtRisk.every(
          ({ late, standsTooLong, bakesTooLong }) => late.chance === 1 && standsTooLong.chance + bakesTooLong.chance === 0,
        ),
      ).toBe(true);
    }),
    { numRuns: 4, seed: 22 },
  );
});

function withoutSpread(scenario: Parameters<typeof howSure>[0]): Parameters<typeof howSure>[0] {
  return { ...scenario, spread: NO_SPREAD };
}

describe('on a chain that is planned to be ready in time', () => {
  const spreads = [0, 2, 5, 10, 20, 40, 80];

  test.each(['02:31', '02:40', '03:00'])('due at %s, more spread never makes it surer', async (readyBy) => {
    const day = (percent: number) =>
      smallDay({
        batchSteps: [
          { do: 'mix', minutes: 20, waitUpTo: 0 },
          { do: 'bulk', minutes: 30 },
        ],
        steps: [
          { do: 'shape', minutesPerTray: 20 },
          { do: 'proof', minutes: 40 },
          { do: 'bake', minutes: 40, temperatureC: 200 },
        ],
        readyBy,
        spread: { mix: percent, bulk: percent, shape: percent, proof: percent, bake: percent },
      });
    const plan = await planOfSmallDay(day(0));
    const chances: number[] = [];
    for (const percent of spreads) chances.push((await howSure(day(percent), plan, { mornings: 2000 })).allOnTime.chance);
    expect(chances[0]).toBe(1);
    expect(chances.at(-1)).toBeLessThan(0.9);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
  });
});
