// POST /v1/checks: a scenario and a plan in, the judge's verdict out.
import type { RequestHandler } from 'express';
import { bodyText, readBytes } from './bodyText.ts';
import { bodyType, wantedType } from './mediaType.ts';
import type { ApiParts } from './parts.ts';
import { askerOf } from './routes/asker.ts';

const JSON_ONLY = ['application/json'] as const;

function refuseEarly(): RequestHandler {
  return (request, _response, next) => {
    wantedType(request, JSON_ONLY);
    bodyType(request, JSON_ONLY);
    next();
  };
}

export function checks({ jobs }: ApiParts): readonly RequestHandler[] {
  const handle: RequestHandler = async (request, response) => {
    const verdict = await jobs.light('check', { text: bodyText(request) }, askerOf(response));
    response.type('application/json').send(verdict);
  };
  return [refuseEarly(), readBytes, handle];
}
