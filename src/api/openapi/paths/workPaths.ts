// The paths of one kind of work: ask for it, see how far it is, follow it, fetch its answer, stop it. Used for plans and the questions.
import type { Answer, Operation, Paths, RequestBody, Schema } from '../openapiShape.ts';
import { problems } from '../problemAnswers.ts';
import { headerRefs, parameterRefs, schemaRef } from '../refer.ts';
import type { SchemaName } from '../schemas.ts';

/** An answer in another form than JSON. */
export type Form = {
  /** With its dot: ".svg". */
  readonly suffix: string;
  readonly mediaType: string;
  readonly says: string;
  readonly hasPages?: true;
};

export const SHEET_FORM: Form = { suffix: '.svg', mediaType: 'image/svg+xml', says: 'Fetch a page of the sheet', hasPages: true };
export const OVEN_CALENDAR_FORM: Form = {
  suffix: '.ics',
  mediaType: 'text/calendar',
  says: 'Fetch a calendar with an alarm for everything the oven wants',
};
export const LIST_FORM: Form = { suffix: '.txt', mediaType: 'text/plain', says: 'Fetch the list of what to do' };

export type WorkPaths = {
  readonly at: string;
  /** Begins each operationId and names the group. */
  readonly id: string;
  readonly tag: string;
  /** As in "stop the plan". */
  readonly word: string;
  readonly work: SchemaName;
  readonly answer: SchemaName;
  readonly asks: { readonly summary: string; readonly description: string };
  readonly body: RequestBody;
  readonly forms: readonly Form[];
};

const TEXT = { type: 'string' };

/** What every request for work takes. */
export const ASKING = parameterRefs('Seconds', 'Effort', 'Seed', 'Prefer', 'Idempotency-Key');

function idLink(operationId: string, description: string) {
  return { operationId, description, parameters: { id: '$response.body#/id' } };
}

function links({ id }: Pick<WorkPaths, 'id'>) {
  return {
    see: idLink(`${id}See`, 'How far it is.'),
    follow: idLink(`${id}Follow`, 'Its events.'),
    stop: idLink(`${id}Stop`, 'Stop it.'),
  };
}

function workAnswer(of: Pick<WorkPaths, 'work' | 'forms'>, description: string): Answer {
  const others = of.forms.map(({ mediaType }) => [mediaType, { schema: TEXT }] as const);
  return {
    description,
    content: { 'application/json': { schema: schemaRef(of.work) }, ...Object.fromEntries(others) },
  };
}

/** The answers to a request for work, but for problems. */
export function accepted(of: Pick<WorkPaths, 'id' | 'work' | 'forms'>): Readonly<Record<string, Answer>> {
  const headers = headerRefs('Location', 'Preference-Applied');
  return {
    200: { ...workAnswer(of, 'With `Prefer: wait=n`, when it ended in time.'), headers, links: links(of) },
    202: {
      description: 'Accepted: it will be done, also when the service is started anew meanwhile.',
      headers,
      content: { 'application/json': { schema: schemaRef(of.work) } },
      links: links(of),
    },
  };
}

function asking(of: WorkPaths): Operation {
  return {
    operationId: `${of.id}Ask`,
    tags: [of.tag],
    summary: of.asks.summary,
    description: of.asks.description,
    parameters: ASKING,
    requestBody: of.body,
    responses: { ...accepted(of), ...problems(400, 406, 409, 413, 415, 422, 503) },
  };
}

const NOT_YET = problems(400, 404, 406, 422, 503);

function seeing(of: WorkPaths): Operation {
  return {
    operationId: `${of.id}See`,
    tags: [of.tag],
    summary: `See how far ${of.word} is, with the answer once it is there`,
    description:
      'As JSON always; in the other forms only once there is an answer, or a best so far. Work that failed tells why in `failure`.',
    parameters: of.forms.some(({ hasPages }) => hasPages) ? parameterRefs('WorkId', 'Page') : parameterRefs('WorkId'),
    responses: { 200: workAnswer(of, 'The state, the last news, and the answer.'), ...NOT_YET },
  };
}

function following(of: WorkPaths): Operation {
  return {
    operationId: `${of.id}Follow`,
    tags: [of.tag],
    summary: `Follow ${of.word} while it is made`,
    description:
      'Events `state` and `progress`, then `done`, each with JSON as its data; a comment now and then shows that the line still stands.',
    parameters: parameterRefs('WorkId', 'Last-Event-ID'),
    responses: {
      200: { description: 'Server-sent events, until the work has ended.', content: { 'text/event-stream': { schema: TEXT } } },
      204: { description: 'It has ended and Last-Event-ID shows that this was told: a browser stops asking.' },
      ...problems(404, 406),
    },
  };
}

function stopping(of: WorkPaths): Operation {
  return {
    operationId: `${of.id}Stop`,
    tags: [of.tag],
    summary: `Stop ${of.word} and keep the best so far`,
    parameters: parameterRefs('WorkId'),
    responses: {
      200: { description: 'Stopped, or ended before.', content: { 'application/json': { schema: schemaRef(of.work) } } },
      ...problems(404, 406),
    },
  };
}

function fetching(of: WorkPaths, { suffix, mediaType, says, hasPages }: Form, schema: Schema): Operation {
  return {
    operationId: `${of.id}Fetch${suffix.slice(1).toUpperCase()}`,
    tags: [of.tag],
    summary: says,
    parameters: hasPages === true ? parameterRefs('WorkId', 'Page') : parameterRefs('WorkId'),
    responses: {
      200: { description: 'Of the answer, or of the best so far.', content: { [mediaType]: { schema } } },
      ...NOT_YET,
    },
  };
}

const DATA_FORM: Form = { suffix: '.json', mediaType: 'application/json', says: 'Fetch the answer by itself, as JSON' };

export function workPaths(of: WorkPaths): Paths {
  const others = of.forms.map((form) => [`${of.at}/{id}${form.suffix}`, { get: fetching(of, form, TEXT) }] as const);
  return {
    [of.at]: { post: asking(of) },
    [`${of.at}/{id}`]: { get: seeing(of), delete: stopping(of) },
    [`${of.at}/{id}/events`]: { get: following(of) },
    [`${of.at}/{id}${DATA_FORM.suffix}`]: { get: fetching(of, DATA_FORM, schemaRef(of.answer)) },
    ...Object.fromEntries(others),
  };
}
