// The answer to `compare`: the day as it is beside the day under each change or value, figures, verdicts and what is proved.
// One source of these types.
import * as z from 'zod';
import { HOLDS, planOrderSchema, scoreSchema } from './plan.ts';
import { RESOURCE_KINDS, resourceUseSchema } from './why.ts';

const minute = z.int().describe('Whole minutes from the start of the day.');
const minutes = z.int().min(0);
const instant = z.string().describe('Local time with offset, as 2026-05-16T06:32:00+01:00.');
const sentence = z.string().describe('In a sentence.');

export const LIMIT_PROOFS = ['work', 'search'] as const;

export const capacitySchema = z
  .strictObject({
    of: z.string().nullable().describe("Id of the product whose trays are added or taken away; null: the day's mix."),
    dayTrays: z.int().min(1).describe('Trays of the orders as they stand, 1 or more.'),
    foundTrays: minutes.describe(
      'Most trays for which a plan was found that has every one ready on time; dayTrays plus extraTrays.',
    ),
    extraTrays: z.int().describe('Trays more than the orders as they stand; below 0: so many fewer.'),
    limitTrays: minutes
      .nullable()
      .describe('No plan has more trays ready on time: proved. Never below foundTrays; null: no limit was proved.'),
    limitProof: z
      .enum(LIMIT_PROOFS)
      .nullable()
      .describe(
        'work: one kind of place, or hands, has no time for more. search: every way was followed until it broke a rule, the batches as they are dealt.',
      ),
    isExact: z.boolean().describe('Whether foundTrays is proved to be the most.'),
    full: z
      .strictObject({
        kind: z.enum(RESOURCE_KINDS),
        words: z.string().describe('As people say it: the oven, the proofer shelves.'),
      })
      .nullable()
      .describe('What has no room for more: of the proof by work, else the busiest of the fullest plan. null: not known.'),
    says: sentence,
  })
  .describe('How many trays of the mix, or of one product, the morning takes with all of them ready on time.');

export const personHoursSchema = z.strictObject({
  person: z.string().describe('Id of the person.'),
  name: z.string(),
  paidMinutes: minutes.describe('Minutes of presence as the scenario states them: from, until, less breaks.'),
  handsOnMinutes: minutes.describe('Minutes of hands-on work in the plan.'),
  firstMinute: minute.nullable().describe('First minute of hands-on work; null when there is none.'),
  lastMinute: minute.nullable().describe('Minute at which it ends; null when there is none.'),
});

export const ovenHoursSchema = z.strictObject({
  deck: z.string().describe('oven/deck'),
  name: z.string(),
  onMinutes: minutes.describe(
    'From the begin of its first heat-up, or of its first bake when it is hot, to the end of its last bake; 0 when not used.',
  ),
  heatUpMinutes: minutes.describe('Of those, minutes before its first bake.'),
  bakingMinutes: minutes.describe('Of those, minutes in which at least one tray bakes.'),
});

export const dayFiguresSchema = z
  .strictObject({
    fingerprint: z.string().describe('Of the scenario compared.'),
    holds: z.enum(HOLDS).describe('What the plan holds; as in a plan.'),
    score: scoreSchema,
    trays: minutes.describe('Trays planned.'),
    orders: z.array(planOrderSchema).describe('When each order is ready, in the order of the scenario.'),
    lateOrders: minutes.describe('Orders ready after their time.'),
    busiest: z
      .strictObject({ kind: z.enum(RESOURCE_KINDS), id: z.string(), name: z.string(), share: z.number().min(0).max(1) })
      .nullable()
      .describe(
        'The place or person in use the largest share of the time between first and last use; null when nothing is limited.',
      ),
    busiestSays: sentence,
    resources: z.array(resourceUseSchema).describe('Every limited place and every person, busiest first.'),
    people: z.array(personHoursSchema).describe('In the order of the scenario; empty when it names nobody.'),
    ovens: z.array(ovenHoursSchema).describe('Deck by deck.'),
    paidMinutes: minutes.describe('Presence of all people together.'),
    handsOnMinutes: minutes.describe('Hands-on work of all people together.'),
    ovenMinutes: minutes.describe('onMinutes of all decks together.'),
    capacity: capacitySchema.nullable().describe('null: there was no time left to look.'),
    notes: z.array(z.string()).describe('What the reader should know of how the plan was found.'),
  })
  .describe('What a plan of the day comes to.');

export const COMPARED = ['better', 'same', 'worse', 'not-comparable'] as const;

const judgedDifference = z.strictObject({
  is: z.enum(COMPARED).describe('Beside the day as it is. not-comparable: other prices, or not known.'),
  isProved: z.boolean().describe('true: proved. false: only as far as the plans found go.'),
});

export const differenceSchema = z.strictObject({
  price: judgedDifference.describe('The price of the best plan: better is lower.'),
  capacity: judgedDifference.describe('Trays ready on time at most: better is more.'),
  says: z.string().describe('The verdict, in one sentence.'),
});

export const comparedDaySchema = z.strictObject({
  title: z.string().describe('Title of the change; of a sweep, the value.'),
  value: z.number().nullable().describe('The value swept; null for a change.'),
  figures: dayFiguresSchema,
  difference: differenceSchema,
});

export const comparisonSchema = z
  .strictObject({
    comparison: z.literal(1).describe('Version of this format.'),
    scenario: z.strictObject({ name: z.string(), date: z.string(), timeZone: z.string() }),
    day: z.strictObject({ startsAt: instant, minutes: z.int() }),
    base: dayFiguresSchema.describe('The day as it is.'),
    sweep: z
      .strictObject({
        pointer: z.string().describe('JSON Pointer (RFC 6901) to the number.'),
        place: z.string().describe('The same in words.'),
        now: z.number().describe('The number as it is.'),
        says: z.string().describe('The verdict on the whole sweep, in one sentence.'),
      })
      .nullable()
      .describe('null when changes are compared.'),
    days: z.array(comparedDaySchema).describe('One for each change, as written, or for each value, rising.'),
    notReached: z.array(z.string()).describe('Titles for which there was no time: they were stopped, not judged.'),
    solver: z.strictObject({ seed: z.int(), seconds: z.number(), version: z.string() }),
  })
  .describe('A day compared with itself under changes.');

export type Capacity = z.infer<typeof capacitySchema>;
export type PersonHours = z.infer<typeof personHoursSchema>;
export type OvenHours = z.infer<typeof ovenHoursSchema>;
export type DayFigures = z.infer<typeof dayFiguresSchema>;
export type JudgedDifference = z.infer<typeof judgedDifference>;
export type Difference = z.infer<typeof differenceSchema>;
export type ComparedDay = z.infer<typeof comparedDaySchema>;
export type Comparison = z.infer<typeof comparisonSchema>;
