// The body of a request as text: read up to its limit, never inflated, decoded as UTF-8 or refused.
import express, { type Request } from 'express';
import { MAX_TEXT_BYTES } from '../read/limits.ts';
import { Problem } from './problem.ts';

/** Reads the body as bytes. Routes check its media type before. */
export const readBytes = express.raw({ type: () => true, limit: MAX_TEXT_BYTES, inflate: false });

/** The text of a body read by readBytes; '' when there was none. */
export function bodyText({ body }: Request): string {
  if (!(body instanceof Uint8Array)) return '';
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(body);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    const says = 'The body is not text in UTF-8.';
    throw new Problem(400, says, { errors: [{ code: 'BINARY_TEXT', path: '', says, doThis: 'Send plain text in UTF-8.' }] });
  }
}
