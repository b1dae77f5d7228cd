// How long a client wants to wait for an answer, from its Prefer header. Used by askWork.ts.
import type { Request } from 'express';

/** No connection is held longer, in seconds. */
const MOST_SECONDS = 600;

/** Preferences stand between commas, which may stand inside quotes too: RFC 7240 (Snell, 2014), section 2. */
const BETWEEN_COMMAS = /(?:[^,"]|"(?:[^"\\]|\\.)*")+/g;
const PREFERENCE = /^\s*([!#$%&'*+.^`|~\w-]+)\s*(?:=\s*("[^"]*"|[^\s;"]*))?\s*(?:;.*)?$/;

/** delta-seconds of section 4.3. Nine digits are more than thirty years. */
const DELTA_SECONDS = /^\d{1,9}$/;

/** Seconds from 0; null when it does not want to wait, or not in words we know: such a preference is passed over. */
export function waitWanted({ headers }: Request): number | null {
  const sent = [headers.prefer ?? []].flat().join(',');
  for (const [text] of sent.matchAll(BETWEEN_COMMAS)) {
    const [, name = '', value = ''] = PREFERENCE.exec(text) ?? [];
    if (name.toLowerCase() !== 'wait') continue;
    // Of a preference that is there twice the first counts.
    const digits = value.replace(/^"(.*)"$/, '$1');
    return DELTA_SECONDS.test(digits) ? Math.min(Number(digits), MOST_SECONDS) : null;
  }
  return null;
}
