// From a reading to its value, or to the problem its errors make: 400 for text nobody can take apart, 422 for what it says.
import type { InputError, Reading } from '../model/inputError.ts';
import { Problem } from './problem.ts';

/** Codes that say the text itself is broken. */
const BROKEN_TEXT: ReadonlySet<string> = new Set(['EMPTY', 'BINARY_TEXT', 'SYNTAX', 'SEVERAL_DOCUMENTS']);

function detailOf(errors: readonly InputError[]): string {
  return errors.length === 1 ? '1 thing to put right.' : `${errors.length} things to put right.`;
}

export function mustRead<T>(reading: Reading<T>): T {
  if (reading.ok) return reading.value;
  const { errors } = reading;
  const status = errors.some(({ code }) => BROKEN_TEXT.has(code)) ? 400 : 422;
  throw new Problem(status, detailOf(errors), { errors });
}
