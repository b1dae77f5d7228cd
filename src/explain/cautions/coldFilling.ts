// COLD_FILLING: the minute at which a tray with a filling to be kept cold has been out of the cold four hours in all.
// FDA Food Code 3-501.19, time as a public health control: at most 4 h from 5 C (41 F) or below.
import { sayMinute } from '../../check/sayMinute.ts';
import { clockOf } from '../../model/clock.ts';
import type { Caution, Task } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { shortName } from './longestSays.ts';

/** Minutes out of the cold, included, after which the caution speaks. */
const OUT_OF_COLD_MINUTES = 4 * 60;
/** Warmest retarder that counts as cold, in C, included (41 F). */
const COLD_C = 5;

type Limit = { readonly minute: number; readonly readyMinute: number };

function beginsAt(task: Task): number {
  return task.handsOn.reduce((minute, handsOn) => Math.min(minute, handsOn.start), task.start);
}

function endsAt(task: Task): number {
  return task.handsOn.reduce((minute, handsOn) => Math.max(minute, handsOn.end), task.end);
}

/** When one tray's minutes out of the cold reach four hours; a tray stays in the cold until its next step begins. */
function limitOf(trayTasks: readonly Task[], isCold: (task: Task) => boolean): Limit | undefined {
  const steps = [...trayTasks].sort((a, b) => a.start - b.start);
  const last = steps.at(-1);
  if (last === undefined) return undefined;
  let leftMinutes = OUT_OF_COLD_MINUTES;
  let limit: number | undefined;
  steps.forEach((step, index) => {
    const next = steps[index + 1];
    const outMinutes = isCold(step) ? 0 : (next === undefined ? endsAt(step) : beginsAt(next)) - beginsAt(step);
    if (limit === undefined && outMinutes > leftMinutes) limit = beginsAt(step) + leftMinutes;
    leftMinutes -= outMinutes;
  });
  return { minute: limit ?? endsAt(last) + leftMinutes, readyMinute: endsAt(last) };
}

/** Tasks of each tray of a product. */
function traysOf(productId: string, tasks: readonly Task[]): readonly (readonly Task[])[] {
  const byTray = new Map<string, Task[]>();
  for (const task of tasks) {
    if (task.product !== productId || task.tray === undefined) continue;
    byTray.set(task.tray, [...(byTray.get(task.tray) ?? []), task]);
  }
  return [...byTray.values()];
}

export function coldFilling(scenario: Scenario, tasks: readonly Task[]): readonly Caution[] {
  const clock = clockOf(scenario);
  const cold = new Set(scenario.equipment.retarders.filter((each) => each.temperatureC <= COLD_C).map((each) => each.id));
  const isCold = (task: Task) => task.place?.kind === 'retarder' && cold.has(task.place.id);
  return scenario.products
    .filter((product) => product.coldFilling)
    .flatMap((product) => {
      const limits = traysOf(product.id, tasks).flatMap((trayTasks) => limitOf(trayTasks, isCold) ?? []);
      const first = limits.reduce<Limit | undefined>(
        (least, each) => (least && least.minute <= each.minute ? least : each),
        undefined,
      );
      if (first === undefined) return [];
      const who = shortName(product.name ?? product.id);
      const at = sayMinute(clock, first.minute);
      const isOver = limits.some((each) => each.readyMinute > each.minute);
      const says = isOver
        ? `${who}: out of the cold over 4 h in this plan, from ${at} on. Shorten it; the law decides what may be sold.`
        : `${who}: four hours out of the cold are up at ${at}. Back to 5 C or colder, sold or thrown away by then; the law decides.`;
      return [{ code: 'COLD_FILLING', says, source: 'FDA Food Code 3-501.19 (5 C is 41 F; minutes out of the cold added up).' }];
    });
}
