// What is otherwise in the new plan of a day under way than in the plan before, as a short list people can call across the room.
import { sayMinute } from '../check/sayMinute.ts';
import { clockOfPlan } from '../model/clock.ts';
import type { Plan } from '../model/plan.ts';
import { CHANGE_KINDS, type ChangeLine } from '../model/replanAnswer.ts';
import type { Scenario } from '../model/scenario.ts';
import { heatLines } from './moved/heatLines.ts';
import { movedLines } from './moved/movedLines.ts';
import { movedSteps } from './moved/movedSteps.ts';
import { orderLines } from './moved/orderLines.ts';
import { outLines } from './moved/outLines.ts';
import { type TraysOut, trayLines } from './moved/trayLines.ts';
import { trayNames } from './moved/trayNames.ts';

/** Steps somebody does that are still to come, of each tray and batch. */
function stepsLeft(scenario: Scenario): ReadonlyMap<string, number> {
  const left = new Map<string, number>();
  for (const { step, state, tray, batch } of scenario.underway?.tasks ?? []) {
    if (state !== 'planned' || ['bulk', 'rest', 'retard', 'proof', 'cool'].includes(step)) continue;
    left.set(tray ?? batch, (left.get(tray ?? batch) ?? 0) + 1);
  }
  return left;
}

/** Changes by when they matter. `scenario` is the day under way that `after` is a plan of, `before` the plan it had. */
export function changesSince(before: Plan, after: Plan, scenario: Scenario, out: TraysOut): readonly ChangeLine[] {
  const clock = clockOfPlan(after);
  const now = scenario.underway?.now ?? 0;
  const says = (minute: number): string => sayMinute(clock, minute);
  const minuteOf = (instant: string): number => Math.round((Date.parse(instant) - clock.startEpochMs) / 60000);
  const words = { names: trayNames(after, before), says, minuteOf };
  const lines = [
    ...trayLines(before, after, out, now, words),
    ...movedLines(movedSteps(scenario, after), stepsLeft(scenario), words),
    ...(scenario.underway === undefined ? [] : outLines(before, after, scenario.underway, words)),
    ...heatLines(before, after, now, words),
    ...orderLines(before, after, words),
  ];
  const rank = ({ kind }: ChangeLine): number => CHANGE_KINDS.indexOf(kind);
  return lines.sort((a, b) => a.minute - b.minute || rank(a) - rank(b) || (a.says < b.says ? -1 : 1));
}
