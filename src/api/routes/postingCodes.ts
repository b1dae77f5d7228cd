// Codes of what can be wrong with a plan that is to be posted, beside those of every input and of the rules. docs/api-days.md lists them.
import type { InputError } from '../../model/inputError.ts';

export const POSTING_CODES = {
  UNKNOWN_PLAN: 'The service has no plan of this id.',
  NO_PLAN_YET: 'The plan of this id is not made yet, or could not be made.',
  NO_SINGLE_PLAN: 'The work of this id answers with more than one plan: post the plan wanted with its scenario.',
  OTHER_DATE: 'The plan is for another day.',
} as const;

export type PostingCode = keyof typeof POSTING_CODES;

/** The error of a plan that cannot be posted, in the place it has in the body. */
export function wrongToPost(code: PostingCode, says: string, doThis: string): readonly InputError[] {
  return [{ code, path: '/plan', says, doThis }];
}
