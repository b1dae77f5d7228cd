// GET /healthz: that a tiny day can be planned, and how busy the service is.
import type { RequestHandler } from 'express';
import { wantedType } from './mediaType.ts';
import type { ApiParts } from './parts.ts';
import { Problem } from './problem.ts';

/** Milliseconds within which a thread is to have planned a day of one tray. */
const WELL_WITHIN_MS = 5_000;

export function health({ jobs, version }: ApiParts): RequestHandler {
  return async (request, response) => {
    wantedType(request, ['application/json']);
    if (!(await jobs.isWell(WELL_WITHIN_MS)))
      throw new Problem(503, 'A day of one tray could not be planned.', { headers: { 'Retry-After': '10' } });
    response.json({ version, running: jobs.running, waiting: jobs.waiting });
  };
}
