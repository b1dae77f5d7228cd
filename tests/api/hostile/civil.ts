// What an answer to anybody must be like, however hostile the request was.
import { wrongInMarkup } from './markup.ts';
import type { RawAnswer, RawRequest } from './rawRequest.ts';

/** 417 and 431 are Node's own, as is 408, for what never gets as far as the app. */
const STATUSES = [200, 201, 202, 204, 304, 400, 401, 404, 405, 406, 408, 409, 412, 413, 415, 417, 421, 422, 428, 429, 431, 503];

const STACK = /\n\s+at \S|node_modules|\.(ts|js|mjs):\d/;
const NEWLINE_SMUGGLED = 'x-injected';

function wrongInProblem({ status, headers, text }: RawAnswer): readonly string[] {
  if (!(headers['content-type'] ?? '').startsWith('application/problem+json')) return ['an error that is no problem document'];
  const problem: unknown = JSON.parse(text);
  if (typeof problem !== 'object' || problem === null || !('status' in problem)) return ['a problem without its status'];
  return problem.status === status ? [] : ['a problem with another status than its answer'];
}

/** Answers of the app itself name their request; what Node answers before it has no body. */
function wrongInOurs({ bytes }: RawRequest, answer: RawAnswer): readonly string[] {
  const { status, headers, text } = answer;
  const type = headers['content-type'] ?? '';
  const isHead = bytes.subarray(0, 5).toString('latin1') === 'HEAD ';
  const isMarkup = type.startsWith('image/svg') || type.startsWith('text/html');
  return [
    ...(headers['x-content-type-options'] === 'nosniff' ? [] : ['no nosniff']),
    ...((headers['content-security-policy'] ?? '').includes("default-src 'none'") ? [] : ['no strict policy']),
    ...(status >= 400 && !isHead ? wrongInProblem(answer) : []),
    ...(isMarkup && !isHead ? wrongInMarkup(text) : []),
  ];
}

/** What is wrong with an answer; empty when nothing is. */
export function uncivil(request: RawRequest, answer: RawAnswer): readonly string[] {
  const { status, headers, text, count } = answer;
  const isLeft = request.mayEnd === true || request.leaveAfterMs !== undefined;
  if (answer.isStuck === true) return [`no end of the answer, status ${status}`];
  if (status === 0) return isLeft ? [] : ['no answer'];
  const isOurs = headers['x-request-id'] !== undefined;
  return [
    ...(STATUSES.includes(status) ? [] : [`status ${status}`]),
    // A calendar folds its lines, and a line may go on with "at".
    ...(STACK.test(text.replaceAll('\r\n ', '')) ? ['a stack'] : []),
    ...(NEWLINE_SMUGGLED in headers ? ['a header of the request became one of the answer'] : []),
    ...(request.isOne === true && count > 1 ? [`${count} answers to one request`] : []),
    ...(isOurs && request.leaveAfterMs === undefined ? wrongInOurs(request, answer) : []),
    ...(!isOurs && text !== '' ? ['a body from before the app'] : []),
  ];
}
