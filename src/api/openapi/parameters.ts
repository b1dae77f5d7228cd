// Parameters several operations take: parts of the address, of the query, and headers. Shared components of the document.
import * as z from 'zod';
import { dayPathSchema, scenarioNameSchema } from '../routes/bodies.ts';
import type { Parameter, Schema } from './openapiShape.ts';

function jsonSchema(schema: z.ZodType): Schema {
  const { $schema: _dialect, ...rest } = z.toJSONSchema(schema, { io: 'input', target: 'draft-2020-12' });
  return rest;
}

const MAX_WHOLE = 2 ** 31 - 1;

function inPath(name: string, description: string, schema: Schema, example: unknown): Parameter {
  return { name, in: 'path', required: true, description, schema, example };
}

function inQuery(name: string, description: string, schema: Schema): Parameter {
  return { name, in: 'query', description, schema };
}

function inHeader(name: string, description: string, schema: Schema, example: string): Parameter {
  return { name, in: 'header', description, schema, example };
}

const ETAGS = { type: 'string', maxLength: 200 };

export const PARAMETERS = {
  WorkId: inPath('id', 'Id of the work, from its Location.', { type: 'string', pattern: '^[A-Za-z0-9_-]{1,100}$' }, 'n0SuchW0rk'),
  ScenarioName: inPath('name', 'Name it is kept under.', jsonSchema(scenarioNameSchema), 'buns-alone'),
  Day: inPath('date', 'The day; today, tomorrow and yesterday are those of the bakery.', jsonSchema(dayPathSchema), '2026-04-08'),
  Revision: inPath('revision', 'Which revision, from 1.', { type: 'integer', minimum: 1, maximum: 999_999_999 }, 1),
  Page: inQuery('page', 'Which page, from 1.', { type: 'integer', minimum: 1, maximum: 9999, default: 1 }),
  Seconds: inQuery('seconds', 'Longest search, in seconds, from when its turn comes; both ends included.', {
    type: 'number',
    minimum: 0.1,
    maximum: 30,
  }),
  Effort: inQuery('effort', 'Rounds of search at most. Default: as many as the seconds allow.', {
    type: 'integer',
    minimum: 1,
    maximum: MAX_WHOLE,
  }),
  Seed: inQuery('seed', 'Seed of the search: the same scenario, seed and effort give the same plan.', {
    type: 'integer',
    minimum: 0,
    maximum: MAX_WHOLE,
    default: 1,
  }),
  Prefer: inHeader(
    'Prefer',
    'wait=n (RFC 7240, section 4.3): waits up to n seconds for the answer before it says where to find it.',
    { type: 'string', maxLength: 200 },
    'wait=5',
  ),
  'Idempotency-Key': inHeader(
    'Idempotency-Key',
    'A word of your own for this request. Sent again with the same key, the same request begins nothing new.',
    { type: 'string', pattern: '^[\\x21-\\x7e]{1,200}$' },
    'saturday-first-try',
  ),
  'If-Match': inHeader('If-Match', 'Only if the one kept has one of these ETags (RFC 9110, section 13.1.1).', ETAGS, '*'),
  'If-None-Match': inHeader(
    'If-None-Match',
    'Only if the one kept has none of these ETags (RFC 9110, section 13.1.2).',
    ETAGS,
    '"0"',
  ),
  'Last-Event-ID': inHeader(
    'Last-Event-ID',
    'Sent by browsers that connect again: what came before is not told again.',
    { type: 'string' },
    '3',
  ),
} as const satisfies Readonly<Record<string, Parameter>>;

export type ParameterName = keyof typeof PARAMETERS;
