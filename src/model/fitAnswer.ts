// The answer to `fit`: whether more fits the day, what it costs the rest, how much would fit at most and by when. One source of
// these types.
import * as z from 'zod';
import { planSchema } from './plan.ts';
import { busiestSchema } from './why.ts';
import { wouldFitSchema } from './wouldFit.ts';

const sentence = z.string().describe('The same in a sentence.');
const instant = z.string().describe('Local time with offset, as 2026-05-16T06:32:00+01:00.');
const clock = z.string().describe('Local clock time on the date of the scenario, as a scenario has it.');
const number = z.int().min(1).describe('Which order of the day with the addition, from 1.');
const product = z.string().describe('Id of the product.');
const pieces = z.int().min(1).describe('Pieces wanted.');

const ordered = { number, product, pieces, readyBy: clock };

export const addedOrderSchema = z.strictObject({
  ...ordered,
  readyAt: instant.nullable().describe('When its last tray is ready in the plan with it; null when one is left out.'),
  lateMinutes: z.int().min(0).nullable().describe('Minutes late in that plan; null when a tray is left out.'),
});

export const laterOrderSchema = z.strictObject({
  ...ordered,
  readyBefore: instant.nullable().describe('When it is ready without the addition; null when a tray is left out.'),
  readyWith: instant.nullable().describe('When it is ready with it; null when a tray is left out.'),
  laterMinutes: z.int().nullable().describe('Minutes later with it, below 0: earlier; null when a tray is left out in either.'),
  lateBefore: z.int().min(0).nullable().describe('Minutes late without it; null when a tray is left out.'),
  lateWith: z.int().min(0).nullable().describe('Minutes late with it; null when a tray is left out.'),
});

export const fitCostSchema = z
  .strictObject({
    price: z.number().describe('Price of the plan with it less that of the plan without.'),
    startMinutes: z.int().describe('Minutes by which the first hands-on work begins later; below 0: earlier.'),
    makespanMinutes: z.int().describe('Minutes by which the last tray of the day is ready later; below 0: earlier.'),
    temperatureChanges: z.int().describe('More temperature changes; below 0: fewer.'),
    lateTrayMinutes: z.int().describe('More minutes late, over all trays, those added among them.'),
    leftOutTrays: z.int().describe('More trays left out, those added among them.'),
    orders: z.array(laterOrderSchema).describe('Orders of the day without the addition that are ready at another time with it.'),
    says: z.array(z.string()).min(1).describe('The same in sentences.'),
  })
  .describe('What the addition costs the rest of the day: the two plans side by side.');

export const mostSchema = z
  .strictObject({
    ...ordered,
    mostPieces: z
      .int()
      .min(0)
      .describe('Most pieces found to fit for this order, in whole trays or as many as asked, the other orders as they are.'),
    limitPieces: z.int().min(0).nullable().describe('More than so many do not fit: proved. null: no limit was proved.'),
    proof: z
      .enum(['work', 'search'])
      .nullable()
      .describe(
        'work: one kind of place, or hands, has no time for more. search: with one tray more every way was followed until it broke a rule, the batches as they are dealt.',
      ),
    isExact: z.boolean().describe('Whether mostPieces is proved to be the most.'),
    says: sentence,
  })
  .describe('How much of an added order would fit at most.');

export const readyTimesSchema = z
  .strictObject({
    ...ordered,
    earliest: clock.nullable().describe('Earliest time found by which it can be ready, the rest on time; null: none was found.'),
    isEarliest: z.boolean().describe('Whether a minute earlier is proved not to work.'),
    latest: clock
      .nullable()
      .describe('Latest time that works: any from the earliest to the end of the day does; null: none was found.'),
    says: sentence,
  })
  .describe('By when an added order can be ready.');

export const fitReasonSchema = z.strictObject({
  rule: z.string().nullable().describe('The rule in the way; null when it is no single one.'),
  says: z.string().describe('What is in the way.'),
});

export const fitAnswerSchema = z
  .strictObject({
    fits: z
      .boolean()
      .describe('Whether every added order is whole and on time and no other becomes late or left out that was not.'),
    isProved: z
      .boolean()
      .describe('Whether that is sure. It always is when it fits, for the plan shows it; false: it was only not found to fit.'),
    says: sentence,
    added: z.array(addedOrderSchema).min(1).describe('The orders added.'),
    base: planSchema.describe('The plan of the day without the addition.'),
    with: planSchema.describe('The plan of the day with it; it began from base.'),
    cost: fitCostSchema,
    busiest: busiestSchema.describe('The busiest place or person of the plan with it, and when it is full.'),
    most: z.array(mostSchema).describe('One for each added order there was time for.'),
    readyTimes: z.array(readyTimesSchema).describe('One for each added order there was time for.'),
    reasons: z.array(fitReasonSchema).describe('Why it does not fit; empty when it does.'),
    wouldFitIf: wouldFitSchema.nullable().describe('What would make it fit; null when it fits.'),
    notReached: z.array(z.string()).describe('Questions there was no time for, in words.'),
  })
  .describe('Whether more fits a day.');

export type AddedOrder = z.infer<typeof addedOrderSchema>;
export type LaterOrder = z.infer<typeof laterOrderSchema>;
export type FitCost = z.infer<typeof fitCostSchema>;
export type Most = z.infer<typeof mostSchema>;
export type ReadyTimes = z.infer<typeof readyTimesSchema>;
export type FitReason = z.infer<typeof fitReasonSchema>;
export type FitAnswer = z.infer<typeof fitAnswerSchema>;
