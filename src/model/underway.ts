// A day under way: what has happened until now, what was planned for the rest of it, and what may no longer be used. A scenario
// that carries it asks for a plan of the rest of its day. Written by the re-planner, read by the compiler and the judge.
import * as z from 'zod';
import { handsOnSchema, placeSchema, planDeckSchema } from './plan.ts';
import { stepKind } from './steps.ts';
import { idText, wholeMinutes } from './units.ts';

const minute = z.int().min(0).max(100_000).describe('Whole minutes from the start of the day.');

export const TASK_STATES = ['ended', 'begun', 'planned'] as const;
export const KEPT = ['time', 'place', 'people'] as const;

export const underwayTaskSchema = z.strictObject({
  step: stepKind.describe('Which step it is.'),
  ordinal: z.int().min(1).max(30).default(1).describe('Which of the steps of this kind, from 1. Default 1.'),
  batch: z.string().describe('Batch the step is done to, or the tray belongs to.'),
  tray: z.string().optional().describe('Absent on batch steps.'),
  state: z
    .enum(TASK_STATES)
    .describe(
      'ended: over by now. begun: at work now, a bake from its loading on; whatever rests, proofs or cools counts as begun until the next step begins. planned: still to come.',
    ),
  start: minute.describe('When it began, or was to begin; of a bake, when the tray is on the deck.'),
  end: minute.describe('When it ended, or was to end. Excluded.'),
  place: placeSchema.optional().describe('Where it is, or was to be. Absent when the step needs no place.'),
  handsOn: z.array(handsOnSchema).max(10).default([]).describe('Who works on it, or was to. Default: nobody.'),
  moreMinutes: wholeMinutes
    .default(0)
    .describe('Minutes the step needs beyond what the scenario says, on the least and on the most. Default 0.'),
  overrunMinutes: wholeMinutes
    .default(0)
    .describe(
      'Minutes the step and the wait after it may last beyond their most, because it cannot be helped any more; on the first step of a tray also minutes it may begin later than its batch allows. Default 0.',
    ),
  keeps: z
    .array(z.enum(KEPT))
    .max(3)
    .default([])
    .describe('What of a planned step is decided and stays as it is: its time, its place, its people. Default: nothing.'),
});

export const outOfUseSchema = z.strictObject({
  kind: z.enum(['deck', 'proofer', 'retarder', 'mixer']).describe('What is out of use.'),
  id: z.string().describe('Its id; oven/deck for a deck.'),
  from: minute.describe('From when.'),
  until: minute.describe('Until when, excluded.'),
});

export const underwaySchema = z
  .strictObject({
    now: minute.describe('The minute it is: nothing but what has begun begins before it.'),
    movePrice: z
      .number()
      .min(0)
      .max(1_000_000)
      .default(2)
      .describe('Price of one planned step that begins at another minute, in another place or by other people. Default 2.'),
    batches: z
      .array(
        z.strictObject({
          id: z.string().describe('What the batch is called.'),
          dough: idText.describe('Id of its dough.'),
          trays: z
            .array(
              z.strictObject({ id: z.string().describe('What the tray is called.'), product: idText.describe('Its product.') }),
            )
            .min(1)
            .max(10_000)
            .describe('Its trays that are still wanted and still to be had.'),
        }),
      )
      .max(10_000)
      .describe('Batches as they were dealt. Trays the orders need beyond these are dealt anew.'),
    tasks: z.array(underwayTaskSchema).max(100_000).describe('Every step of these batches and their trays.'),
    decks: z
      .array(planDeckSchema)
      .max(10_000)
      .describe(
        "Moves of the decks' set points that have begun by now; one under way as it was set, to its end, though it may be changed.",
      ),
    out: z
      .array(outOfUseSchema)
      .max(1000)
      .default([])
      .describe(
        'What is out of use when. Nothing bakes on such a deck and nothing is mixed in such a bowl meanwhile; nothing new goes into such a cabinet, what is in it stays. Default: nothing.',
      ),
  })
  .describe('The day so far, when a plan is wanted for the rest of it.');

export type Underway = z.infer<typeof underwaySchema>;
export type UnderwayTask = z.infer<typeof underwayTaskSchema>;
export type OutOfUse = z.infer<typeof outOfUseSchema>;
