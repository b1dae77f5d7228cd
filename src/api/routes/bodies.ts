// The outer shapes of JSON bodies: what is inside scenarios, plans, additions and changes is read by their own readers. The one source
// of these shapes for the routes and for the document of the API.
import * as z from 'zod';
import { changeSchema } from '../../model/changes.ts';
import { eventSchema, happenedSchema } from '../../model/happened.ts';
import { orderSchema } from '../../model/scenario.ts';
import { clockText, idText } from '../../model/units.ts';

const scenario = z.looseObject({}).describe('A scenario.');
const ownPlan = z.looseObject({}).describe('A plan of this scenario as ovenward made it.');

/** Name of a kept scenario in an address: it can name no folder, no other file and no other address. */
export const scenarioNameSchema = idText.describe(
  'Name of the scenario: 1 to 60 letters, digits, dots, dashes, underscores; the first a letter or a digit.',
);

export const DAY_WORDS = ['yesterday', 'today', 'tomorrow'] as const;

/** The day in an address. Whether a calendar has it is asked after its shape. */
export const dayPathSchema = z
  .union([z.iso.date(), z.enum(DAY_WORDS)])
  .describe('The day: a date as 2026-05-16, or today, tomorrow, yesterday in the time zone of the bakery.');

export const checkBodySchema = z
  .strictObject({ scenario, plan: z.looseObject({}).describe('A plan for it, by anybody.') })
  .describe('A scenario and a plan for it, to be judged.');

export const fitBodySchema = z
  .strictObject({
    scenario,
    add: z.array(orderSchema).max(10_000).optional().describe('Orders to be added, of products the day has.'),
    addition: z
      .looseObject({})
      .optional()
      .describe('Doughs, products and orders to be added, as a file for `ovenward fit` has them.'),
    plan: ownPlan.optional().describe('The plan to add to. Default: the day is planned without the addition first.'),
  })
  .describe('Does it fit: a day, and what is to be added to it by `add`, `addition` or both.');

/** Most values of a sweep; each is a day to plan. */
export const MOST_SWEPT = 50;

export const sweepSchema = z
  .strictObject({
    pointer: z
      .string()
      .max(1000)
      .describe('JSON Pointer (RFC 6901) to the number in the scenario, as /equipment/proofers/0/shelves.'),
    from: z.int().min(0).max(1_000_000).describe('The first value, included.'),
    to: z.int().min(0).max(1_000_000).describe('The last value, included where the steps reach it.'),
    step: z.int().min(1).max(1_000_000).default(1).describe('From value to value. Default 1.'),
  })
  .describe('One number set to each value of a range; at most 50 values.');

const moreOf = idText.optional().describe("Product whose trays a capacity adds. Default: the day's mix.");

export const changesBodySchema = z
  .strictObject({
    scenario,
    changes: z.array(changeSchema).min(1).max(50).describe('The changes, each made to the scenario as it is. At most 50.'),
    moreOf,
  })
  .describe('What changes would bring.');

export const sweepBodySchema = z
  .strictObject({ scenario, sweep: sweepSchema, moreOf })
  .describe('What a range of values would bring.');

export const comparisonBodySchema = z
  .union([changesBodySchema, sweepBodySchema])
  .describe('A day compared with itself: under changes, or under a range of values.');

export const replanBodySchema = z
  .strictObject({
    scenario,
    plan: ownPlan,
    now: clockText.describe('The time it is, on the clock of the day: "05:40".'),
    happened: happenedSchema.optional(),
  })
  .describe('The rest of a day: its plan, the time it is and what has happened.');

export const postedByIdSchema = z
  .strictObject({
    plan: z
      .string()
      .regex(/^[A-Za-z0-9_-]{1,100}$/, 'use the id a plan was given when it was asked for')
      .describe('Id of a plan, or of a re-plan, the service made.'),
  })
  .describe('A plan the service has.');

export const postedWholeSchema = z.strictObject({ scenario, plan: ownPlan }).describe('A plan with its scenario, made anywhere.');

export const postedBodySchema = z.union([postedByIdSchema, postedWholeSchema]).describe('The plan to post.');

export const happenedBodySchema = z
  .strictObject({
    happened: z.array(eventSchema).min(1).max(1000).describe('What went otherwise than planned, at most 1000 events at once.'),
  })
  .describe('What has happened on a day.');
