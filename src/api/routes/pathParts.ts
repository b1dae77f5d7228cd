// What addresses name: scenarios, revisions, days. Checked like every input: a name can lead to no folder and to no other address.
import type { Request } from 'express';
import * as z from 'zod';
import { dateAt } from '../../model/clock.ts';
import type { InputError } from '../../model/inputError.ts';
import type { ApiParts } from '../parts.ts';
import { Problem } from '../problem.ts';
import { DAY_WORDS, scenarioNameSchema } from './bodies.ts';

function wrongAddress(error: InputError): Problem {
  return new Problem(400, 'The address cannot be used.', { errors: [error] });
}

/** The `name` in the address. */
export function scenarioNameIn(request: Request): string {
  const read = scenarioNameSchema.safeParse(request.params.name);
  if (read.success) return read.data;
  throw wrongAddress({
    code: 'BAD_ID',
    path: '/path/name',
    says: 'A scenario cannot be kept under this name.',
    doThis: 'Use 1 to 60 letters, digits, dots, dashes and underscores, the first a letter or a digit.',
  });
}

/** The `revision` in the address, from 1. */
export function revisionIn(request: Request): number {
  const text = request.params.revision;
  if (typeof text === 'string' && /^[1-9]\d{0,8}$/.test(text)) return Number(text);
  throw new Problem(404, 'Revisions are whole numbers from 1.');
}

/** Where the service works: the time zone it was started with, else that of the plan posted last, else that of this machine. */
async function timeZoneOf({ timeZone, store }: ApiParts): Promise<string> {
  if (timeZone !== undefined) return timeZone;
  const last = await store.lastPosted();
  return last?.timeZone ?? new Intl.DateTimeFormat().resolvedOptions().timeZone;
}

/** The `date` in the address, as 2026-05-16, whichever way it is named. */
export async function dateIn(request: Request, parts: ApiParts): Promise<string> {
  const text = request.params.date;
  const words: readonly unknown[] = DAY_WORDS;
  const word = words.indexOf(text);
  if (word >= 0) return dateAt(parts.instant(), await timeZoneOf(parts), word - 1);
  const read = z.iso.date().safeParse(text);
  if (read.success) return read.data;
  throw wrongAddress({
    code: 'BAD_DATE',
    path: '/path/date',
    says: 'This is no day of the calendar.',
    doThis: `Write a date as 2026-05-16, or one of ${DAY_WORDS.join(', ')}.`,
  });
}
