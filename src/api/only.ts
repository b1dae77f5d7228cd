// 405 for every other method of an address. Used last on each route.
import type { RequestHandler } from 'express';
import { Problem } from './problem.ts';

/** `methods` as in Allow: "GET, HEAD". */
export function only(methods: string): RequestHandler {
  return (request) => {
    throw new Problem(405, `${request.method} means nothing here; ${methods} does.`, { headers: { Allow: methods } });
  };
}
