// Lets in who shows the token (RFC 6750, Jones and Hardt, 2012), and the two questions whether the service is well. Used by createApp.ts
// when a token is set.
import { createHash, timingSafeEqual } from 'node:crypto';
import type { RequestHandler } from 'express';
import { Problem } from '../problem.ts';

/** Asked by what starts and watches services, which know no tokens; their answers say nothing of the bakery. */
const OPEN_PATHS: ReadonlySet<string> = new Set(['/healthz', '/readyz']);

/** The form of a bearer token: RFC 6750, section 2.1. The name of the scheme is read in either case: RFC 9110, section 11.1. */
const BEARER = /^bearer +([\w\-.~+/]+=*)$/i;

function digest(text: string): Buffer {
  return createHash('sha256').update(text, 'utf8').digest();
}

function refused(detail: string, challenge: string): Problem {
  return new Problem(401, detail, { headers: { 'WWW-Authenticate': challenge } });
}

export function onlyWithToken(token: string): RequestHandler {
  // Digests are equally long whatever was sent, and comparing them takes as long whatever is in them.
  const expected = digest(token);
  return (request, _response, next) => {
    const sent = request.headers.authorization;
    if (OPEN_PATHS.has(request.path)) return next();
    // Who shows nothing is told how to ask, and no more (RFC 6750, section 3.1).
    if (sent === undefined) throw refused('Send the token of this service: Authorization: Bearer …', 'Bearer realm="ovenward"');
    const shown = BEARER.exec(sent)?.[1];
    if (shown === undefined || !timingSafeEqual(digest(shown), expected)) {
      throw refused('This is not the token of this service.', 'Bearer realm="ovenward", error="invalid_token"');
    }
    next();
  };
}
