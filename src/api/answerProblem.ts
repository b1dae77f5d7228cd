// Last in the app: tells whatever was thrown as application/problem+json. Faults of ours are reported and told without detail.
import type { ErrorRequestHandler, Request } from 'express';
import { ClientGone } from './goneSignal.ts';
import { Problem } from './problem.ts';
import { faultOf, type Report } from './telling/report.ts';

/** What the reader of bodies throws: errors with a status, marked as fit to be shown. */
function statusShown(error: unknown): number | undefined {
  if (typeof error !== 'object' || error === null || !('status' in error) || !('expose' in error)) return undefined;
  return error.expose === true && typeof error.status === 'number' ? error.status : undefined;
}

function limitOf(error: unknown): unknown {
  return typeof error === 'object' && error !== null && 'limit' in error ? error.limit : undefined;
}

function tooLarge(limit: unknown): Problem {
  const says = typeof limit === 'number' ? `The body is larger than ${limit / 1000} kB.` : 'The body is too large.';
  const error = { code: 'TOO_LARGE', path: '', says, doThis: 'Leave out what the day does not need.' };
  return new Problem(413, says, { errors: [error] });
}

function problemOf(error: unknown): Problem | undefined {
  if (error instanceof Problem) return error;
  // Of an address with a percent sign that stands for nothing.
  if (error instanceof URIError) return new Problem(400, 'The address holds a percent sign that stands for no letter.');
  const status = statusShown(error);
  if (status === 413) return tooLarge(limitOf(error));
  if (status === 415) return new Problem(415, 'Send the body as it is, without Content-Encoding.');
  if (status !== undefined && status < 500) return new Problem(400, 'The body did not arrive as its headers say.');
  return undefined;
}

/** Which occurrence it was, as the log calls it; the id of a request is a UUID (RFC 9562) of requestLog.ts. */
function instanceOf({ id }: Request): { readonly instance?: string } {
  return typeof id === 'string' ? { instance: `urn:uuid:${id}` } : {};
}

export function answerProblem(report: Report): ErrorRequestHandler {
  return (error: unknown, request, response, _next) => {
    if (error instanceof ClientGone) return;
    const known = problemOf(error);
    if (known === undefined) report(error, faultOf(request));
    const problem = known ?? new Problem(500, 'This is a fault of ovenward, not of your request.');
    if (response.headersSent) {
      // Half an answer must not look like a whole one.
      response.destroy();
      return;
    }
    const body = { ...problem.body(), ...instanceOf(request) };
    response.status(problem.status).set(problem.headers).type('application/problem+json').json(body);
  };
}
