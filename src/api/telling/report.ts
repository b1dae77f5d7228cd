// How a fault of ours is told: once, wherever in the service it comes up. `ovenward serve` writes it to the log.
import type { Request } from 'express';
import type { Logger } from 'pino';

/** What it happened to: `id` is of a request, as its own line of the log has it; `work` is of a piece of work. */
export type FaultOf = { readonly id?: string; readonly work?: string };

export type Report = (fault: unknown, of?: FaultOf) => void;

export function reportTo(log: Logger): Report {
  return (fault, of) => log.error({ ...of, err: fault }, 'a fault of ovenward');
}

export function faultOf({ id }: Pick<Request, 'id'>): FaultOf {
  return typeof id === 'string' ? { id } : {};
}
