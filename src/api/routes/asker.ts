// For whom a request has light work done: its client, as long as it is there. Used by the routes.
import type { Response } from 'express';
import { goneSignal } from '../goneSignal.ts';
import type { Asker } from '../light/lightLine.ts';
import { clientOf } from './clientOf.ts';

export function askerOf(response: Response): Asker {
  return { client: clientOf(response.req), gone: goneSignal(response) };
}
