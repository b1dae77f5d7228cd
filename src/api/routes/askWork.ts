// POST of work: 202 with the address where it is found; or, for those who prefer to wait, what came out of it. Used by workRoutes.ts.
import type { RequestHandler, Response } from 'express';
import { readBytes } from '../bodyText.ts';
import type { Work } from '../jobs/work.ts';
import { workAddress } from '../jobs/workAddress.ts';
import type { ApiParts } from '../parts.ts';
import { askerOf } from './asker.ts';
import { idempotencyKey } from './idempotencyKey.ts';
import { hasEnded, sendFormat } from './sendWork.ts';
import { waitWanted } from './waitWanted.ts';
import { wantedFormat } from './wantedFormat.ts';
import type { WorkKindRoutes } from './workKindRoutes.ts';

/** All that can be refused without the body is refused before it is read. */
function refuseEarly({ formats, refuseEarly: refuse }: WorkKindRoutes, { jobs }: ApiParts): RequestHandler {
  return (request, response, next) => {
    response.vary('Accept, Prefer');
    wantedFormat(request, formats);
    const key = idempotencyKey(request);
    refuse?.(request);
    // With a key it may have been let in before.
    if (key === undefined) jobs.admit();
    next();
  };
}

function accepted(response: Response, work: Work): void {
  response.status(202).location(workAddress(work.kind, work.id)).json(work);
}

/** The work when it has ended or the wait is over; null when nobody waits any more. */
async function waited(work: Work, seconds: number, gone: AbortSignal, { jobs }: ApiParts): Promise<Work | null> {
  const after = seconds === 0 ? work : await jobs.wait(work.id, seconds * 1000, gone);
  return gone.aborted ? null : (after ?? work);
}

export function askWork(parts: ApiParts, routes: WorkKindRoutes): readonly RequestHandler[] {
  const { jobs } = parts;
  const handle: RequestHandler = async (request, response) => {
    const asker = askerOf(response);
    const key = idempotencyKey(request);
    const seconds = waitWanted(request);
    const { ask, asked } = await routes.readAsk(request, asker);
    const fingerprinted = JSON.stringify({ method: request.method, path: request.originalUrl, asked });
    const added = await jobs.add(ask, asker.client, fingerprinted, key);
    const work = await waited(added, seconds ?? 0, asker.gone, parts);
    if (work === null) {
      // Without an address nobody can ever fetch it; whoever sent a key may send it again.
      if (key === undefined) jobs.abandon(added.id);
      return;
    }
    if (seconds !== null) response.set('Preference-Applied', `wait=${seconds}`);
    if (seconds === null || !hasEnded(work)) {
      accepted(response, work);
      return;
    }
    response.location(workAddress(work.kind, work.id));
    const format = wantedFormat(request, routes.formats);
    if (format === undefined) response.json(work);
    else await sendFormat(response, work, format, parts, 1);
  };
  return [refuseEarly(routes, parts), readBytes, handle];
}
