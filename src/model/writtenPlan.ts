// A plan as anybody may hand it in to be judged: tasks and set points, whatever else it states, times as minutes or clock texts.
import * as z from 'zod';
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
  planUnderwaySchema,
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
  kind: z.enum(PLACE_KINDS).describe('What kind of place.'),
  id: z.string().describe('Mixer, proofer or retarder id; oven/deck; "bench"; "cooling-rack".'),
  position: z.int().min(1).default(1).describe('Place within it, counted from 1. Default 1.'),
});

function taskOf<Time extends z.ZodType<number | string>>(time: Time) {
  const handsOn = z.strictObject({
    person: z.string().describe('Id of the person.'),
    start: time,
    end: time,
    for: z.enum(HANDS_ON_KINDS).describe('What is done.'),
  });
  return z.strictObject({
    id: z.string().optional().describe('What the task is called when it is spoken of.'),
    step: stepKind.describe('Which step it is.'),
    product: z.string().optional().describe('Absent on batch steps.'),
    batch: z.string().optional().describe('Batch the step is done to, or the tray belongs to.'),
    tray: z.string().optional().describe('Absent on batch steps.'),
    start: time,
    end: time.describe('Excluded. A bake runs from bake begin to bake end; loading and unloading stand in handsOn.'),
    startsAt: z.string().optional().describe('Start as local time with offset; checked when stated.'),
    endsAt: z.string().optional().describe('End as local time with offset; checked when stated.'),
    place: writtenPlace.optional().describe('Absent when the step needs none, or the place is unlimited.'),
    handsOn: z.array(handsOn).max(100).default([]).describe('People at work on it. Default: nobody.'),
  });
}

function deckOf<Time extends z.ZodType<number | string>>(time: Time) {
  const setPoint = z
    .strictObject({
      start: time,
      end: time,
      fromC: z.number().describe('Set point in C at the start of the move.'),
      toC: z.number().describe('Set point in C at its end, held until the next move.'),
    })
    .describe('The set point moves evenly from fromC at start to toC at end.');
  return z.strictObject({
    id: z.string().describe('oven/deck.'),
    setPoints: z.array(setPoint).max(10_000).describe('Moves, in order.'),
  });
}

/** The shape of a written plan over one way of writing a time. */
function writtenPlanOf<Time extends z.ZodType<number | string>>(time: Time) {
  return z
    .strictObject({
      plan: z.literal(1).optional().describe('Version of this format.'),
      tasks: z.array(taskOf(time)).max(100_000).describe('Every step of every batch and tray that is planned.'),
      decks: z.array(deckOf(time)).max(10_000).describe('Every deck that moves its set point.'),
      scenario: planSchema.shape.scenario.optional().describe('The scenario it was made for.'),
      day: planSchema.shape.day.optional().describe('The day it was made for.'),
      stopped: z.enum(STOPPED).optional().describe('Why the search ended.'),
      holds: z.enum(HOLDS).optional().describe('Whether it holds every tray.'),
      score: scoreSchema.partial().optional().describe('Figures it states; each one stated is checked.'),
      bound: planSchema.shape.bound.optional().describe('The argument behind its lower bound.'),
      batches: z.array(planBatchSchema).optional().describe('Trays of each batch; checked when stated.'),
      orders: z.array(planOrderSchema).optional().describe('When each order is ready; checked when stated.'),
      leftOut: z.array(leftOutSchema).optional().describe('Trays it leaves out; checked when stated.'),
      bakehouse: bakehouseSchema.optional().describe('The bakehouse, for who reads the plan alone.'),
      cautions: z.array(cautionSchema).optional().describe('Cautions shown with it.'),
      underway: planUnderwaySchema.optional().describe('What has been planned anew, for who reads the plan.'),
      solver: planSchema.shape.solver.optional().describe('How it was found.'),
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
