// What would make late and left-out trays fit: single changes of a scenario, each planned anew and judged before it is said.
// One source of these types. Used by whatWouldFit and fit.
import * as z from 'zod';
import { patchOperationSchema } from './changes.ts';
import { planSchema } from './plan.ts';

export const FIT_CHANGES = [
  'start-earlier',
  'more-shelves',
  'deck-place',
  'another-person',
  'move-order',
  'drop-pieces',
] as const;

const kind = z.enum(FIT_CHANGES).describe('What kind of change.');

export const offeredChangeSchema = z
  .strictObject({
    kind,
    amount: z
      .int()
      .min(1)
      .describe(
        'How much of it, 1 or more. start-earlier: minutes. more-shelves: shelves. deck-place: trays. another-person: minutes. move-order: minutes later. drop-pieces: pieces.',
      ),
    isSmallest: z
      .boolean()
      .describe(
        'Whether it is proved that less of this kind does not do, the batches as they are dealt. false: the smallest found.',
      ),
    operations: z.array(patchOperationSchema).min(1).describe('The change as JSON Patch (RFC 6902) on the scenario.'),
    says: z.string().describe('The same in a sentence.'),
    plan: planSchema.describe('The changed day planned from scratch; the trays fit in it.'),
  })
  .describe('A change with which the trays fit.');

export const NOT_OFFERED = ['of-no-use', 'proved', 'not-found', 'not-sure', 'no-time'] as const;

export const notOfferedSchema = z
  .strictObject({
    kind,
    because: z
      .enum(NOT_OFFERED)
      .describe(
        'of-no-use: the trays or the scenario have nothing to do with it. proved: no amount does, proved. not-found: none was found. not-sure: a plan was found with it, but there was no time to plan that day from scratch. no-time: not tried to the end.',
      ),
    says: z.string().describe('The same in a sentence.'),
  })
  .describe('A kind of change that is not offered, and why.');

export const wouldFitSchema = z
  .strictObject({
    orders: z
      .array(
        z.strictObject({
          number: z.int().min(1).describe('Which order of the scenario, from 1.'),
          product: z.string().describe('Id of its product.'),
          pieces: z.int().min(1).describe('Pieces wanted.'),
          readyBy: z.string().describe('By when, as the scenario has it.'),
        }),
      )
      .min(1)
      .describe('The orders with late or left-out trays that are to fit.'),
    asItIs: planSchema
      .nullable()
      .describe('A plan of the day as it is in which the trays fit, when one was found on the way; null otherwise.'),
    changes: z.array(offeredChangeSchema).describe('At most one of each kind.'),
    notOffered: z.array(notOfferedSchema).describe('The other kinds.'),
    says: z.string().describe('In a sentence, whose trays this is about.'),
  })
  .describe('What would make the trays of some orders fit.');

export type FitChange = (typeof FIT_CHANGES)[number];
export type OfferedChange = z.infer<typeof offeredChangeSchema>;
export type NotOffered = z.infer<typeof notOfferedSchema>;
export type WouldFit = z.infer<typeof wouldFitSchema>;
