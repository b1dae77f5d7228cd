// The query of a request for work: how long to search, how many rounds, which seed. Checked like every input.
import * as z from 'zod';
import { schemaErrors } from '../read/schemaErrors.ts';
import type { WorkLimits } from './jobs/work.ts';
import type { ApiLimits } from './parts.ts';
import { Problem } from './problem.ts';

const MAX_WHOLE = 2 ** 31 - 1;

type Seconds = Pick<ApiLimits, 'mostSeconds' | 'usualSeconds'>;

/** One level deeper than the query, so that sentences and paths name it: /query/seconds. */
function schemaUpTo(mostSeconds: number) {
  return z.strictObject({
    query: z.strictObject({
      seconds: z.number().min(0.1).max(mostSeconds).optional().describe('Seconds of search at most, both ends included.'),
      effort: z.int().min(1).max(MAX_WHOLE).optional().describe('Rounds of search at most.'),
      seed: z.int().min(0).max(MAX_WHOLE).optional().describe('Seed of the search. Default 1.'),
    }),
  });
}

/** Kept: to make a schema takes longer than to read with it. A service has one limit. */
const schemas = new Map<number, ReturnType<typeof schemaUpTo>>();

function askedSchema(mostSeconds: number): ReturnType<typeof schemaUpTo> {
  const schema = schemas.get(mostSeconds) ?? schemaUpTo(mostSeconds);
  schemas.set(mostSeconds, schema);
  return schema;
}

/** Everything in a query is text; what looks like a number is read as one. */
function numberIn(text: unknown): unknown {
  return typeof text === 'string' && /^\d{1,10}(\.\d{1,10})?$/.test(text) ? Number(text) : text;
}

export function planQuery(query: Readonly<Record<string, unknown>>, { mostSeconds, usualSeconds }: Seconds): WorkLimits {
  const asked = { query: Object.fromEntries(Object.entries(query).map(([key, text]) => [key, numberIn(text)])) };
  const schema = askedSchema(mostSeconds);
  const read = schema.safeParse(asked);
  if (!read.success) {
    const errors = schemaErrors(read.error.issues, schema, asked);
    throw new Problem(400, 'The query of the address cannot be used.', { errors });
  }
  const { seconds, effort, seed } = read.data.query;
  return {
    // With an effort alone the clock is not to decide, as far as the service allows.
    seconds: seconds ?? (effort === undefined ? Math.min(usualSeconds, mostSeconds) : mostSeconds),
    ...(effort === undefined ? {} : { effort }),
    ...(seed === undefined ? {} : { seed }),
  };
}
