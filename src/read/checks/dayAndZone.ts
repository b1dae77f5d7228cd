// UNKNOWN_TIME_ZONE, DAY_UPSIDE_DOWN, DAY_TOO_LONG: the day lies on a real time line and is not endless.
import { isTimeZone } from '../../model/clock.ts';
import { MAX_DAY_MINUTES } from '../../model/units.ts';
import { didYouMean } from '../didYouMean.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';
import { shown } from '../shown.ts';

function zoneErrors(timeZone: string | undefined): readonly CodedError[] {
  if (timeZone === undefined || isTimeZone(timeZone)) return [];
  const close = didYouMean(timeZone, Intl.supportedValuesOf('timeZone'));
  const otherwise = 'Write an IANA time zone, as Europe/Lisbon.';
  const doThis = close === undefined ? otherwise : `Did you mean "${close}"? ${otherwise}`;
  return [inputErrorAt('UNKNOWN_TIME_ZONE', '/timeZone', `${shown(timeZone)} is no time zone that is known.`, doThis)];
}

export function dayAndZone({ timeZone, day, clock }: Parts): readonly CodedError[] {
  const zone = zoneErrors(timeZone);
  if (day === undefined || clock === undefined) return zone;
  if (clock.minutes <= 0) {
    const says = `The day ends at ${day.until}, not after it begins at ${day.from}.`;
    const doThis = 'Put the end after the beginning; write "-1d 21:30" for a beginning the evening before.';
    return [...zone, inputErrorAt('DAY_UPSIDE_DOWN', '/day/until', says, doThis)];
  }
  if (clock.minutes > MAX_DAY_MINUTES) {
    const says = `The day is ${clock.minutes} minutes long; at most ${MAX_DAY_MINUTES} (three days and nights) can be planned.`;
    return [...zone, inputErrorAt('DAY_TOO_LONG', '/day/until', says, 'Let the day begin later or end earlier.')];
  }
  return zone;
}
