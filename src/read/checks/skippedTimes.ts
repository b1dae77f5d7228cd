// TIME_SKIPPED: every clock time comes on its date; in the night the clocks go forward, an hour of times does not.
import { isTimeZone, occurrences } from '../../model/clock.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';

type Time = { readonly at: string; readonly text: string };

function timesOf({ day, people, orders }: Parts): readonly Time[] {
  const ofDay = day === undefined ? [] : [day].map((value) => ({ at: '/day', value }));
  const ofPeople = people?.sound ?? [];
  const ofBreaks = ofPeople.flatMap(({ at, value }) =>
    value.breaks.map((pause, index) => ({ at: `${at}/breaks/${index}`, value: pause })),
  );
  const spans = [...ofDay, ...ofPeople, ...ofBreaks].flatMap(({ at, value }) => [
    { at: `${at}/from`, text: value.from },
    { at: `${at}/until`, text: value.until },
  ]);
  return [...spans, ...orders.sound.map(({ at, value }) => ({ at: `${at}/readyBy`, text: value.readyBy }))];
}

export function skippedTimes(parts: Parts): readonly CodedError[] {
  const { date, timeZone } = parts;
  if (date === undefined || timeZone === undefined || !isTimeZone(timeZone)) return [];
  const times = timesOf(parts);
  const skipped = new Set([...new Set(times.map(({ text }) => text))].filter((text) => occurrences(date, timeZone, text) === 0));
  return times
    .filter(({ text }) => skipped.has(text))
    .map(({ at, text }) => {
      const says = `The clock never shows ${text} on that date: the clocks go forward over it.`;
      return inputErrorAt('TIME_SKIPPED', at, says, 'Write a time before or after the missing hour.');
    });
}
