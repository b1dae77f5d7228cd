// How many requests one client may send in a minute; past that, 429. Used by createApp.ts.
import type { RequestHandler } from 'express';
import { ipKeyGenerator, rateLimit } from 'express-rate-limit';
import { Problem } from '../problem.ts';

const MINUTE_MS = 60_000;

/**
 * A client is an address, of IPv6 a network of 56 bits, as one household or one attacker has. What stands in front of the service is one
 * client: headers that say whom it speaks for can be written by anybody, so they are not believed.
 */
export function rates(perMinute: number): RequestHandler {
  return rateLimit({
    windowMs: MINUTE_MS,
    limit: perMinute,
    // RateLimit and RateLimit-Policy of draft-ietf-httpapi-ratelimit-headers-08.
    standardHeaders: 'draft-8',
    legacyHeaders: false,
    // What watches the service must hear from it when others ask too much.
    skip: ({ path }) => path === '/healthz',
    keyGenerator: ({ ip }) => ipKeyGenerator(ip ?? ''),
    // Its checks write to the console of what is right here: X-Forwarded-For is left unread on purpose.
    validate: false,
    // The package sets Retry-After before it calls this.
    handler: (_request, _response, next) =>
      next(new Problem(429, `More than ${perMinute} requests within a minute came from your address. Ask again later.`)),
  });
}
