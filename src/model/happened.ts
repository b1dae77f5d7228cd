// What has happened on a day that is under way, as people in the room tell it, and what is decided of the rest. Read by
// `replan`; the one source of the Happened type.
import * as z from 'zod';
import { KEPT } from './underway.ts';
import { clockText, idText, someMinutes } from './units.ts';

const task = z.string().min(1).max(200).describe('Id of the task, as the plan has it: rye-3/shape.');
const tray = z.string().min(1).max(200).describe('Id of the tray, as the plan has it: rye-3.');
const batch = z.string().min(1).max(200).describe('Id of the batch, as the plan has it: rye-leaven-1.');
const product = idText.describe('Id of the product.');
const pieces = z.int().min(1).max(1_000_000);

export const beganSchema = z.strictObject({
  what: z.literal('began').describe('A task began at another time than planned.'),
  task,
  at: clockText.describe('When it began; of a bake, when the tray was on the deck. Not after now.'),
});

export const endedSchema = z.strictObject({
  what: z.literal('ended').describe('A task ended at another time than planned.'),
  task,
  at: clockText.describe('When it ended; of a bake, when the tray came off the deck. Not after now.'),
});

export const notYetSchema = z.strictObject({
  what: z.literal('not-yet').describe('A task should have begun and has not.'),
  task,
});

export const needsMoreSchema = z.strictObject({
  what: z
    .literal('needs-more')
    .describe('A dough is slow: what it does now, or does next (bulk, rest, retard or proof), needs longer.'),
  batch: batch.optional(),
  tray: tray.optional(),
  minutes: someMinutes.describe('Minutes it needs beyond what the scenario says, on the least and on the most.'),
});

export const awaySchema = z.strictObject({
  what: z.literal('away').describe('A person is not there.'),
  person: idText.describe('Id of the person.'),
  from: clockText.describe('From when.'),
  until: clockText.optional().describe('Until when, excluded. Default: the end of the day.'),
});

export const outOfUseEventSchema = z.strictObject({
  what: z.literal('out-of-use').describe('A deck, proofer, retarder or mixer cannot be used.'),
  deck: z.string().min(1).max(130).optional().describe('oven/deck.'),
  proofer: idText.optional().describe('Id of the proofer.'),
  retarder: idText.optional().describe('Id of the retarder.'),
  mixer: idText.optional().describe('Id of the mixer.'),
  from: clockText.describe('From when.'),
  until: clockText.optional().describe('Until when, excluded. Default: the end of the day.'),
});

export const orderedSchema = z.strictObject({
  what: z.literal('ordered').describe('A new order has come in.'),
  product,
  pieces: pieces.describe('How many are wanted.'),
  readyBy: clockText.describe('By when.'),
});

export const orderChangedSchema = z.strictObject({
  what: z.literal('order-changed').describe('An order is for more or fewer pieces, or for another time.'),
  product,
  readyBy: clockText.describe('The time it was wanted by.'),
  pieces: pieces.optional().describe('How many are wanted now. Default: as many as before.'),
  newReadyBy: clockText.optional().describe('By when they are wanted now. Default: by the same time.'),
});

export const orderCancelledSchema = z.strictObject({
  what: z.literal('order-cancelled').describe('An order is no longer wanted.'),
  product,
  readyBy: clockText.describe('The time it was wanted by.'),
});

export const lostSchema = z.strictObject({
  what: z.literal('lost').describe('A tray is lost: dropped, burnt, gone to the wrong shop.'),
  tray,
});

export const eventSchema = z.discriminatedUnion('what', [
  beganSchema,
  endedSchema,
  notYetSchema,
  needsMoreSchema,
  awaySchema,
  outOfUseEventSchema,
  orderedSchema,
  orderChangedSchema,
  orderCancelledSchema,
  lostSchema,
]);

export const keepSchema = z
  .strictObject({
    task: task.optional(),
    tray: tray.optional().describe('Id of a tray: every step of it that has not begun.'),
    batch: batch.optional().describe('Id of a batch: every step of it and of its trays that has not begun.'),
    keeps: z
      .array(z.enum(KEPT))
      .min(1)
      .max(3)
      .default([...KEPT])
      .describe('What stays as planned: time, place, people. Default: all three.'),
  })
  .describe('Something that is decided and stays as it is planned.');

export const happenedSchema = z
  .strictObject({
    happened: z
      .array(eventSchema)
      .max(1000)
      .default([])
      .describe('What went otherwise than planned. Everything else is taken as done as planned. Default: nothing.'),
    keep: z.array(keepSchema).max(1000).default([]).describe('What is decided and stays as it is planned. Default: nothing.'),
    movePrice: z
      .number()
      .min(0)
      .max(1_000_000)
      .optional()
      .describe('Price of one step that is moved. Default: that of the day under way, or 2.'),
  })
  .describe('What has happened so far, and what stays as it is planned.');

export type Happened = z.infer<typeof happenedSchema>;
export type HappenedEvent = z.infer<typeof eventSchema>;
export type Keep = z.infer<typeof keepSchema>;
