// The paths of scenarios: kept under names, each with its history; and plans of them.
import type { Content, Operation, Paths } from '../openapiShape.ts';
import { problems } from '../problemAnswers.ts';
import { headerRefs, parameterRefs, schemaRef } from '../refer.ts';
import { fetched, json, put } from './keeping.ts';
import { SCENARIO_BODY } from './scenarioBody.ts';
import { ASKING, accepted, LIST_FORM, OVEN_CALENDAR_FORM, SHEET_FORM } from './workPaths.ts';

const TAG = 'Scenarios';

const TEXTS: Content = {
  'application/json': { schema: schemaRef('Scenario') },
  'application/yaml': { schema: { type: 'string', description: 'As it was sent.' } },
};

const list: Operation = {
  operationId: 'scenarios',
  tags: [TAG],
  summary: 'List the scenarios that are kept',
  parameters: parameterRefs('If-Match', 'If-None-Match'),
  responses: fetched('The last revision of each, by name.', json('ScenarioList')),
};

const fetch: Operation = {
  operationId: 'scenario',
  tags: [TAG],
  summary: 'Fetch a scenario',
  description: 'As it was sent; one that was sent as YAML also as JSON.',
  parameters: parameterRefs('ScenarioName', 'If-Match', 'If-None-Match'),
  responses: fetched('The last revision.', TEXTS),
};

const keep: Operation = {
  operationId: 'scenarioPut',
  tags: [TAG],
  summary: 'Keep a scenario',
  description:
    'One with errors is not kept. With `If-Match` it replaces only what you have seen, with `If-None-Match: *` nothing.',
  parameters: parameterRefs('ScenarioName', 'If-Match', 'If-None-Match'),
  requestBody: SCENARIO_BODY,
  responses: put('ScenarioEntry', headerRefs('ETag')),
};

const history: Operation = {
  operationId: 'scenarioHistory',
  tags: [TAG],
  summary: 'List the revisions of a scenario',
  parameters: parameterRefs('ScenarioName', 'If-Match', 'If-None-Match'),
  responses: fetched('All revisions, the newest first.', json('ScenarioHistory')),
};

const revision: Operation = {
  operationId: 'scenarioRevision',
  tags: [TAG],
  summary: 'Fetch a scenario as it was',
  parameters: parameterRefs('ScenarioName', 'Revision', 'If-Match', 'If-None-Match'),
  responses: fetched('That revision.', TEXTS),
};

const plan: Operation = {
  operationId: 'scenarioPlan',
  tags: [TAG],
  summary: 'Ask for a plan of a scenario that is kept',
  description: 'Of its last revision. Then as any plan: the Location is below /v1/plans.',
  parameters: [...parameterRefs('ScenarioName'), ...ASKING],
  responses: {
    ...accepted({ id: 'plan', work: 'PlanWork', forms: [SHEET_FORM, OVEN_CALENDAR_FORM, LIST_FORM] }),
    ...problems(400, 404, 406, 409, 422, 503),
  },
};

export const SCENARIO_PATHS: Paths = {
  '/v1/scenarios': { get: list },
  '/v1/scenarios/{name}': { get: fetch, put: keep },
  '/v1/scenarios/{name}/history': { get: history },
  '/v1/scenarios/{name}/history/{revision}': { get: revision },
  '/v1/scenarios/{name}/plans': { post: plan },
};
