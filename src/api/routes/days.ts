// /v1/days: the plan posted for a day, as everybody in the room fetches it, and what has happened on the day. Mounted by createApp.ts.
import { type Request, type RequestHandler, type Response, Router } from 'express';
import type { PostedEntry, PostedRecord } from '../../store/store.ts';
import { readBytes } from '../bodyText.ts';
import { bodyType, wantedType } from '../mediaType.ts';
import { only } from '../only.ts';
import type { ApiParts } from '../parts.ts';
import { Problem } from '../problem.ts';
import { askerOf } from './asker.ts';
import { happenedRoutes } from './happenedRoutes.ts';
import { pageIn } from './pageIn.ts';
import { dateIn, revisionIn } from './pathParts.ts';
import { planToPost } from './planToPost.ts';
import { POSTED_FORMS, POSTED_JSON, type PostedForm, postedJson } from './postedForms.ts';
import { isConditional, mayChange, refused, sendTagged, tagOf } from './preconditions.ts';

const JSON_ONLY = ['application/json'] as const;

/** A drawing has styles of its own and nothing else: no script, nothing fetched, no frame around it. */
const DRAWING_POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

function entryOf({ date, revision, postedAt, timeZone }: PostedRecord): PostedEntry {
  return { date, revision, postedAt, timeZone };
}

/** RFC 8288 (Nottingham, 2017): the pages before and after. */
function linksTo(address: string, page: number, pages: number): readonly string[] {
  const to = (other: number, rel: string): readonly string[] =>
    other >= 1 && other <= pages ? [`<${address}?page=${other}>; rel="${rel}"`] : [];
  return [...to(page - 1, 'prev'), ...to(page + 1, 'next')];
}

async function sendForm(
  request: Request,
  response: Response,
  form: PostedForm,
  posted: PostedRecord,
  { jobs }: ApiParts,
): Promise<void> {
  wantedType(request, [form.mediaType]);
  const page = form.hasPages ? pageIn(request) : 1;
  const text = await form.text(posted, page, jobs, askerOf(response));
  const address = `/v1/days/${posted.date}/posted${form.suffix}`;
  const links = form.hasPages ? linksTo(address, page, posted.pages.length) : [];
  response.set('Content-Location', page === 1 ? address : `${address}?page=${page}`);
  if (links.length > 0) response.set('Link', links.join(', '));
  if (form.mediaType === 'image/svg+xml') response.set('Content-Security-Policy', DRAWING_POLICY);
  response.type(`${form.mediaType}; charset=utf-8`);
  sendTagged(request, response, text);
}

function get(form: PostedForm, parts: ApiParts): RequestHandler {
  return async (request, response) => {
    const date = await dateIn(request, parts);
    const posted = await parts.store.posted(date);
    if (posted === null) throw new Problem(404, `Nothing is posted for ${date}.`);
    await sendForm(request, response, form, posted, parts);
  };
}

function put(parts: ApiParts): RequestHandler {
  return async (request, response) => {
    const date = await dateIn(request, parts);
    const before = await parts.store.posted(date);
    mayChange(request, before === null ? [] : [tagOf(postedJson(before))]);
    const toPost = await planToPost(request, date, parts, askerOf(response));
    const record = { date, postedAt: parts.instant(), ...toPost };
    const posted = await parts.store.post(record, isConditional(request) ? (before?.revision ?? 0) : undefined);
    if (posted === null) throw refused();
    // RFC 9110, section 9.3.4: no tag in the answer, since what is kept is not what was sent.
    response.status(posted.revision === 1 ? 201 : 200).json(entryOf(posted));
  };
}

const refuseEarly: RequestHandler = (request, _response, next) => {
  wantedType(request, JSON_ONLY);
  bodyType(request, JSON_ONLY);
  next();
};

function history(parts: ApiParts): RequestHandler {
  return async (request, response) => {
    wantedType(request, JSON_ONLY);
    const date = await dateIn(request, parts);
    const revisions = await parts.store.postedHistory(date);
    if (revisions.length === 0) throw new Problem(404, `Nothing is posted for ${date}.`);
    response.type('application/json');
    sendTagged(request, response, JSON.stringify({ date, revisions }));
  };
}

function oneOfHistory(parts: ApiParts): RequestHandler {
  return async (request, response) => {
    wantedType(request, JSON_ONLY);
    const date = await dateIn(request, parts);
    const posted = await parts.store.posted(date, revisionIn(request));
    if (posted === null) throw new Problem(404, `Nothing of that revision was posted for ${date}.`);
    response.type('application/json');
    sendTagged(request, response, postedJson(posted));
  };
}

export function dayRoutes(parts: ApiParts): Router {
  const router = Router({ caseSensitive: true });
  for (const form of POSTED_FORMS.filter(({ suffix }) => suffix !== ''))
    router.route(`/:date/posted${form.suffix}`).get(get(form, parts)).all(only('GET, HEAD'));
  router.route('/:date/posted').get(get(POSTED_JSON, parts)).put(refuseEarly, readBytes, put(parts)).all(only('GET, HEAD, PUT'));
  router.route('/:date/posted/history').get(history(parts)).all(only('GET, HEAD'));
  router.route('/:date/posted/history/:revision').get(oneOfHistory(parts)).all(only('GET, HEAD'));
  happenedRoutes(router, parts);
  return router;
}
