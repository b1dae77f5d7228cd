// Puts the errors of all stages into one list: one per place and code, sorted by place, not endless.
import type { InputError } from '../model/inputError.ts';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { MAX_ERRORS } from './limits.ts';
import { segmentsOf } from './pointer.ts';

const WHOLE_NUMBER = /^\d+$/;

function compareSegments(a: string, b: string): number {
  if (WHOLE_NUMBER.test(a) && WHOLE_NUMBER.test(b)) return Number(a) - Number(b);
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

function comparePaths(a: string, b: string): number {
  const [left, right] = [segmentsOf(a), segmentsOf(b)];
  for (let depth = 0; depth < Math.min(left.length, right.length); depth += 1) {
    const order = compareSegments(left[depth] ?? '', right[depth] ?? '');
    if (order !== 0) return order;
  }
  return left.length - right.length;
}

function compareErrors(a: CodedError, b: CodedError): number {
  return (
    (a.line ?? 0) - (b.line ?? 0) ||
    (a.column ?? 0) - (b.column ?? 0) ||
    comparePaths(a.path, b.path) ||
    compareSegments(a.code, b.code)
  );
}

/**
 * The errors to show. `refused` are those of taking the text apart: what the schema says about the same place is left
 * out, because the value there was refused already.
 */
export function errorList(
  refused: readonly CodedError[],
  further: readonly CodedError[],
  place: (error: CodedError) => CodedError,
): readonly InputError[] {
  const refusedPaths = new Set(refused.map((error) => error.path));
  // A value cut off half-way lacks much that is in the text.
  const isCutOff = refused.some(({ code }) => code === 'TOO_MANY_VALUES');
  const others = isCutOff ? [] : further;
  const all = [...refused, ...others.filter((error) => error.path === '' || !refusedPaths.has(error.path))];
  const single = new Map(all.map((error) => [`${error.code} ${error.path} ${error.line}:${error.column} ${error.says}`, error]));
  const sorted = [...single.values()].map(place).sort(compareErrors);
  if (sorted.length <= MAX_ERRORS) return sorted;
  const more = sorted.length - MAX_ERRORS;
  const says = `There are ${more} more errors after these ${MAX_ERRORS}.`;
  return [...sorted.slice(0, MAX_ERRORS), inputErrorAt('TOO_MANY_ERRORS', '', says, 'Mend these first, then read it again.')];
}
