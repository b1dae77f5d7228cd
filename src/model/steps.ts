// The steps of a dough (run once per batch) and of a product (run once per tray).
import * as z from 'zod';
import { spreadPercent } from './spread.ts';
import { celsiusOrRange, minutesOrRange, someMinutes, someMinutesOrRange, wholeMinutes } from './units.ts';

const waitUpTo = wholeMinutes.default(0).describe('Minutes the next step may wait after this one, at most. Default 0.');
const ownSpread = spreadPercent
  .optional()
  .describe('How far its real minutes stray, in percent of them. Absent: as the spread of the scenario has it.');

export const mixSchema = z.strictObject({
  do: z.literal('mix').describe('Which step it is.'),
  minutes: someMinutes.describe('Minutes the bowl is busy.'),
  handsOn: wholeMinutes.optional().describe('First minutes that need a person. Default: all of them.'),
  waitUpTo,
  spreadPercent: ownSpread,
});

export const foldSchema = z.strictObject({
  do: z.literal('fold').describe('Which step it is.'),
  minutes: someMinutes.describe('Minutes a bench place and a person are busy.'),
  waitUpTo,
  spreadPercent: ownSpread,
});

export const bulkSchema = z.strictObject({
  do: z.literal('bulk').describe('Which step it is.'),
  minutes: minutesOrRange.describe('Bulk fermentation: minutes, or [at least, at most].'),
  where: z
    .enum(['room', 'retarder'])
    .default('room')
    .describe('room: needs no place. retarder: one retarder place. Default room.'),
  temperatureC: celsiusOrRange.optional().describe('Temperatures a retarder may have for this step, in C. Default: any.'),
  waitUpTo,
  spreadPercent: ownSpread,
});

export const batchStepSchema = z.discriminatedUnion('do', [mixSchema, foldSchema, bulkSchema]);

const atBench = {
  minutesPerTray: someMinutes.describe('Minutes a bench place and a person are busy, for one tray.'),
  waitUpTo,
  spreadPercent: ownSpread,
};

export const divideSchema = z.strictObject({ do: z.literal('divide').describe('Which step it is.'), ...atBench });
export const shapeSchema = z.strictObject({ do: z.literal('shape').describe('Which step it is.'), ...atBench });
export const finishSchema = z.strictObject({ do: z.literal('finish').describe('Which step it is.'), ...atBench });

export const restSchema = z.strictObject({
  do: z.literal('rest').describe('Which step it is.'),
  minutes: minutesOrRange.describe('Minutes, or [at least, at most]; needs no place.'),
  waitUpTo,
  spreadPercent: ownSpread,
});

export const retardSchema = z.strictObject({
  do: z.literal('retard').describe('Which step it is.'),
  minutes: someMinutesOrRange.describe('Minutes in a retarder, or [at least, at most].'),
  temperatureC: celsiusOrRange.optional().describe('Temperatures the retarder may have, in C. Default: any.'),
  waitUpTo,
  spreadPercent: ownSpread,
});

export const proofSchema = z.strictObject({
  do: z.literal('proof').describe('Which step it is.'),
  minutes: someMinutesOrRange.describe('Minutes on a proofer shelf until loading begins, or [at least, at most].'),
  temperatureC: celsiusOrRange.optional().describe('Temperatures the proofer may have, in C. Default: any.'),
  waitUpTo,
  spreadPercent: ownSpread,
});

export const bakeSchema = z.strictObject({
  do: z.literal('bake').describe('Which step it is.'),
  minutes: someMinutesOrRange.describe('Minutes on the deck, or [at least, at most].'),
  temperatureC: celsiusOrRange.describe('Temperatures the deck may have during the whole bake, in C.'),
  load: wholeMinutes.default(0).describe('Minutes of a person that end when the bake begins. Default 0.'),
  unload: wholeMinutes.default(0).describe('Minutes of a person that begin when the bake ends. Default 0.'),
  steam: z.boolean().default(false).describe('Whether the bake needs a deck with steam. Default false.'),
  waitUpTo,
  spreadPercent: ownSpread,
});

export const coolSchema = z.strictObject({
  do: z.literal('cool').describe('Which step it is.'),
  minutes: minutesOrRange.describe('Minutes on the cooling rack, or [at least, at most].'),
  waitUpTo,
  spreadPercent: ownSpread,
});

export const trayStepSchema = z.discriminatedUnion('do', [
  divideSchema,
  shapeSchema,
  restSchema,
  retardSchema,
  proofSchema,
  bakeSchema,
  coolSchema,
  finishSchema,
]);

/** Every step a person may be unable to do; a `cannot` of people and a task's `step` use the same words. */
export const STEP_KINDS = [
  'mix',
  'fold',
  'bulk',
  'divide',
  'shape',
  'rest',
  'retard',
  'proof',
  'bake',
  'cool',
  'finish',
] as const;
export const stepKind = z.enum(STEP_KINDS);

export type StepKind = z.infer<typeof stepKind>;
export type BatchStep = z.infer<typeof batchStepSchema>;
export type TrayStep = z.infer<typeof trayStepSchema>;
export type Bake = z.infer<typeof bakeSchema>;
