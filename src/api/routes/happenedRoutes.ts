// What has happened on a day, as people in the room tell it: kept in the order told, never changed. Part of days.ts.
import type { Request, RequestHandler, Router } from 'express';
import { clockOf, minuteOfInstant } from '../../model/clock.ts';
import type { HappenedEvent } from '../../model/happened.ts';
import { planSchema } from '../../model/plan.ts';
import { scenarioSchema } from '../../model/scenario.ts';
import { readHappened } from '../../read/readHappened.ts';
import type { HappenedRecord, PostedRecord } from '../../store/store.ts';
import { readBytes } from '../bodyText.ts';
import { plainBody, shapeOf } from '../bodyValue.ts';
import { bodyType, wantedType } from '../mediaType.ts';
import { mustRead } from '../mustRead.ts';
import { only } from '../only.ts';
import type { ApiParts } from '../parts.ts';
import { happenedBodySchema } from './bodies.ts';
import { dateIn } from './pathParts.ts';
import { sendTagged } from './preconditions.ts';

const JSON_ONLY = ['application/json'] as const;

function toldText({ event, number, toldAt }: HappenedRecord): string {
  return `{"number":${number},"toldAt":${JSON.stringify(toldAt)},"event":${event}}`;
}

function bodyOf(date: string, told: readonly HappenedRecord[]): string {
  return `{"date":${JSON.stringify(date)},"happened":[${told.map(toldText).join(',')}]}`;
}

/** The minute it is on the day of a plan; told the day before or after, its first or its last. */
function minuteNow(posted: PostedRecord, instant: string): Parameters<typeof readHappened>[3] {
  const scenario = scenarioSchema.parse(JSON.parse(posted.scenario));
  const clock = clockOf(scenario);
  return Math.min(clock.minutes - 1, Math.max(scenario.underway?.now ?? 0, minuteOfInstant(clock, instant)));
}

/** Events against the plan of the day: of tasks, people and places it has, not after now. */
function fitPlan(events: readonly HappenedEvent[], posted: PostedRecord, instant: string): void {
  const scenario = scenarioSchema.parse(JSON.parse(posted.scenario));
  const plan = planSchema.parse(JSON.parse(posted.plan));
  const reading = readHappened(JSON.stringify({ happened: events }), scenario, plan, minuteNow(posted, instant));
  if (reading.ok) return;
  // Lines would be those of a text the client never wrote.
  const errors = reading.errors.map(({ code, path, says, doThis }) => ({ code, path, says, doThis }));
  mustRead({ ok: false, errors });
}

function tell(parts: ApiParts): RequestHandler {
  return async (request, response) => {
    const date = await dateIn(request, parts);
    const { happened } = shapeOf(happenedBodySchema, plainBody(request));
    const instant = parts.instant();
    const posted = await parts.store.posted(date);
    if (posted !== null) fitPlan(happened, posted, instant);
    const told = await parts.store.tell(
      date,
      instant,
      happened.map((event) => JSON.stringify(event)),
    );
    response.status(201).set('Location', `/v1/days/${date}/happened`).type('application/json').send(bodyOf(date, told));
  };
}

function list(parts: ApiParts): RequestHandler {
  return async (request, response) => {
    wantedType(request, JSON_ONLY);
    const date = await dateIn(request, parts);
    response.type('application/json');
    sendTagged(request, response, bodyOf(date, await parts.store.happened(date)));
  };
}

function refuseEarly(request: Request): void {
  wantedType(request, JSON_ONLY);
  bodyType(request, JSON_ONLY);
}

export function happenedRoutes(router: Router, parts: ApiParts): void {
  const early: RequestHandler = (request, _response, next) => {
    refuseEarly(request);
    next();
  };
  router.route('/:date/happened').get(list(parts)).post(early, readBytes, tell(parts)).all(only('GET, HEAD, POST'));
}
