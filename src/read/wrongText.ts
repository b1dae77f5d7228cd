// Texts that are no clock time, date, id or name, and ranges upside down, in words.
import { CLOCK_PATTERN, ID_PATTERN, RANGE_SAYS } from '../model/units.ts';
import { clockHint } from './clockHint.ts';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { shown } from './shown.ts';
import type { Wrong } from './wrong.ts';

const TIME_FORM = 'Write a time as "05:30", or "-1d 21:30" for the evening before.';

/** A clock time that cannot be read. */
export function timeError(wrong: Wrong): CodedError {
  const hint = clockHint(wrong.value);
  const says = `${wrong.place} is ${shown(wrong.value)}, which is no clock time.`;
  return inputErrorAt('BAD_TIME', wrong.at, says, hint === undefined ? TIME_FORM : `Did you mean "${hint}"? ${TIME_FORM}`);
}

function dateError(wrong: Wrong): CodedError {
  const isShaped = typeof wrong.value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(wrong.value);
  const says = `${wrong.place} is ${shown(wrong.value)}, ${isShaped ? 'and no calendar has that day' : 'which is no date'}.`;
  return inputErrorAt('BAD_DATE', wrong.at, says, 'Write the date as year-month-day: 2026-05-16.');
}

function idError(wrong: Wrong): CodedError {
  const id = wrong.issue.code === 'invalid_key' ? wrong.path.at(-1) : wrong.value;
  const isReserved = wrong.issue.code === 'custom';
  const what = wrong.issue.code === 'invalid_key' ? 'The ingredient' : `${wrong.place} is`;
  const says = `${what} ${shown(id)}, ${isReserved ? 'a reserved word' : 'which cannot be used as a name to refer to'}.`;
  const doThis = 'Use 1 to 60 letters, digits, dots, dashes and underscores, beginning with a letter or digit: rye-loaf.';
  return inputErrorAt(
    'BAD_ID',
    wrong.at,
    wrong.issue.code === 'invalid_key' ? says.replace(',', '') : says,
    isReserved ? 'Use another word.' : doThis,
  );
}

/** A text in the wrong form. */
export function textError(wrong: Wrong): CodedError {
  const { issue } = wrong;
  if (issue.code === 'invalid_key') return idError(wrong);
  if (issue.code === 'custom') return issue.message === RANGE_SAYS ? upsideDownError(wrong) : idError(wrong);
  if (issue.code === 'invalid_format') {
    if (issue.format === 'date') return dateError(wrong);
    if (issue.pattern === String(CLOCK_PATTERN)) return timeError(wrong);
    if (issue.pattern === String(ID_PATTERN)) return idError(wrong);
  }
  const isEmpty = wrong.value === '';
  const says = `${wrong.place} ${isEmpty ? 'is empty' : 'is too long, or holds control characters'}.`;
  return inputErrorAt('BAD_TEXT', wrong.at, says, 'Write a short text on one line.');
}

function upsideDownError(wrong: Wrong): CodedError {
  const says = `${wrong.place} is ${shown(wrong.value)}: at least more than at most.`;
  return inputErrorAt('RANGE_UPSIDE_DOWN', wrong.at, says, 'Write the smaller number first: [at least, at most].');
}
