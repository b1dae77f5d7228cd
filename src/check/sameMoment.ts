// Whether a clock time a plan states, as 2026-05-16T06:32:00+01:00, is the moment of a minute of the day.
import { type Clock, instantAt } from '../model/clock.ts';

/** How much of an ISO time is date, hour and minute: 2026-05-16T06:32. */
const TO_THE_MINUTE = 16;

/** Same moment on the time line, and the same time on the wall clock of the scenario's time zone. */
export function isSameMoment(clock: Clock, stated: string, minute: number): boolean {
  const expected = instantAt(clock, minute);
  return Date.parse(stated) === Date.parse(expected) && stated.slice(0, TO_THE_MINUTE) === expected.slice(0, TO_THE_MINUTE);
}
