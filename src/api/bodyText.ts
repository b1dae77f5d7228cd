// The body of a request as text: read up to its limit, never inflated, decoded as UTF-8 or refused.
import express, { type Request, type RequestHandler } from 'express';
import { MAX_TEXT_BYTES } from '../read/limits.ts';
import { Problem } from './problem.ts';
import { Turns } from './turns.ts';

/** Setting of the app: most bytes of a body, included. Set by createApp.ts; default MAX_TEXT_BYTES. */
export const MOST_BODY_BYTES = 'most body bytes';

/** Setting of the app: the turns in which bodies are taken once they have arrived. Set by createApp.ts; without it at once. */
export const BODY_TURNS = 'body turns';

const readers = new Map<number, RequestHandler>();

function readerUpTo(limit: number): RequestHandler {
  const reader = readers.get(limit) ?? express.raw({ type: () => true, limit, inflate: false });
  readers.set(limit, reader);
  return reader;
}

/** Reads the body as bytes. Routes check its media type before. */
export const readBytes: RequestHandler = (request, response, next) => {
  const limit: unknown = request.app.get(MOST_BODY_BYTES);
  const turns: unknown = request.app.get(BODY_TURNS);
  const read = readerUpTo(typeof limit === 'number' ? limit : MAX_TEXT_BYTES);
  read(request, response, (error?: unknown) => {
    if (error === undefined && turns instanceof Turns) turns.take(next);
    else next(error);
  });
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
