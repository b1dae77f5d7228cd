// One day's problem: bakehouse, people, doughs, products, orders and goals. The one source of the Scenario type.
import * as z from 'zod';
import { equipmentSchema } from './equipment.ts';
import { spreadSchema } from './spread.ts';
import { batchStepSchema, stepKind, trayStepSchema } from './steps.ts';
import { underwaySchema } from './underway.ts';
import { clockText, idText, nameText, wholeMinutes } from './units.ts';

/** The fourteen groups of Regulation (EU) No 1169/2011, Annex II. */
export const ALLERGENS = [
  'gluten',
  'crustaceans',
  'egg',
  'fish',
  'peanut',
  'soy',
  'milk',
  'nuts',
  'celery',
  'mustard',
  'sesame',
  'sulphites',
  'lupin',
  'molluscs',
] as const;

const allergens = z
  .array(z.enum(ALLERGENS))
  .max(14)
  .default([])
  .describe('Allergen groups it contains, as the baker states them.');

export const daySchema = z.strictObject({
  from: clockText.describe('Start of the day; minute 0 of the plan.'),
  until: clockText.describe('End of the day, excluded; everything ends by then.'),
});

export const breakSchema = z.strictObject({
  from: clockText.describe('Start of the break.'),
  until: clockText.describe('End of the break, excluded.'),
});

export const personSchema = z.strictObject({
  id: idText,
  name: nameText.optional(),
  from: clockText.describe('Start of working hours.'),
  until: clockText.describe('End of working hours, excluded.'),
  breaks: z.array(breakSchema).max(20).default([]).describe('Times off within the hours. Default: none.'),
  cannot: z.array(stepKind).default([]).describe('Steps this person never does; bake covers loading and unloading.'),
});

export const doughSchema = z.strictObject({
  id: idText,
  name: nameText.optional(),
  formula: z
    .record(idText, z.number().min(0).max(10000))
    .optional()
    .describe("Baker's percentages: each ingredient by weight of all flour, flour being 100."),
  maxBatchKg: z.number().min(0.01).max(5000).optional().describe('Largest batch in kg, included. Default: the largest bowl.'),
  lossPercent: z
    .number()
    .min(0)
    .max(50)
    .default(0)
    .describe('Share of the mixed dough that never reaches a tray, in percent. Default 0.'),
  shapeWithin: wholeMinutes
    .default(30)
    .describe('Minutes after the first tray of a batch within which every other tray begins. Default 30.'),
  allergens,
  steps: z.array(batchStepSchema).min(1).max(20).describe('Steps of a batch, in order.'),
});

export const productSchema = z.strictObject({
  id: idText,
  name: nameText.optional().describe('What it is called on the sheet; the id when absent.'),
  dough: idText.describe('Id of its dough.'),
  pieceG: z.number().min(0.1).max(100000).describe('Dough in one piece, in grams.'),
  piecesPerTray: z.int().min(1).max(10000).describe('Pieces on a full tray.'),
  allergens,
  coldFilling: z
    .boolean()
    .default(false)
    .describe('Whether it carries a filling, cream or wash that must be kept cold; adds a caution. Default false.'),
  steps: z.array(trayStepSchema).min(1).max(30).describe('Steps of a tray, in order.'),
});

export const orderSchema = z.strictObject({
  product: idText.describe('Id of the product.'),
  pieces: z.int().min(1).max(1_000_000).describe('How many are wanted.'),
  readyBy: clockText.describe('A tray is late when it is ready after this time.'),
});

export const AIMS = ['finish-early', 'start-late'] as const;

const price = z.number().min(0).max(1_000_000);

export const goalsSchema = z.strictObject({
  lateTrayMinute: price.default(20).describe('Price of one tray being one minute late. Default 20.'),
  leftOutTray: price.default(5000).describe('Price of a tray left out. Default 5000.'),
  finishMinute: price.default(1).describe('Price of a minute of makespan. Default 1.'),
  temperatureChange: price.default(10).describe('Price of one temperature change. Default 10.'),
  aim: z
    .enum(AIMS)
    .default('finish-early')
    .describe('start-late: the makespan counts from the first hands-on minute. Default finish-early.'),
});

export const scenarioSchema = z
  .strictObject({
    scenario: z.literal(1).describe('Version of this format.'),
    name: nameText.describe('What the day is called on the sheet.'),
    date: z.iso.date().describe('The day, as 2026-05-16.'),
    timeZone: z.string().min(1).max(60).describe('IANA time zone, as Europe/Lisbon.'),
    day: daySchema.describe('From when until when may be planned; at most 4320 minutes.'),
    equipment: equipmentSchema.describe('What the bakehouse holds.'),
    people: z.array(personSchema).max(500).optional().describe('Who works when. Absent: hands never limit the day.'),
    doughs: z.array(doughSchema).min(1).max(500).describe('The doughs, each with the steps of a batch.'),
    products: z.array(productSchema).min(1).max(1000).describe('What is sold, each with the steps of a tray.'),
    orders: z.array(orderSchema).min(1).max(10000).describe('What is wanted, and by when.'),
    goals: goalsSchema.default(goalsSchema.parse({})).describe('What a good plan is: the prices. Default: the defaults of each.'),
    spread: spreadSchema
      .optional()
      .describe(
        'How far real minutes stray, for how sure a plan is and for careful plans. Absent: the usual spread of each step.',
      ),
    underway: underwaySchema
      .optional()
      .describe('The day so far, when a plan is wanted for the rest of it; written by ovenward replan. Absent: the whole day.'),
  })
  .describe('One day of one bakery.');

export type Scenario = z.infer<typeof scenarioSchema>;
export type ScenarioInput = z.input<typeof scenarioSchema>;
export type Person = z.infer<typeof personSchema>;
export type Dough = z.infer<typeof doughSchema>;
export type Product = z.infer<typeof productSchema>;
export type Order = z.infer<typeof orderSchema>;
export type Goals = z.infer<typeof goalsSchema>;
export type Allergen = (typeof ALLERGENS)[number];
