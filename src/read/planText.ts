// Plan text in, value out: JSON fast and large, else YAML; errors get line and column when the text is small enough to be placed.
import type { Reading } from '../model/inputError.ts';
import { errorList } from './errorList.ts';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { MAX_PLAN_BYTES, MAX_PLAN_VALUES, MAX_TEXT_BYTES } from './limits.ts';
import { plainText } from './plainText.ts';
import { plainValue } from './plainValue.ts';
import { textGuard } from './textGuard.ts';

const FILE = 'The plan';

/** A value read, or what is wrong with it. */
export type Judged<T> = { readonly value: T | undefined; readonly errors: readonly CodedError[] };

const asItIs = (error: CodedError): CodedError => error;

function jsonValue(text: string): { readonly value: unknown } | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return { value };
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

function fromSmallText<T>(text: string, parse: (value: unknown) => Judged<T>): Reading<T> {
  const plain = plainText(text, FILE);
  if (!plain.ok) return plain;
  const { value, errors } = parse(plain.value.value);
  if (value !== undefined && errors.length === 0 && plain.value.refused.length === 0) return { ok: true, value };
  return { ok: false, errors: plain.value.list(errors) };
}

/** Reads plan text. `parse` turns the plain value into what is wanted, or says what is wrong. */
export function planText<T>(text: string, parse: (value: unknown) => Judged<T>): Reading<T> {
  const withoutMark = text.startsWith('\ufeff') ? text.slice(1) : text;
  const guarded = textGuard(withoutMark, MAX_PLAN_BYTES, FILE);
  if (guarded.length > 0) return { ok: false, errors: errorList(guarded, [], asItIs) };
  const isSmall = withoutMark.length <= MAX_TEXT_BYTES;
  const json = jsonValue(withoutMark);
  if (json === undefined && isSmall) return fromSmallText(withoutMark, parse);
  if (json === undefined) {
    const says = `${FILE} is no JSON, and only plans up to ${MAX_TEXT_BYTES / 1_000_000} MB are read as YAML.`;
    return { ok: false, errors: [{ ...inputErrorAt('SYNTAX', '', says, 'Write the plan again, as JSON.'), line: 1, column: 1 }] };
  }
  const plain = plainValue(json.value, MAX_PLAN_VALUES);
  const { value, errors } = parse(plain.value);
  if (value !== undefined && errors.length === 0 && plain.errors.length === 0) return { ok: true, value };
  if (isSmall) {
    const placed = fromSmallText(withoutMark, parse);
    if (!placed.ok) return placed;
  }
  return { ok: false, errors: errorList(plain.errors, errors, asItIs) };
}
