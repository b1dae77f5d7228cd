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

function comparePaths(left: readonly string[], right: readonly string[]): number {
  for (let depth = 0; depth < Math.min(left.length, right.length); depth += 1) {
    const order = compareSegments(left[depth] ?? '', right[depth] ?? '');
    if (order !== 0) return order;
  }
  return left.length - right.length;
}

type Sortable = { readonly error: CodedError; readonly segments: readonly string[] };

function compareErrors({ error: a, segments: left }: Sortable, { error: b, segments: right }: Sortable): number {
  return (
    (a.line ?? 0) - (b.line ?? 0) ||
    (a.column ?? 0) - (b.column ?? 0) ||
    comparePaths(left, right) ||
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
  const isCutOff = refused.some(({ code }) => code === 'TOO_MANY_VALUES' || code === 'TOO_DEEP');
  const others = isCutOff ? [] : further;
  const all = [...refused, ...others.filter((error) => error.path === '' || !refusedPaths.has(error.path))];
  const single = new Map(all.map((error) => [`${error.code} ${error.path} ${error.line}:${error.column}`, error]));
  const sorted = [...single.values()]
    .map((error) => ({ error: place(error), segments: segmentsOf(error.path) }))
    .sort(compareErrors)
    .map(({ error }) => error);
  if (sorted.length <= MAX_ERRORS) return sorted;
  const more = sorted.length - MAX_ERRORS;
  const says = `There are ${more} more errors after these ${MAX_ERRORS}.`;
  return [...sorted.slice(0, MAX_ERRORS), inputErrorAt('TOO_MANY_ERRORS', '', says, 'Mend these first, then read it again.')];
}
