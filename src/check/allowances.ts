// What a day under way allows beyond the scenario's minutes: a step that needs more, and what cannot be helped any more.
// Without a day under way nothing is allowed beyond them.
import { type Range, rangeOf } from '../model/units.ts';
import type { StepRun } from './judgedDay.ts';

/** Minutes a step may last: least + more to most + more + overrun. */
export function allowedMinutes({ step, record }: StepRun): Range {
  const { min, max } = rangeOf('minutes' in step ? step.minutes : step.minutesPerTray);
  const more = record?.moreMinutes ?? 0;
  return { min: min + more, max: max + more + (record?.overrunMinutes ?? 0) };
}

/** Minutes the next step may wait after this one: waitUpTo + overrun. */
export function allowedWait({ step, record }: StepRun): number {
  return step.waitUpTo + (record?.overrunMinutes ?? 0);
}

/** Minutes the first step of a tray may begin later than its batch allows: its overrun. */
export function allowedDelay({ record }: StepRun): number {
  return record?.overrunMinutes ?? 0;
}
