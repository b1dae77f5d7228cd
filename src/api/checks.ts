// POST /v1/checks: a scenario and a plan in, the judge's verdict out.
import type { RequestHandler } from 'express';
import { readBytes } from './bodyText.ts';
import { plainBody, shapeOf, within } from './bodyValue.ts';
import { bodyType, wantedType } from './mediaType.ts';
import { mustRead } from './mustRead.ts';
import type { ApiParts } from './parts.ts';
import { checkBodySchema } from './routes/bodies.ts';

const JSON_ONLY = ['application/json'] as const;

function refuseEarly(): RequestHandler {
  return (request, _response, next) => {
    wantedType(request, JSON_ONLY);
    bodyType(request, JSON_ONLY);
    next();
  };
}

export function checks(parts: ApiParts): readonly RequestHandler[] {
  const handle: RequestHandler = (request, response) => {
    const body = shapeOf(checkBodySchema, plainBody(request));
    const scenario = mustRead(within('scenario', parts.readScenarioValue(body.scenario)));
    const plan = mustRead(within('plan', parts.readWrittenPlan(JSON.stringify(body.plan), scenario)));
    response.json(parts.judge(scenario, plan));
  };
  return [refuseEarly(), readBytes, handle];
}
