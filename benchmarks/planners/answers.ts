// What the children that plan hand back on standard output, read with the same care as any input.
import { z } from 'zod';
import { planSchema } from '../../src/model/plan.ts';

/** Of our own planner: the plan, when the first complete one was in hand, and the most memory of the process. */
export const ownAnswerSchema = z.strictObject({
  plan: planSchema,
  seconds: z.number(),
  firstCompleteSeconds: z.number().nullable(),
  cpuSeconds: z.number(),
  peakMb: z.number(),
});
export type OwnAnswer = z.infer<typeof ownAnswerSchema>;

/** Of CP-SAT: what it held at each mark. */
export const cpSatAnswerSchema = z.strictObject({
  isProved: z.boolean(),
  seconds: z.number(),
  cpuSeconds: z.number(),
  peakMb: z.number(),
  held: z.array(z.strictObject({ atSeconds: z.number(), plan: planSchema.nullable(), lowerBound: z.number() })),
});
export type CpSatAnswer = z.infer<typeof cpSatAnswerSchema>;
