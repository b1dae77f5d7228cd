// POST /v1/plans: a scenario in, a plan out, as data, as the first page of the sheet, or as the list of what to do.
import type { Request, RequestHandler, Response } from 'express';
import type { Plan } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import { bodyText, readBytes } from './bodyText.ts';
import { doingList } from './doingList.ts';
import { goneSignal } from './goneSignal.ts';
import { jsonBody } from './jsonBody.ts';
import { bodyType, wantedType } from './mediaType.ts';
import { mustRead } from './mustRead.ts';
import type { ApiParts } from './parts.ts';
import { type PlanQuery, planQuery } from './planQuery.ts';
import type { WaitingLine } from './waitingLine.ts';

const BODY = 'The body';
const READS = ['application/json', 'application/yaml'] as const;
const WRITES = ['application/json', 'image/svg+xml', 'text/plain'] as const;

/** Read as text in both languages, so that every error has its line and column. */
function scenarioIn(request: Request, { readScenario }: ApiParts): Scenario {
  const text = bodyText(request);
  const reading = readScenario(text, BODY);
  if (bodyType(request, READS) === 'application/json') jsonBody(text, () => (reading.ok ? [] : reading.errors));
  return mustRead(reading);
}

function answer(response: Response, type: (typeof WRITES)[number], plan: Plan, parts: ApiParts): void {
  if (type === 'application/json') response.json(plan);
  else if (type === 'image/svg+xml') response.type('image/svg+xml; charset=utf-8').send(parts.drawPlan(plan)[0]);
  else response.type('text/plain').send(doingList(plan, parts.whatToDo(plan)));
}

function makePlan(scenario: Scenario, query: PlanQuery, parts: ApiParts, cancelled: () => boolean): Promise<Plan> {
  const { now, pause, version } = parts;
  return parts.makePlan(scenario, { ...query, now, pause, version, cancelled });
}

/** All that can be refused without the body is refused before it is read. */
function refuseEarly(): RequestHandler {
  return (request, response, next) => {
    response.vary('Accept');
    wantedType(request, WRITES);
    bodyType(request, READS);
    planQuery(request.query);
    next();
  };
}

export function plans(parts: ApiParts, line: WaitingLine): readonly RequestHandler[] {
  const handle: RequestHandler = async (request, response) => {
    const query = planQuery(request.query);
    const scenario = scenarioIn(request, parts);
    const gone = goneSignal(response);
    const plan = await line.take(query.seconds, gone, (cancelled) => makePlan(scenario, query, parts, cancelled));
    if (plan !== undefined && !gone.aborted) answer(response, wantedType(request, WRITES), plan, parts);
  };
  return [refuseEarly(), readBytes, handle];
}
