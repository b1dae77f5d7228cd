// A JSON body at the door: its outer shape read by a schema, and errors of what is inside placed within the whole. Used for every
// body that holds more than one thing.
import type * as z from 'zod';
import type { InputError, Reading } from '../model/inputError.ts';
import { errorList } from '../read/errorList.ts';
import type { CodedError } from '../read/inputErrorAt.ts';
import { MAX_PLAN_VALUES } from '../read/limits.ts';
import { plainValue } from '../read/plainValue.ts';
import { schemaErrors } from '../read/schemaErrors.ts';
import { jsonBody } from './jsonBody.ts';
import { mustRead } from './mustRead.ts';

/** What JSON can say without what a plain value cannot: forbidden keys, and depth that would end the process. */
export function plainBody(text: string): unknown {
  const plain = plainValue(jsonBody(text), MAX_PLAN_VALUES);
  if (plain.errors.length === 0) return plain.value;
  return mustRead({ ok: false, errors: listed(plain.errors) });
}

function listed(errors: readonly CodedError[]): readonly InputError[] {
  return errorList(errors, [], (error) => error);
}

/** The value as the schema has it, or every error at once. */
export function shapeOf<S extends z.ZodType>(schema: S, value: unknown): z.infer<S> {
  const read = schema.safeParse(value);
  if (read.success) return read.data;
  return mustRead({ ok: false, errors: listed(schemaErrors(read.error.issues, schema, value)) });
}

/** Places within the whole body. Line and column would be those of a text the client never wrote. */
export function within<T>(part: string, reading: Reading<T>): Reading<T> {
  if (reading.ok) return reading;
  const errors = reading.errors.map(
    ({ code, path, says, doThis }): InputError => ({ code, path: `/${part}${path}`, says, doThis }),
  );
  return { ok: false, errors };
}

/** Both, or the errors of both at once. */
export function both<A, B>(first: Reading<A>, second: Reading<B>): Reading<readonly [A, B]> {
  if (first.ok && second.ok) return { ok: true, value: [first.value, second.value] };
  return { ok: false, errors: [...(first.ok ? [] : first.errors), ...(second.ok ? [] : second.errors)] };
}
