// The body of a request as text: read up to its limit, never inflated, decoded as UTF-8 or refused.
import express, { type Request, type RequestHandler } from 'express';
import { MAX_TEXT_BYTES } from '../read/limits.ts';
import { Problem } from './problem.ts';

/** Setting of the app: most bytes of a body, included. Set by createApp.ts; default MAX_TEXT_BYTES. */
export const MOST_BODY_BYTES = 'most body bytes';

const readers = new Map<number, RequestHandler>();

function readerUpTo(limit: number): RequestHandler {
  const reader = readers.get(limit) ?? express.raw({ type: () => true, limit, inflate: false });
  readers.set(limit, reader);
  return reader;
}

/** Reads the body as bytes. Routes check its media type before. */
export const readBytes: RequestHandler = (request, response, next) => {
  const limit: unknown = request.app.get(MOST_BODY_BYTES);
  readerUpTo(typeof limit === 'number' ? limit : MAX_TEXT_BYTES)(request, response, next);
};

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
