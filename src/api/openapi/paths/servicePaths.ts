// The paths that tell of the service itself: whether it is well, its figures, this document.
import type { Operation, Paths } from '../openapiShape.ts';
import { onlyProblems, problems } from '../problemAnswers.ts';
import { headerRefs, parameterRefs, schemaRef } from '../refer.ts';

const TEXT = { type: 'string' };
const TAG = 'The service';

const health: Operation = {
  operationId: 'isWell',
  tags: [TAG],
  summary: 'Ask whether the service can plan',
  description:
    'Has a day of one tray planned; 503 when that does not come about. Needs no token, and is not counted as a request.',
  security: [{}],
  responses: {
    200: { description: 'It can.', content: { 'application/json': { schema: schemaRef('Health') } } },
    ...onlyProblems(406, 421, 500, 503),
  },
};

const readiness: Operation = {
  operationId: 'isReady',
  tags: [TAG],
  summary: 'Ask whether requests can be served',
  description: 'Reads from the store; 503 when it cannot, and once the service is stopping. Needs no token.',
  security: [{}],
  responses: {
    200: { description: 'They can.', content: { 'application/json': { schema: schemaRef('Readiness') } } },
    ...onlyProblems(406, 421, 429, 500, 503),
  },
};

const figures: Operation = {
  operationId: 'metrics',
  tags: [TAG],
  summary: 'Figures for whoever watches the service',
  responses: {
    200: { description: 'In the text format of Prometheus.', content: { 'text/plain': { schema: TEXT } } },
    ...problems(),
  },
};

const unchanged = { description: 'Unchanged.', headers: headerRefs('ETag', 'Cache-Control') };

const document: Operation = {
  operationId: 'document',
  tags: [TAG],
  summary: 'This document, for programs',
  parameters: parameterRefs('If-None-Match'),
  responses: {
    200: {
      description: 'In OpenAPI 3.1.',
      headers: headerRefs('ETag', 'Cache-Control'),
      content: { 'application/json': { schema: { type: 'object' } } },
    },
    304: unchanged,
    ...problems(406),
  },
};

const page: Operation = {
  operationId: 'docs',
  tags: [TAG],
  summary: 'This document, for people',
  parameters: parameterRefs('If-None-Match'),
  responses: {
    200: {
      description: 'A page without scripts.',
      headers: headerRefs('ETag', 'Cache-Control'),
      content: { 'text/html': { schema: TEXT } },
    },
    304: unchanged,
    ...problems(406),
  },
};

export const SERVICE_PATHS: Paths = {
  '/healthz': { get: health },
  '/readyz': { get: readiness },
  '/metrics': { get: figures },
  '/openapi.json': { get: document },
  '/docs': { get: page },
};
