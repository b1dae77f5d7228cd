// Answers that are errors, one for each status, all of them problem details. Shared components of the document.

import type { HeaderName } from './answerHeaders.ts';
import type { Answer, Ref } from './openapiShape.ts';
import { headerRefs, schemaRef } from './refer.ts';

function problem(description: string, ...headers: readonly HeaderName[]): Answer {
  const told = headers.length === 0 ? {} : { headers: headerRefs(...headers) };
  return { description, ...told, content: { 'application/problem+json': { schema: schemaRef('Problem') } } };
}

const BY_STATUS = {
  400: problem(
    'The body is no JSON, no YAML, no UTF-8 or empty; or the query, a header or a part of the address cannot be used.',
  ),
  401: problem('The token is missing or wrong.', 'WWW-Authenticate'),
  404: problem('There is nothing at this address.'),
  406: problem('None of the media types in Accept is made here.'),
  409: problem('It does not go together with what was asked before, or with how things stand.'),
  412: problem('Another one stands there than If-Match or If-None-Match names.'),
  413: problem('The body is too large.'),
  415: problem('The body is of a media type or charset that is not read here.', 'Accept'),
  421: problem('The request names another host.'),
  422: problem('The body can be read, and what it says is wrong.'),
  429: problem('Too many requests in this minute.', 'Retry-After', 'RateLimit', 'RateLimit-Policy'),
  500: problem('A fault of ovenward; where the service runs, its log says more.'),
  503: problem('A line is full, or the service is stopping.', 'Retry-After'),
} as const;

export type ProblemStatusTold = keyof typeof BY_STATUS;

function nameOf(status: string | number): string {
  return `Problem${status}`;
}

/** The answers as components: Problem400 and so on. */
export const PROBLEM_ANSWERS: Readonly<Record<string, Answer>> = Object.fromEntries(
  Object.entries(BY_STATUS).map(([status, answer]) => [nameOf(status), answer]),
);

/** What any request may get: no token, another host, too many, a fault. */
const ALWAYS = [401, 421, 429, 500] as const;

/** References for an operation: those every request may get and those named. */
export function problems(...statuses: readonly ProblemStatusTold[]): Readonly<Record<string, Ref>> {
  return onlyProblems(...ALWAYS, ...statuses);
}

/** References for an operation that does not give all that others may. */
export function onlyProblems(...statuses: readonly ProblemStatusTold[]): Readonly<Record<string, Ref>> {
  const all = [...statuses].sort((one, other) => one - other);
  return Object.fromEntries(all.map((status) => [status, { $ref: `#/components/responses/${nameOf(status)}` }]));
}
