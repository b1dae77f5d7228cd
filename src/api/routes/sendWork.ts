// Answers with a piece of work: as JSON, or what came out of it in another format. Used by askWork.ts and workRoutes.ts.
import type { Response } from 'express';
import type { Work } from '../jobs/work.ts';
import type { ApiParts } from '../parts.ts';
import { Problem } from '../problem.ts';
import { askerOf } from './asker.ts';
import type { WorkFormat } from './workFormat.ts';

export function hasEnded({ state }: Work): boolean {
  return state !== 'waiting' && state !== 'running';
}

/** Why there is nothing to be written in another format. */
function noAnswer(work: Work): Problem {
  const { failure } = work;
  if (failure !== null) return new Problem(failure.errors.length > 0 ? 422 : 500, failure.says, { errors: failure.errors });
  if (hasEnded(work)) return new Problem(404, 'It was stopped before there was an answer.');
  return new Problem(404, 'There is no answer yet.', { headers: { 'Retry-After': '1' } });
}

export async function sendFormat(
  response: Response,
  work: Work,
  format: WorkFormat,
  parts: ApiParts,
  page: number,
): Promise<void> {
  if (work.answer === null) throw noAnswer(work);
  const text = await format.write(work, parts, askerOf(response), page);
  response.type(`${format.mediaType}; charset=utf-8`).send(text);
}

/** The answer by itself, as JSON. */
export function sendAnswer(response: Response, work: Work): void {
  if (work.answer === null) throw noAnswer(work);
  response.json(work.answer);
}
