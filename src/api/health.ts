// GET /healthz: that the service answers, and how busy it is.
import type { RequestHandler } from 'express';
import { wantedType } from './mediaType.ts';
import type { WaitingLine } from './waitingLine.ts';

export function health(version: string, line: WaitingLine): RequestHandler {
  return (request, response) => {
    wantedType(request, ['application/json']);
    response.json({ version, isPlanning: line.isPlanning, waiting: line.waiting });
  };
}
