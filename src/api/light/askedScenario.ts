// The scenario of a plan the service made, from what was kept of its request. Used by posting.ts.
import * as z from 'zod';

/** What the store holds under `asked`, as far as it is needed here. The scenario in it is read by the reader of scenarios. */
const askedSchema = z.looseObject({ ask: z.looseObject({ scenario: z.unknown() }) });

export function askedScenario(asked: string): unknown {
  return askedSchema.parse(JSON.parse(asked)).ask.scenario;
}
