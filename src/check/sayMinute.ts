// Minutes in the words of a breach: the wall clock, with the day in front when it is not the scenario's date.
import { type Clock, dayOffsetAt, wallClockAt } from '../model/clock.ts';

/** A minute as 05:31, or -1d 22:00 the evening before. */
export function sayMinute(clock: Clock, minute: number): string {
  const days = dayOffsetAt(clock, minute);
  const time = wallClockAt(clock, minute);
  return days === 0 ? time : `${days > 0 ? '+' : ''}${days}d ${time}`;
}

/** A number of minutes as 1 minute, 5 minutes. */
export function sayMinutes(minutes: number): string {
  return minutes === 1 ? '1 minute' : `${minutes} minutes`;
}

/** A temperature rounded to a tenth of a degree, as 212.5 C. */
export function sayC(celsius: number): string {
  return `${Math.round(celsius * 10) / 10} C`;
}
