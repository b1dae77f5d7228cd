// The Idempotency-Key of a request (draft-ietf-httpapi-idempotency-key-header). Used by askWork.ts.
import type { Request } from 'express';
import { Problem } from '../problem.ts';

const KEY = /^[\x21-\x7e]{1,200}$/;

/** Undefined when there is none. It is taken as it stands, quotes included. */
export function idempotencyKey({ headers }: Request): string | undefined {
  const key = headers['idempotency-key'];
  if (key === undefined) return undefined;
  if (typeof key === 'string' && KEY.test(key)) return key;
  throw new Problem(400, 'An Idempotency-Key is 1 to 200 visible characters of ASCII without spaces.');
}
