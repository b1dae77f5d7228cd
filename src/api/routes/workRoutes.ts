// POST, GET, DELETE and the events of one kind of work. Mounted for plans, fits, comparisons and re-plans.
import { type RequestHandler, Router } from 'express';
import type { Ask, Work } from '../jobs/work.ts';
import { wantedType } from '../mediaType.ts';
import { only } from '../only.ts';
import type { ApiParts } from '../parts.ts';
import { Problem } from '../problem.ts';
import { askWork } from './askWork.ts';
import { pageIn } from './pageIn.ts';
import { sendAnswer, sendFormat } from './sendWork.ts';
import { JSON_TYPE, wantedFormat } from './wantedFormat.ts';
import { workEvents } from './workEvents.ts';
import type { WorkKindRoutes } from './workKindRoutes.ts';

type ById = { id: string };

/** An id, and what may follow it: ".svg". */
const NAME = /^([A-Za-z0-9_-]{1,100})(\.[a-z]{1,10})?$/;

const nothing = (): Problem => new Problem(404, 'There is nothing at this address.');

function partsOf(name: string): { readonly id: string; readonly suffix: string | undefined } {
  const [, id, suffix] = NAME.exec(name) ?? [];
  if (id === undefined) throw nothing();
  return { id, suffix };
}

/** Work of this kind, or 404. */
function finder({ jobs }: ApiParts, kind: Ask['kind']): (id: string) => Promise<Work> {
  return async (id) => {
    const work = NAME.test(id) ? await jobs.find(id) : null;
    if (work === null || work.kind !== kind) throw new Problem(404, 'There is no such work here, or it is not kept any more.');
    return work;
  };
}

/** By suffix when the address has one, by Accept when it has none. */
function see(parts: ApiParts, { kind, formats }: WorkKindRoutes): RequestHandler<ById> {
  const find = finder(parts, kind);
  return async (request, response) => {
    const { id, suffix } = partsOf(request.params.id);
    if (suffix === undefined) {
      response.vary('Accept');
      const format = wantedFormat(request, formats);
      const page = pageIn(request);
      const work = await find(id);
      if (format === undefined) response.json(work);
      else await sendFormat(response, work, format, parts, page);
      return;
    }
    if (suffix === '.json') {
      wantedType(request, [JSON_TYPE]);
      sendAnswer(response, await find(id));
      return;
    }
    const format = formats.find((one) => one.suffix === suffix);
    if (format === undefined) throw nothing();
    wantedType<string>(request, [format.mediaType]);
    await sendFormat(response, await find(id), format, parts, pageIn(request));
  };
}

function stop(parts: ApiParts, { kind }: WorkKindRoutes): RequestHandler<ById> {
  const find = finder(parts, kind);
  return async (request, response) => {
    wantedType(request, [JSON_TYPE]);
    const { id, suffix } = partsOf(request.params.id);
    if (suffix !== undefined) throw new Problem(405, 'What is stopped is the work itself.', { headers: { Allow: 'GET, HEAD' } });
    const { id: found } = await find(id);
    response.json(await parts.jobs.stop(found));
  };
}

export function workRoutes(parts: ApiParts, routes: WorkKindRoutes): Router {
  const router = Router({ caseSensitive: true });
  router
    .route('/')
    .post(...askWork(parts, routes))
    .all(only('POST'));
  router
    .route('/:id/events')
    .get(workEvents(parts, finder(parts, routes.kind)))
    .all(only('GET, HEAD'));
  router
    .route('/:id')
    .get(see(parts, routes))
    .delete(stop(parts, routes))
    .all((request, ...rest) => only(request.params.id.includes('.') ? 'GET, HEAD' : 'GET, HEAD, DELETE')(request, ...rest));
  return router;
}
