// The query of a request for a plan: how long to search, how many rounds, which seed. Checked like every input.
import { z } from 'zod';
import { schemaErrors } from '../read/schemaErrors.ts';
import { Problem } from './problem.ts';

const USUAL_SECONDS = 2;
const MOST_SECONDS = 30;
const MAX_WHOLE = 2 ** 31 - 1;

/** One level deeper than the query, so that sentences and paths name it: /query/seconds. */
const askedSchema = z.strictObject({
  query: z.strictObject({
    seconds: z.number().min(0.1).max(MOST_SECONDS).optional().describe('Seconds of search at most, both ends included.'),
    effort: z.int().min(1).max(MAX_WHOLE).optional().describe('Rounds of search at most.'),
    seed: z.int().min(0).max(MAX_WHOLE).optional().describe('Seed of the search. Default 1.'),
  }),
});

export type PlanQuery = { readonly seconds: number; readonly effort?: number; readonly seed?: number };

/** Everything in a query is text; what looks like a number is read as one. */
function numberIn(text: unknown): unknown {
  return typeof text === 'string' && /^\d{1,10}(\.\d{1,10})?$/.test(text) ? Number(text) : text;
}

/** With an effort alone the clock is not to decide, as far as the service allows. */
function usualSeconds(effort: number | undefined): number {
  return effort === undefined ? USUAL_SECONDS : MOST_SECONDS;
}

export function planQuery(query: Readonly<Record<string, unknown>>): PlanQuery {
  const asked = { query: Object.fromEntries(Object.entries(query).map(([key, text]) => [key, numberIn(text)])) };
  const read = askedSchema.safeParse(asked);
  if (!read.success) {
    const errors = schemaErrors(read.error.issues, askedSchema, asked);
    throw new Problem(400, 'The query of the address cannot be used.', { errors });
  }
  const { seconds, effort, seed } = read.data.query;
  return {
    seconds: seconds ?? usualSeconds(effort),
    ...(effort === undefined ? {} : { effort }),
    ...(seed === undefined ? {} : { seed }),
  };
}
