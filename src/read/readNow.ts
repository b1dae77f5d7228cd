// The door for the minute it is: a clock time in; a minute of the scenario's day, or what is wrong with the time, out.
import { clockOf, minuteAt, occurrences } from '../model/clock.ts';
import type { Reading } from '../model/inputError.ts';
import type { Scenario } from '../model/scenario.ts';

/** Reads a clock time written as a scenario's are; the path of an error is ''. */
export function readNow(now: string, scenario: Scenario): Reading<number> {
  const clock = clockOf(scenario);
  const wrong = (code: string, says: string, doThis: string): Reading<number> => ({
    ok: false,
    errors: [{ code, path: '', says, doThis }],
  });
  if (occurrences(clock.date, clock.timeZone, now) === 0)
    return wrong(
      'TIME_SKIPPED',
      `The clock never shows ${now} on that date: the clocks go forward over it.`,
      'Write a time before or after the missing hour.',
    );
  const minute = minuteAt(clock, now);
  const { from, until } = scenario.day;
  if (minute < 0 || minute >= clock.minutes)
    return wrong(
      'TIME_OUTSIDE_DAY',
      `${now} lies outside the day, which is from ${from} to ${until}.`,
      'Write a time within it; "-1d 23:10" is the evening before.',
    );
  if (minute < (scenario.underway?.now ?? 0))
    return wrong(
      'BEFORE_LAST_TIME',
      `${now} is before the minute from which the day was planned anew last.`,
      'Start from the plan that was made before that, or write a later time.',
    );
  return { ok: true, value: minute };
}
