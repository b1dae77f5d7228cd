// A plan that somebody wants posted for a day, by its id or whole with its scenario: what there is to post, or everything wrong with it.
import type { Request } from 'express';
import { bodyText } from '../bodyText.ts';
import type { Asker } from '../light/lightLine.ts';
import type { ToPost } from '../light/lightWork.ts';
import { mustRead } from '../mustRead.ts';
import type { ApiParts } from '../parts.ts';
import { wrongToPost } from './postingCodes.ts';

type Made = { readonly asked: string; readonly answer: string };

/** Work of the service that has an answer; of a plan that is still being made its best so far. */
async function madeWork(id: string, { jobs }: ApiParts): Promise<Made> {
  const made = await jobs.made(id);
  if (made === null) {
    const doThis = 'Ask for one with POST /v1/plans, then post it by its id.';
    return mustRead({ ok: false, errors: wrongToPost('UNKNOWN_PLAN', 'There is no plan of this id.', doThis) });
  }
  const { asked, answer } = made;
  if (answer !== null) return { asked, answer };
  const says = 'There is no plan of this id yet.';
  return mustRead({ ok: false, errors: wrongToPost('NO_PLAN_YET', says, 'Wait until GET of it shows an answer.') });
}

/** The plan a request wants posted for a date: read, of that date, without a breach, and drawn. */
export async function planToPost(request: Request, date: string, parts: ApiParts, asker: Asker): Promise<ToPost> {
  const { jobs } = parts;
  const read = await jobs.light('posting', { text: bodyText(request), date }, asker);
  if (!('id' in read)) return read;
  return jobs.light('posting of work', { ...(await madeWork(read.id, parts)), date }, asker);
}
