// GET /readyz: whether requests can be served: the store can be read and the service does not stop.
import type { Request, RequestHandler } from 'express';
import { wantedType } from './mediaType.ts';
import type { ApiParts } from './parts.ts';
import { Problem } from './problem.ts';
import { faultOf } from './telling/report.ts';

async function canRead({ store, report }: ApiParts, request: Request): Promise<boolean> {
  try {
    return await store.isReady();
  } catch (fault) {
    report(fault, faultOf(request));
    return false;
  }
}

export function readiness(parts: ApiParts): RequestHandler {
  return async (request, response) => {
    wantedType(request, ['application/json']);
    if (parts.jobs.isClosing) throw new Problem(503, 'The service is stopping.', { headers: { 'Retry-After': '10' } });
    if (!(await canRead(parts, request)))
      throw new Problem(503, 'The store cannot be read.', { headers: { 'Retry-After': '10' } });
    response.json({ isReady: true });
  };
}
