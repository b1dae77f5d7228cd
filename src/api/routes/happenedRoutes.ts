// What has happened on a day, as people in the room tell it: kept in the order told, never changed. Part of days.ts.
import type { Request, RequestHandler, Router } from 'express';
import type { HappenedRecord } from '../../store/store.ts';
import { bodyText, readBytes } from '../bodyText.ts';
import { bodyType, wantedType } from '../mediaType.ts';
import { only } from '../only.ts';
import type { ApiParts } from '../parts.ts';
import { askerOf } from './asker.ts';
import { dateIn } from './pathParts.ts';
import { sendTagged } from './preconditions.ts';

const JSON_ONLY = ['application/json'] as const;

function toldText({ event, number, toldAt }: HappenedRecord): string {
  return `{"number":${number},"toldAt":${JSON.stringify(toldAt)},"event":${event}}`;
}

function bodyOf(date: string, told: readonly HappenedRecord[]): string {
  return `{"date":${JSON.stringify(date)},"happened":[${told.map(toldText).join(',')}]}`;
}

function tell(parts: ApiParts): RequestHandler {
  return async (request, response) => {
    const date = await dateIn(request, parts);
    const text = bodyText(request);
    const instant = parts.instant();
    const record = await parts.store.posted(date);
    const posted = record === null ? null : { scenario: record.scenario, plan: record.plan };
    const events = await parts.jobs.light('happened', { text, instant, posted }, askerOf(response));
    const told = await parts.store.tell(date, instant, events);
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
