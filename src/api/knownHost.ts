// Refuses requests that name another host: a web page whose name was bent to this machine must not reach the service.
import type { RequestHandler } from 'express';
import { isLoopback } from './loopback.ts';
import { Problem } from './problem.ts';

function isOurs(hostname: string | undefined): boolean {
  if (hostname === undefined) return false;
  return hostname.toLowerCase() === 'localhost' || isLoopback(hostname.replace(/^\[(.*)\]$/, '$1'));
}

export const knownHost: RequestHandler = (request, _response, next) => {
  if (!isOurs(request.hostname)) throw new Problem(421, 'This service answers to localhost and 127.0.0.1 only.');
  next();
};
