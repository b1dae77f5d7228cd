// Values that are missing or of another kind than needed, in words.
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { shown } from './shown.ts';
import type { Wrong } from './wrong.ts';
import { timeError } from './wrongText.ts';

const NEEDED: ReadonlyMap<string, string> = new Map([
  ['string', 'a text'],
  ['number', 'a number'],
  ['int', 'a whole number'],
  ['boolean', 'true or false'],
  ['array', 'a list'],
  ['tuple', 'a pair [at least, at most]'],
  ['object', 'keys with values'],
  ['record', 'keys with values'],
]);

const TIME_KEYS: ReadonlySet<PropertyKey | undefined> = new Set(['from', 'until', 'readyBy', 'at', 'newReadyBy']);

function hintFor(expected: string, value: unknown): string {
  if (expected === 'string' && (typeof value === 'number' || typeof value === 'boolean')) return `Put it in quotes: "${value}".`;
  const isNumberText = typeof value === 'string' && value.trim() !== '' && Number.isFinite(Number(value));
  if ((expected === 'number' || expected === 'int') && isNumberText) return `Write it without quotes: ${Number(value)}.`;
  if (expected === 'array') return 'Write a list: lines that begin with "- ", or [ ] for an empty one.';
  if (expected === 'boolean') return 'Write true or false, without quotes.';
  return `Write ${NEEDED.get(expected) ?? 'a value of the right kind'}.`;
}

/** A value that is missing or of the wrong kind. */
export function typeError(wrong: Wrong): CodedError {
  const { issue, value, place, at } = wrong;
  const expected = issue.code === 'invalid_type' ? issue.expected : '';
  const needed = NEEDED.get(expected) ?? 'another kind of value';
  if (wrong.path.length === 0) {
    const says = `The whole input is ${shown(value)}, not keys with values.`;
    return inputErrorAt('NOT_AN_OBJECT', '', says, 'Begin with lines such as "scenario: 1" and "name: Saturday".');
  }
  if (value === undefined) return inputErrorAt('MISSING', at, `${place} is missing.`, `Add it: ${needed}.`);
  if (value === null) return inputErrorAt('MISSING', at, `${place} has nothing after it.`, `Add ${needed}, or take the key out.`);
  if (expected === 'string' && TIME_KEYS.has(wrong.path.at(-1))) return timeError(wrong);
  if (expected === 'int' && typeof value === 'number') {
    return inputErrorAt('NOT_WHOLE', at, `${place} is ${shown(value)}.`, 'Write a whole number.');
  }
  return inputErrorAt('WRONG_TYPE', at, `${place} is ${shown(value)}, not ${needed}.`, hintFor(expected, value));
}
