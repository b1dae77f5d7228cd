// Which page of the sheet a request asks for, from 1. Used where pages are fetched one at a time.
import type { Request } from 'express';
import { Problem } from '../problem.ts';

/** `?page=2`; the first when the query does not say. */
export function pageIn({ query }: Request): number {
  const { page = '1' } = query;
  if (typeof page === 'string' && /^[1-9]\d{0,3}$/.test(page)) return Number(page);
  const says = 'This is no number of a page.';
  const error = { code: 'WRONG_TYPE', path: '/query/page', says, doThis: 'Write a whole number from 1: ?page=2.' };
  throw new Problem(400, 'The query of the address cannot be used.', { errors: [error] });
}
