// Conditional requests as in RFC 9110 (Fielding, Nottingham, Reschke, 2022), section 13: entity tags made, compared, and asked in the
// order of section 13.2.2. Modification dates are not offered, so conditions on dates are passed over (sections 13.1.3 and 13.1.4).
import { createHash } from 'node:crypto';
import type { Request, Response } from 'express';
import { Problem } from '../problem.ts';

/** Section 8.8.3: a strong tag says that the bytes are the same, so it is made of the bytes. */
export function tagOf(bytes: string): string {
  return `"${createHash('sha256').update(bytes).digest('base64url')}"`;
}

type Condition = 'any' | readonly string[];

/** Section 8.8.3: weak or not, in quotes, of visible characters and those above ASCII. */
const TAG = /(?:W\/)?"[\u0021\u0023-\u007e\u0080-\u00ff]*"/g;

function conditionOf(header: string): Condition {
  return header.trim() === '*' ? 'any' : (header.match(TAG) ?? []);
}

/** Strong comparison of section 8.8.3.2: a weak tag equals nothing. */
function isStrongly(tags: readonly string[], current: readonly string[]): boolean {
  return tags.some((tag) => !tag.startsWith('W/') && current.includes(tag));
}

/** Weak comparison of section 8.8.3.2. */
function isWeakly(tags: readonly string[], current: readonly string[]): boolean {
  return tags.some((tag) => current.includes(tag.replace(/^W\//, '')));
}

/** Section 13.1.1: false when If-Match is there and nothing that is here is named. `current` is empty when nothing is here. */
function isMatched(request: Request, current: readonly string[]): boolean {
  const header = request.get('If-Match');
  if (header === undefined) return true;
  const wanted = conditionOf(header);
  return wanted === 'any' ? current.length > 0 : isStrongly(wanted, current);
}

/** Section 13.1.2: false when If-None-Match is there and something that is here is named. */
function isNoneMatched(request: Request, current: readonly string[]): boolean {
  const header = request.get('If-None-Match');
  if (header === undefined) return true;
  const unwanted = conditionOf(header);
  return unwanted === 'any' ? current.length === 0 : !isWeakly(unwanted, current);
}

/** Whether the request says what must be here for it to be done. */
export function isConditional(request: Request): boolean {
  return request.get('If-Match') !== undefined || request.get('If-None-Match') !== undefined;
}

/** Section 15.5.13, for a request that would change what is here. */
export function refused(): Problem {
  return new Problem(412, 'What is here is not what the request was made for: fetch it again, then decide.');
}

/** Throws 412 where a request that changes something must not. `current`: the tags of all that is here now. */
export function mayChange(request: Request, current: readonly string[]): void {
  if (!isMatched(request, current) || !isNoneMatched(request, current)) throw refused();
}

/**
 * Sends a text with its tag, or 304 without it when the client has it (section 15.4.5). Kept by the client alone, and asked about
 * each time.
 */
export function sendTagged(request: Request, response: Response, text: string, tag = tagOf(text)): void {
  if (!isMatched(request, [tag])) throw refused();
  response.set({ ETag: tag, 'Cache-Control': 'private, no-cache' });
  if (isNoneMatched(request, [tag])) {
    response.send(text);
    return;
  }
  response.removeHeader('Content-Type');
  response.status(304).end();
}
