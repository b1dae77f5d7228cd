// The paths of days: the plan posted for a day, in every form and with its history, and what has happened on the day.
import { BUNS_ALONE } from '../exampleDays.ts';
import { BUNS_PLAN } from '../examplePlan.ts';
import type { Content, Operation, Paths } from '../openapiShape.ts';
import type { ParameterName } from '../parameters.ts';
import { problems } from '../problemAnswers.ts';
import { headerRefs, parameterRefs, schemaRef } from '../refer.ts';
import { fetched, json, put } from './keeping.ts';

const TAG = 'Days';
const CONDITIONS = ['If-Match', 'If-None-Match'] as const;

function fetching(operationId: string, summary: string, content: Content, ...more: readonly ParameterName[]): Operation {
  return {
    operationId,
    tags: [TAG],
    summary,
    parameters: parameterRefs('Day', ...more, ...CONDITIONS),
    responses: fetched('The plan that was posted last.', content),
  };
}

function text(mediaType: string): Content {
  return { [mediaType]: { schema: { type: 'string' } } };
}

const post: Operation = {
  operationId: 'postedPut',
  tags: [TAG],
  summary: 'Post a plan for a day',
  description: 'A plan that breaks a rule is not posted.',
  parameters: parameterRefs('Day', ...CONDITIONS),
  requestBody: {
    description: 'The plan, by its id or whole with its scenario.',
    required: true,
    content: {
      'application/json': {
        schema: schemaRef('PostedRequest'),
        examples: { whole: { summary: 'a plan with its scenario', value: { scenario: BUNS_ALONE, plan: BUNS_PLAN } } },
      },
    },
  },
  responses: put('PostedEntry'),
};

const history: Operation = {
  operationId: 'postedHistory',
  tags: [TAG],
  summary: 'List what was posted for a day',
  parameters: parameterRefs('Day', ...CONDITIONS),
  responses: fetched('All revisions, the newest first.', json('PostedHistory')),
};

const happened: Operation = {
  operationId: 'happened',
  tags: [TAG],
  summary: 'Ask what has happened on a day',
  parameters: parameterRefs('Day', ...CONDITIONS),
  responses: fetched('What was told, in the order told; empty when nothing was.', json('HappenedList')),
};

const tell: Operation = {
  operationId: 'happenedTell',
  tags: [TAG],
  summary: 'Tell what has happened on a day',
  description: 'Where a plan is posted for the day, it is of tasks, people and places the plan has.',
  parameters: parameterRefs('Day'),
  requestBody: {
    description: 'What went otherwise than planned.',
    required: true,
    content: {
      'application/json': {
        schema: schemaRef('HappenedRequest'),
        examples: {
          mixEnded: {
            summary: 'a mix that took longer',
            value: { happened: [{ what: 'ended', task: 'bun-dough-1/mix', at: '04:15' }] },
          },
        },
      },
    },
  },
  responses: {
    201: { description: 'Kept.', headers: headerRefs('Location'), content: json('HappenedList') },
    ...problems(400, 406, 413, 415, 422, 503),
  },
};

const AT = '/v1/days/{date}/posted';

export const DAY_PATHS: Paths = {
  [AT]: { get: fetching('posted', 'Fetch the plan posted for a day', json('Posted')), put: post },
  [`${AT}.svg`]: { get: fetching('postedSheet', 'Fetch a page of the posted sheet', text('image/svg+xml'), 'Page') },
  [`${AT}.ics`]: { get: fetching('postedCalendar', 'Fetch the calendar of the oven', text('text/calendar')) },
  [`${AT}.txt`]: { get: fetching('postedList', 'Fetch the list of what to do', text('text/plain')) },
  [`${AT}/history`]: { get: history },
  [`${AT}/history/{revision}`]: { get: fetching('postedRevision', 'Fetch what was posted before', json('Posted'), 'Revision') },
  '/v1/days/{date}/happened': { get: happened, post: tell },
};
