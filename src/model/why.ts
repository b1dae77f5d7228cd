// The answer to `why`: what is in the way of late and left-out trays, which place or person is full when, why no plan is
// cheaper, and which orders and limits clash. One source of these types.
import { z } from 'zod';
import { PLACE_KINDS } from './plan.ts';

const minute = z.int().describe('Whole minutes from the start of the day.');
const sentence = z.string().describe('The same in a sentence.');
const span = z.strictObject({ start: minute, end: minute.describe('Excluded.') });

export const RESOURCE_KINDS = [...PLACE_KINDS, 'person'] as const;
const resourceKind = z.enum(RESOURCE_KINDS).describe('What kind of place, or a person.');
const resourceId = z
  .string()
  .describe('Id of the place as plans name it (oven/deck; "bench"; "cooling-rack"), or of the person.');

export const resourceUseSchema = z
  .strictObject({
    kind: resourceKind,
    id: resourceId,
    name: z.string().describe('What people call it.'),
    room: z.int().min(0).describe('How many it takes at once; a person and a bowl take one.'),
    firstUse: minute.nullable().describe('Minute of its first use; null when it is never used.'),
    lastUse: minute.nullable().describe('Minute at which its last use ends; null when it is never used.'),
    usedMinutes: z.int().min(0).describe('Minutes in use, added up over its places.'),
    openMinutes: z
      .int()
      .min(0)
      .describe(
        'Minutes it could have been in use between first and last use, added up over its places; of a person less breaks.',
      ),
    share: z.number().min(0).max(1).describe('usedMinutes / openMinutes, bounds included; 0 when it is never used.'),
    full: z.array(span).describe('Spans in which no place of it is free, in order.'),
    fullMinutes: z.int().min(0).describe('Minutes in which it is full.'),
    says: sentence,
  })
  .describe('How one place or person is used by a plan.');

export const busiestSchema = z
  .strictObject({
    resources: z.array(resourceUseSchema).describe('Every place with limited room and every person, busiest first.'),
    busiest: z
      .strictObject({ kind: resourceKind, id: resourceId })
      .nullable()
      .describe(
        'The one with the largest share, of those whose time from first to last use is at least a third of the plan; null when nothing is limited.',
      ),
    says: sentence,
  })
  .describe('The busiest place or person by the clock.');

export type ResourceKind = (typeof RESOURCE_KINDS)[number];
export type ResourceUse = z.infer<typeof resourceUseSchema>;
export type Busiest = z.infer<typeof busiestSchema>;
