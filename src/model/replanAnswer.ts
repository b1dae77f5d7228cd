// The answer of `replan`: the rest of the day planned anew, what it changes, and what was taken for granted. One source of its type.
import * as z from 'zod';
import { movedTaskSchema, placeSchema, planSchema, workerSchema } from './plan.ts';
import { scenarioSchema } from './scenario.ts';

const minute = z.int().describe('Whole minutes from the start of the day.');

export const CHANGE_KINDS = ['lost', 'unwanted', 'left-out', 'added', 'moved', 'heat', 'order'] as const;

export const changeStepSchema = movedTaskSchema.extend({
  to: z
    .strictObject({
      start: minute.describe('When it begins now; of a bake, when the tray is on the deck.'),
      place: placeSchema.optional().describe('Where it is done now.'),
      people: z.array(workerSchema).describe('Who does what of it now.'),
    })
    .describe('How it is planned now.'),
});

export const changeLineSchema = z.strictObject({
  kind: z
    .enum(CHANGE_KINDS)
    .describe(
      'lost, unwanted, left-out: trays that are not baked after all. added: trays that were not planned. moved: steps at other times, in other places or by other people. heat: set points. order: an order that is late now, or no longer.',
    ),
  minute: minute.describe('When it matters: when the first of it is to be done now.'),
  says: z.string().describe('What has changed, as one calls it across the room.'),
  trays: z.array(z.string()).describe('Ids of the trays it is about.'),
  batches: z.array(z.string()).describe('Ids of the batches it is about.'),
  steps: z.array(changeStepSchema).describe('The steps that have moved.'),
});

export const replanAnswerSchema = z
  .strictObject({
    now: minute.describe('The minute it is.'),
    isUnchanged: z.boolean().describe('Whether nothing has happened and nothing is decided, so that the plan stays as it is.'),
    plan: planSchema.describe('The plan of the whole day, what has happened included.'),
    scenario: scenarioSchema.describe('The scenario it is a plan of: the day under way.'),
    changes: z.array(changeLineSchema).describe('What has changed, by when it matters.'),
    movedTasks: z.int().min(0).describe('Steps planned before that are at another time, in another place or by other people.'),
    movePrice: z.number().min(0).describe('Price of each.'),
    movesCost: z.number().min(0).describe('movedTasks times movePrice; part of the price of the plan.'),
    told: z.array(z.string()).describe('What was taken for granted about the day so far.'),
  })
  .describe('The rest of a day planned anew.');

export type ChangeLine = z.infer<typeof changeLineSchema>;
export type ChangeKind = ChangeLine['kind'];
export type ChangeStep = z.infer<typeof changeStepSchema>;
export type ReplanAnswer = z.infer<typeof replanAnswerSchema>;
