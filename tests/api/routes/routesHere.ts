// The service at half past five on the morning of the small day, with a clock to set and drawings counted.
import type { ApiParts } from '../../../src/api/parts.ts';
import { type Running, runningHere } from '../running.ts';
import { inlineCrew } from './inlineCrew.ts';

export type RoutesHere = Running & {
  readonly drawn: { readonly count: number };
  /** The time now, to be set. */
  readonly clock: { instant: string };
};

export async function routesHere(over: Partial<ApiParts> = {}): Promise<RoutesHere> {
  const clock = { instant: '2026-04-08T03:30:00.000Z' };
  const crew = inlineCrew();
  const service = await runningHere({ instant: () => clock.instant, ...over }, { graceMs: 1000 }, { crew });
  return { ...service, drawn: crew.drawn, clock };
}
