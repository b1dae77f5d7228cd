// HOURS_UPSIDE_DOWN, BREAK_UPSIDE_DOWN, PERSON_OFF_ALL_DAY: hours and breaks have a length, and everybody works some of the day.
import { type Clock, minuteAt } from '../../model/clock.ts';
import type { Person } from '../../model/scenario.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';
import { shown } from '../shown.ts';
import { longestStretch } from './workStretches.ts';

function isUpsideDown(span: { readonly from: string; readonly until: string }, clock: Clock): boolean {
  return minuteAt(clock, span.until) <= minuteAt(clock, span.from);
}

function breakErrors(person: Person, at: string, clock: Clock): readonly CodedError[] {
  return person.breaks.flatMap((pause, index) => {
    if (!isUpsideDown(pause, clock)) return [];
    const says = `A break of ${shown(person.id)} ends at ${pause.until}, not after it begins at ${pause.from}.`;
    return [inputErrorAt('BREAK_UPSIDE_DOWN', `${at}/breaks/${index}/until`, says, 'Put the end after the beginning.')];
  });
}

function hoursErrors(person: Person, at: string, clock: Clock): readonly CodedError[] {
  if (isUpsideDown(person, clock)) {
    const says = `The hours of ${shown(person.id)} end at ${person.until}, not after they begin at ${person.from}.`;
    const doThis = 'Put the end after the beginning; write "-1d 21:30" for the evening before.';
    return [inputErrorAt('HOURS_UPSIDE_DOWN', `${at}/until`, says, doThis)];
  }
  if (longestStretch(person, clock) > 0) return [];
  const says = `${shown(person.id)} works no minute of the day: hours ${person.from} to ${person.until}, breaks taken off.`;
  return [inputErrorAt('PERSON_OFF_ALL_DAY', at, says, 'Correct the hours or breaks, or take the person out.')];
}

export function peopleHours({ people, clock }: Parts): readonly CodedError[] {
  if (people === undefined || clock === undefined || clock.minutes <= 0) return [];
  return people.sound.flatMap(({ at, value }) => {
    const ofBreaks = breakErrors(value, at, clock);
    return [...ofBreaks, ...hoursErrors({ ...value, breaks: ofBreaks.length > 0 ? [] : value.breaks }, at, clock)];
  });
}
