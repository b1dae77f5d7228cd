// /v1/scenarios: scenarios kept under names, each with its history, and plans of them. Mounted by createApp.ts.
import { type Request, type RequestHandler, type Response, Router } from 'express';
import type { ScenarioRecord } from '../../store/store.ts';
import { bodyText, readBytes } from '../bodyText.ts';
import type { Asker } from '../light/lightLine.ts';
import { bodyType, wantedType } from '../mediaType.ts';
import { only } from '../only.ts';
import type { ApiParts } from '../parts.ts';
import { Problem } from '../problem.ts';
import { askerOf } from './asker.ts';
import { revisionIn, scenarioNameIn } from './pathParts.ts';
import { isConditional, mayChange, refused, sendTagged, tagOf } from './preconditions.ts';
import { scenarioPlans } from './scenarioPlans.ts';

const READS = ['application/json', 'application/yaml'] as const;
const JSON_TYPE = 'application/json';

/** The revision in front: the same text again much later is another revision. A form of its own has a tag of its own. */
function sentTag({ revision, text }: ScenarioRecord): string {
  return tagOf(`${revision} as sent\n${text}`);
}

function jsonTag({ revision, text }: ScenarioRecord): string {
  return tagOf(`${revision} as JSON\n${text}`);
}

/** Tags of all that can be fetched of it. */
function tagsOf(record: ScenarioRecord | null): readonly string[] {
  if (record === null) return [];
  return record.mediaType === JSON_TYPE ? [sentTag(record)] : [sentTag(record), jsonTag(record)];
}

function sendJson(request: Request, response: Response, value: unknown): void {
  wantedType(request, [JSON_TYPE]);
  response.type(JSON_TYPE);
  sendTagged(request, response, JSON.stringify(value));
}

/** As it was sent, or as JSON, in which what its text leaves to defaults is filled in. */
async function sendScenario(request: Request, response: Response, record: ScenarioRecord, { jobs }: ApiParts): Promise<void> {
  response.vary('Accept');
  const wanted =
    record.mediaType === JSON_TYPE ? wantedType(request, [JSON_TYPE]) : wantedType(request, [record.mediaType, JSON_TYPE]);
  response.type(wanted);
  if (wanted === record.mediaType) {
    sendTagged(request, response, record.text, sentTag(record));
    return;
  }
  const given = { text: record.text, isJson: false, name: 'The file' };
  sendTagged(request, response, await jobs.light('scenario', given, askerOf(response)), jsonTag(record));
}

function get(parts: ApiParts): RequestHandler {
  return async (request, response) => {
    const name = scenarioNameIn(request);
    const { revision } = request.params;
    const record = await parts.store.scenario(name, revision === undefined ? undefined : revisionIn(request));
    if (record === null)
      throw new Problem(404, `There is no scenario ${name}${revision === undefined ? '' : ' of that revision'}.`);
    await sendScenario(request, response, record, parts);
  };
}

/** Throws what is wrong with it. */
async function checkBody(request: Request, text: string, { jobs }: ApiParts, asker: Asker): Promise<void> {
  await jobs.light('scenario', { text, isJson: bodyType(request, READS) === JSON_TYPE, name: 'The body' }, asker);
}

function put(parts: ApiParts): RequestHandler {
  return async (request, response) => {
    const name = scenarioNameIn(request);
    const before = await parts.store.scenario(name);
    // RFC 9110, section 13.2.1: conditions are asked before what the body says.
    mayChange(request, tagsOf(before));
    const text = bodyText(request);
    await checkBody(request, text, parts, askerOf(response));
    const record = { name, savedAt: parts.instant(), mediaType: bodyType(request, READS), text };
    const saved = await parts.store.saveScenario(record, isConditional(request) ? (before?.revision ?? 0) : undefined);
    // Somebody else was faster between the question and the writing.
    if (saved === null) throw refused();
    const { text: _text, ...entry } = saved;
    // RFC 9110, section 9.3.4: the tag of what was sent, since it is kept as it was sent.
    response
      .status(saved.revision === 1 && before === null ? 201 : 200)
      .set('ETag', sentTag(saved))
      .json(entry);
  };
}

const refuseEarly: RequestHandler = (request, _response, next) => {
  scenarioNameIn(request);
  wantedType(request, [JSON_TYPE]);
  bodyType(request, READS);
  next();
};

function list(parts: ApiParts): RequestHandler {
  return async (request, response) => sendJson(request, response, { scenarios: await parts.store.scenarios() });
}

function history(parts: ApiParts): RequestHandler {
  return async (request, response) => {
    const name = scenarioNameIn(request);
    const revisions = await parts.store.scenarioHistory(name);
    if (revisions.length === 0) throw new Problem(404, `There is no scenario ${name}.`);
    sendJson(request, response, { name, revisions });
  };
}

export function scenarioRoutes(parts: ApiParts): Router {
  const router = Router({ caseSensitive: true });
  router.route('/').get(list(parts)).all(only('GET, HEAD'));
  router.route('/:name').get(get(parts)).put(refuseEarly, readBytes, put(parts)).all(only('GET, HEAD, PUT'));
  router.route('/:name/history').get(history(parts)).all(only('GET, HEAD'));
  router.route('/:name/history/:revision').get(get(parts)).all(only('GET, HEAD'));
  router.use('/:name/plans', scenarioPlans(parts));
  return router;
}
