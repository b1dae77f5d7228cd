// A plan as anybody may hand it in to be judged: tasks and set points, whatever else it states, times as minutes or clock texts.
import { z } from 'zod';
import {
  bakehouseSchema,
  cautionSchema,
  HANDS_ON_KINDS,
  HOLDS,
  leftOutSchema,
  PLACE_KINDS,
  planBatchSchema,
  planOrderSchema,
  planSchema,
  STOPPED,
  scoreSchema,
} from './plan.ts';
import { stepKind } from './steps.ts';
import { clockText } from './units.ts';

const minute = z.int().min(-100_000).max(100_000).describe('Whole minutes from the start of the day.');
const minuteOrClock = z
  .union([minute, clockText])
  .describe('Whole minutes from the start of the day, or a local clock time as "05:31" or "-1d 22:00".');

const writtenPlace = z.strictObject({
  kind: z.enum(PLACE_KINDS),
  id: z.string().describe('Mixer, proofer or retarder id; oven/deck; "bench"; "cooling-rack".'),
  position: z.int().min(1).default(1).describe('Place within it, counted from 1. Default 1.'),
});

/** The shape of a written plan over one way of writing a time. */
function writtenPlanOf<Time extends z.ZodType<number | string>>(time: Time) {
  const handsOn = z.strictObject({ person: z.string(), start: time, end: time, for: z.enum(HANDS_ON_KINDS) });
  const task = z.strictObject({
    id: z.string().optional(),
    step: stepKind,
    product: z.string().optional().describe('Absent on batch steps.'),
    batch: z.string().optional().describe('Batch the step is done to, or the tray belongs to.'),
    tray: z.string().optional().describe('Absent on batch steps.'),
    start: time,
    end: time.describe('Excluded. A bake runs from bake begin to bake end; loading and unloading stand in handsOn.'),
    startsAt: z.string().optional(),
    endsAt: z.string().optional(),
    place: writtenPlace.optional().describe('Absent when the step needs none, or the place is unlimited.'),
    handsOn: z.array(handsOn).max(100).default([]).describe('People at work on it. Default: nobody.'),
  });
  const setPoint = z.strictObject({ start: time, end: time, fromC: z.number(), toC: z.number() });
  return z
    .strictObject({
      plan: z.literal(1).optional().describe('Version of this format.'),
      tasks: z.array(task).max(100_000),
      decks: z.array(z.strictObject({ id: z.string(), setPoints: z.array(setPoint).max(10_000) })).max(10_000),
      scenario: planSchema.shape.scenario.optional(),
      day: planSchema.shape.day.optional(),
      stopped: z.enum(STOPPED).optional(),
      holds: z.enum(HOLDS).optional(),
      score: scoreSchema.partial().optional().describe('Figures it states; each one stated is checked.'),
      bound: planSchema.shape.bound.optional(),
      batches: z.array(planBatchSchema).optional(),
      orders: z.array(planOrderSchema).optional(),
      leftOut: z.array(leftOutSchema).optional(),
      bakehouse: bakehouseSchema.optional(),
      cautions: z.array(cautionSchema).optional(),
      solver: planSchema.shape.solver.optional(),
    })
    .describe('A plan of anybody, to be judged: tasks and set points, and whatever else it states.');
}

/** A written plan as it stands in a file. */
export const writtenPlanInputSchema = writtenPlanOf(minuteOrClock);

/** A written plan once every time is a minute. Every Plan is one. */
export const writtenPlanSchema = writtenPlanOf(minute);

export type WrittenPlanInput = z.infer<typeof writtenPlanInputSchema>;
export type WrittenPlan = z.infer<typeof writtenPlanSchema>;
export type WrittenTask = WrittenPlan['tasks'][number];
