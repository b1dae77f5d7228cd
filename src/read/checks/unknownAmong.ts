// Names that refer to something that is not there, each with what is there instead. Used by every check of names.
import { didYouMean } from '../didYouMean.ts';
import type { ErrorCode } from '../errorCodes.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import { MAX_ERRORS } from '../limits.ts';
import { shown } from '../shown.ts';

/** A name and where it stands; `says` begins the sentence: Order 2 names the product "x". */
export type Reference = { readonly at: string; readonly id: string; readonly says: string };

const SHOWN_IDS = 12;

function choices(kind: string, ids: readonly string[]): string {
  const more = ids.length > SHOWN_IDS ? ', ...' : '';
  return `Name a ${kind} that is there: ${ids.slice(0, SHOWN_IDS).map(shown).join(', ')}${more}.`;
}

/** Suggestions are sought for as many errors as are shown: comparing thousands of words with thousands takes long. */
export function unknownAmong(
  code: ErrorCode,
  kind: string,
  ids: readonly string[],
  references: readonly Reference[],
): readonly CodedError[] {
  // An empty list is an error of its own.
  if (ids.length === 0) return [];
  const known = new Set(ids);
  const otherwise = choices(kind, ids);
  return references
    .filter(({ id }) => !known.has(id))
    .map(({ at, id, says }, index) => {
      const close = index < MAX_ERRORS ? didYouMean(id, ids) : undefined;
      const doThis = close === undefined ? otherwise : `Did you mean "${close}"? ${otherwise}`;
      return inputErrorAt(code, at, `${says}, and no ${kind} has that id.`, doThis);
    });
}
