// Makes one input error; the only way the reading folder makes them, so that every code is a listed one.
import type { InputError } from '../model/inputError.ts';
import type { ErrorCode } from './errorCodes.ts';

/** An input error whose code is one of ours. */
export type CodedError = InputError & { readonly code: ErrorCode };

export function inputErrorAt(code: ErrorCode, path: string, says: string, doThis: string): CodedError {
  return { code, path, says, doThis };
}
