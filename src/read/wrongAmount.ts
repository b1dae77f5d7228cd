// Numbers out of bounds and lists with too few or too many entries, in words.
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { shown } from './shown.ts';
import type { Wrong } from './wrong.ts';

type Limit = { readonly isMost: boolean; readonly limit: string };

function limitOf({ issue }: Wrong): Limit {
  if (issue.code === 'too_big') return { isMost: true, limit: String(issue.maximum) };
  return { isMost: false, limit: issue.code === 'too_small' ? String(issue.minimum) : '?' };
}

/** A number below the smallest or above the largest allowed. */
export function numberError(wrong: Wrong): CodedError {
  const { isMost, limit } = limitOf(wrong);
  const says = `${wrong.place} is ${shown(wrong.value)}, ${isMost ? `more than ${limit}` : `less than ${limit}`}.`;
  return inputErrorAt('OUT_OF_BOUNDS', wrong.at, says, `Write a number of ${isMost ? `at most ${limit}` : `at least ${limit}`}.`);
}

/** A list with too few or too many entries. */
export function countError(wrong: Wrong): CodedError {
  const { isMost, limit } = limitOf(wrong);
  const count = Array.isArray(wrong.value) ? wrong.value.length : 0;
  const says = `${wrong.place} has ${count === 1 ? '1 entry' : `${count} entries`}; ${isMost ? 'at most' : 'at least'} ${limit} can be there.`;
  const least = count === 0 ? 'Add one.' : `Write at least ${limit}.`;
  return inputErrorAt(
    'WRONG_COUNT',
    wrong.at,
    isMost ? says : says.replace('can be there', 'must be there'),
    isMost ? `Leave out ${count - Number(limit)}.` : least,
  );
}
