// Little's law (Little 1961, Operations Research 9): the mean number of trays on the shelves is the rate at which they come times
// the mean time they stay. Numbers on the shelves are counted at instants from comings and goings; stays are measured tray by tray.
import { expect, test } from 'vitest';
import { normalsFrom } from '../../../src/questions/howSure/chance.ts';
import { courseOf } from '../../../src/questions/howSure/courseOf.ts';
import { Mornings } from '../../../src/questions/howSure/mornings.ts';
import { planOfSmallDay, smallDay } from './smallDays.ts';

const SHELVES = 6;

/** How many of the times lie at or before an instant. */
function comeBy(times: readonly number[], instant: number): number {
  return times.filter((time) => time <= instant).length;
}

test('mean trays on the shelves = rate of arrival x mean stay, and never more than there is room for', async () => {
  const scenario = smallDay({
    batchSteps: [{ do: 'bulk', minutes: [30, 700] }],
    steps: [
      { do: 'shape', minutesPerTray: 10, waitUpTo: 60 },
      { do: 'proof', minutes: [50, 200] },
      { do: 'bake', minutes: 20, temperatureC: 200, load: 2, unload: 2 },
    ],
    trays: 18,
    shelves: SHELVES,
    people: [{ id: 'ana', from: '00:00', until: '23:00' }],
    readyBy: '22:00',
    spread: { bulk: 10, proof: 15, shape: 25, bake: 10, load: 40, unload: 40 },
  });
  const course = courseOf(scenario, await planOfSmallDay(scenario));
  const mornings = new Mornings(course);
  const chances = new Float64Array(course.chances * mornings.block);
  normalsFrom(4)(chances);
  const size = Math.min(200, mornings.block);
  mornings.run(chances, size, null);
  const shelf = course.pools.findIndex(({ id }) => id === 'shelf proofer');
  const stays = course.uses.filter(({ pool }) => pool === shelf);
  expect(stays).toHaveLength(18);

  let [counted, instants, minutesStayed, minutesOpen, most] = [0, 0, 0, 0, 0];
  for (let morning = 0; morning < size; morning++) {
    const came = stays.map(({ takenAt }) => mornings.timesOf(takenAt)[morning] as number);
    const went = stays.map(({ freed }) => mornings.timesOf(freed.from)[morning] as number);
    const [from, until] = [Math.min(...came), Math.max(...went)];
    // Instants half a minute apart, away from whole minutes, from the first tray to come to the last to go.
    for (let instant = from + 0.217; instant < until; instant += 0.5) {
      const present = comeBy(came, instant) - comeBy(went, instant);
      counted += present;
      instants += 1;
      most = Math.max(most, present);
    }
    minutesOpen += until - from;
    for (const [index, time] of came.entries()) minutesStayed += (went[index] as number) - time;
  }
  const meanPresent = counted / instants;
  const ratePerMinute = (stays.length * size) / minutesOpen;
  const meanStay = minutesStayed / (stays.length * size);
  expect(meanStay).toBeGreaterThan(50);
  expect(Math.abs(meanPresent / (ratePerMinute * meanStay) - 1)).toBeLessThan(0.002);
  expect(most).toBe(SHELVES);
});
