// Careful scenarios: the minutes that are enough in four mornings of five, readable, planned and judged like any other.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ScenarioInput, scenarioSchema } from '../../../src/model/scenario.ts';
import { CAREFUL_NOTE, carefulScenario, withCarefulNote } from '../../../src/questions/howSure/careful.ts';
import { howSure } from '../../../src/questions/howSure/howSure.ts';
import { readScenario } from '../../../src/read/readScenario.ts';
import { anyScenario } from '../../laws/anyScenario.ts';
import { planned } from '../../laws/planned.ts';
import { readValue } from '../../read/wholeScenario.ts';
import { NO_SPREAD, smallDay } from './smallDays.ts';

type BatchSteps = ScenarioInput['doughs'][number]['steps'];
type Steps = ScenarioInput['products'][number]['steps'];

function carefully(batchSteps: BatchSteps, steps: Steps, spread: Partial<typeof NO_SPREAD>) {
  const careful = carefulScenario(smallDay({ batchSteps, steps, readyBy: '12:00', spread: { ...spread } }));
  return { batch: careful.doughs[0]?.steps, tray: careful.products[0]?.steps, shapeWithin: careful.doughs[0]?.shapeWithin };
}

describe('minutes', () => {
  // Four fifths of the standard normal distribution lie below 0.8416.
  test.each([
    [100, 10, 108],
    [100, 50, 142],
    [10, 15, 11],
    [1, 25, 1],
    [4320, 10, 4320],
  ])('%i with a spread of %i in a hundred become %i', (minutes, percent, enough) => {
    const { tray } = carefully([{ do: 'mix', minutes: 5 }], [{ do: 'shape', minutesPerTray: minutes }], { shape: percent });
    expect(tray).toEqual([{ do: 'shape', minutesPerTray: enough, waitUpTo: 0 }]);
  });

  test('of a range the least rises and the most stays, unless the least has passed it', () => {
    const steps = (proof: [number, number]): Steps => [{ do: 'proof', minutes: proof }];
    const mix: BatchSteps = [{ do: 'mix', minutes: 5 }];
    expect(carefully(mix, steps([100, 150]), { proof: 10 }).tray).toMatchObject([{ minutes: [108, 150] }]);
    expect(carefully(mix, steps([100, 105]), { proof: 10 }).tray).toMatchObject([{ minutes: [108, 108] }]);
  });

  test('a step goes by its own spread, loading and unloading by theirs', () => {
    const steps: Steps = [{ do: 'bake', minutes: 40, temperatureC: 200, load: 10, unload: 20, spreadPercent: 20 }];
    const { tray } = carefully([{ do: 'mix', minutes: 5 }], steps, { bake: 0, load: 50, unload: 50 });
    expect(tray).toMatchObject([{ minutes: 47, load: 14, unload: 28 }]);
  });

  test('hands-on minutes of a mix grow with it; what waits for the first tray of a batch may wait longer', () => {
    const { batch, shapeWithin } = carefully([{ do: 'mix', minutes: 20, handsOn: 10 }], [{ do: 'shape', minutesPerTray: 10 }], {
      mix: 50,
      shape: 50,
    });
    expect(batch).toMatchObject([{ minutes: 28, handsOn: 14 }]);
    expect(shapeWithin).toBe(852);
  });

  test('the usual spread counts where a scenario says nothing', () => {
    const { spread, ...bare } = smallDay({
      batchSteps: [{ do: 'mix', minutes: 100 }],
      steps: [{ do: 'cool', minutes: 100 }],
      readyBy: '12:00',
    });
    expect(spread).toEqual(NO_SPREAD);
    const careful = carefulScenario(scenarioSchema.parse(bare));
    expect([careful.doughs[0]?.steps, careful.products[0]?.steps]).toMatchObject([[{ minutes: 104 }], [{ minutes: 108 }]]);
  });
});

test('a careful scenario is written and read back the same, and its plans keep every rule', async () => {
  await fc.assert(
    fc.asyncProperty(anyScenario, async (scenario) => {
      const careful = carefulScenario(scenario);
      const back = readValue(readScenario(JSON.stringify(careful)));
      expect(back).toEqual(careful);
      await planned(back, 8);
    }),
    { numRuns: 2, seed: 31 },
  );
});

test('without spread it is the scenario itself', () => {
  fc.assert(
    fc.property(anyScenario, (scenario) => {
      const still = { ...scenario, spread: NO_SPREAD };
      expect(carefulScenario(still)).toEqual(still);
    }),
    { numRuns: 50 },
  );
});

test('when it is wanted to start late, a careful plan starts earlier and is surer', async () => {
  const scenario = smallDay({
    batchSteps: [
      { do: 'mix', minutes: 15 },
      { do: 'bulk', minutes: [60, 90] },
    ],
    steps: [
      { do: 'shape', minutesPerTray: 10 },
      { do: 'proof', minutes: [60, 100] },
      { do: 'bake', minutes: 30, temperatureC: [195, 205], load: 2, unload: 2 },
    ],
    trays: 3,
    people: [{ id: 'ana', from: '00:00', until: '12:00' }],
    readyBy: '10:00',
    spread: { mix: 5, bulk: 10, shape: 15, proof: 10, bake: 5, load: 25, unload: 25 },
    goals: { aim: 'start-late' },
  });
  const plan = await planned(scenario, 200);
  const careful = withCarefulNote(await planned(carefulScenario(scenario), 200));
  expect(plan.score.lateTrayMinutes + careful.score.lateTrayMinutes).toBe(0);
  expect(careful.score.firstHandsOnMinute).toBeLessThan(plan.score.firstHandsOnMinute);
  expect(careful.solver.notes).toContain(CAREFUL_NOTE);
  const [usual, surer] = [await howSure(scenario, plan), await howSure(scenario, careful)];
  // The usual plan is ready at the very minute it is due; the careful one has the minutes of a slow morning to spare.
  expect(usual.allOnTime.chance).toBeLessThan(0.3);
  expect(surer.allOnTime.low).toBeGreaterThan(usual.allOnTime.high + 0.3);
});
