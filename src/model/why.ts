// The answer to `why`: what is in the way of late and left-out trays, which place or person is full when, why no plan is
// cheaper, and which orders and limits clash. One source of these types.
import * as z from 'zod';
import { PLACE_KINDS } from './plan.ts';
import { wouldFitSchema } from './wouldFit.ts';

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

export const LIMIT_KINDS = [
  'deck-room',
  'shelves',
  'hands',
  'hours',
  'cannot',
  'heat-rates',
  'bench-places',
  'day-start',
  'retarder-room',
  'rack-room',
  'bowl',
  'steam',
  'product-standing',
  'dough-standing',
  'day-end',
] as const;

const withoutIt = z
  .enum(['possible', 'unknown'])
  .describe('Whether all the rest of the set can be ready on time without it: shown by a judged plan, or not found out.');

export const clashOrderSchema = z.strictObject({
  is: z.literal('order'),
  number: z.int().min(1).describe('Which order of the scenario, from 1.'),
  product: z.string().describe('Id of its product.'),
  pieces: z.int().min(1).describe('Pieces wanted.'),
  readyBy: z.string().describe('By when, as the scenario has it.'),
  says: sentence,
  withoutIt,
});

export const clashLimitSchema = z.strictObject({
  is: z.literal('limit'),
  limit: z.enum(LIMIT_KINDS).describe('What kind of limit.'),
  rule: z.string().describe('The rule the limit belongs to.'),
  of: z.string().describe('Whose limit: id of a place, person, oven, product or dough; "day" for the day.'),
  says: sentence,
  lifted: z.string().describe('What it means to lift it, as it was tried.'),
  withoutIt,
});

const clashMember = z.discriminatedUnion('is', [clashOrderSchema, clashLimitSchema]);
const solves = z.int().min(0).describe('Days planned to find this out.');

export const clashSchema = z
  .discriminatedUnion('is', [
    z.strictObject({ is: z.literal('none'), solves, says: sentence }).describe('Every tray can be ready on time.'),
    z
      .strictObject({ is: z.literal('unknown'), solves, says: sentence })
      .describe('Within the limits neither a plan with every tray on time was found, nor a proof that there is none.'),
    z
      .strictObject({
        is: z.literal('found'),
        members: z
          .array(clashMember)
          .min(1)
          .describe('Orders and limits that cannot all be met, whatever the plan; orders first.'),
        isMinimal: z
          .boolean()
          .describe('Whether every member is needed, each shown by a judged plan of the rest. false: some of it is not proved.'),
        notProved: z.array(z.string()).describe('What is not proved, one sentence each; empty when isMinimal.'),
        proof: z
          .strictObject({ argument: z.string().describe('Name of the argument.'), says: sentence })
          .describe(
            'Why the set cannot be met: the argument behind the lower bound of a day with these orders and limits alone.',
          ),
        solves,
        says: sentence,
      })
      .describe('A set of orders and limits that cannot all be met, every other order taken away and every other limit lifted.'),
  ])
  .describe('Which orders and limits clash when not everything can be ready on time.');

export type LimitKind = (typeof LIMIT_KINDS)[number];
export type Clash = z.infer<typeof clashSchema>;
export type ClashMember = z.infer<typeof clashMember>;

const times = z.array(span).describe('Spans of minutes, in order.');

export const triedSchema = z
  .strictObject({
    kind: resourceKind,
    id: resourceId,
    rule: z.string().describe('The rule in the way there.'),
    isAlone: z.boolean().describe('Whether this rule alone keeps the tray out there. false: it does together with another.'),
    firstMinute: minute
      .nullable()
      .describe('First minute from the tray’s arrival on at which this rule would allow it; null: never.'),
    shortMinutes: z
      .int()
      .min(1)
      .nullable()
      .describe(
        'Minutes from the latest useful arrival before firstMinute until then; null when firstMinute is, or is an arrival.',
      ),
    full: z.array(span).describe('Spans in the way in which the place is full or the person at work, without this tray.'),
    says: sentence,
  })
  .describe('A place or person tried for a step, and what is in the way with the rest of the plan as it stands.');

export const waitSchema = z.strictObject({
  taskId: z.string().describe('Which task waited, as the plan calls it.'),
  forTaskId: z.string().nullable().describe('The task it waited for; null when it waited for none.'),
  says: sentence,
});

export const whyTraySchema = z
  .strictObject({
    is: z.enum(['late', 'left-out']).describe('late: ready after its time. left-out: not planned.'),
    product: z.string().describe('Id of the product.'),
    tray: z.string().nullable().describe('Id of the tray; null for one left out.'),
    trays: z.int().min(1).describe('Trays this is said of: 1 for a late tray, all of the product for those left out.'),
    readyMinute: minute.nullable().describe('When it is ready; null for one left out.'),
    byMinute: minute.describe('By when it was tried to be ready: its time when late, the end of the day when left out.'),
    lateMinutes: z.int().min(0).describe('Minutes late; 0 for one left out.'),
    stuckAt: z
      .string()
      .nullable()
      .describe(
        'The step that could be begun nowhere in time; "dough" when its dough is not there; null when nothing is in the way.',
      ),
    arrivals: times.describe('When the tray could have begun that step and still be ready in time.'),
    tried: z.array(triedSchema).describe('Every place and person tried for that step, in the order of the scenario.'),
    takenOut: z
      .array(z.string())
      .describe(
        'Ids of the trays and batches taken out of the plan for this: its own, all of its batch when the dough is in the way.',
      ),
    waits: z.array(waitSchema).describe('What a late tray waited for, backward from its ready minute; empty for one left out.'),
    says: sentence,
  })
  .describe('Why a tray is late or left out, with the rest of the plan as it stands.');

export const whySchema = z
  .strictObject({
    scenario: z.strictObject({ name: z.string(), date: z.string(), fingerprint: z.string() }).describe('Of which day.'),
    isOnTime: z.boolean().describe('Whether every tray is planned and on time; then trays is empty.'),
    trays: z.array(whyTraySchema).describe('Late trays in the order of their ready minutes, then those left out, by product.'),
    busiest: busiestSchema,
    bound: z
      .strictObject({ argument: z.string().describe('Name of the argument.'), says: sentence })
      .nullable()
      .describe('Why no plan costs less than the bound the plan states; null when it states none.'),
  })
  .describe('What can be read off a plan and its scenario; nothing is planned anew for it.');

export type Tried = z.infer<typeof triedSchema>;
export type Wait = z.infer<typeof waitSchema>;
export type WhyTray = z.infer<typeof whyTraySchema>;
export type Why = z.infer<typeof whySchema>;
export type MinuteSpan = z.infer<typeof span>;

export const whyAnswerSchema = z
  .strictObject({
    breaches: z
      .array(
        z.strictObject({
          rule: z.string().describe('Code of the rule.'),
          says: sentence,
          doThis: z.string().describe('What to do.'),
        }),
      )
      .describe('Rules the plan breaks; a plan that breaks one is explained no further.'),
    why: whySchema.nullable().describe('What is read off the plan; null when it breaks a rule.'),
    clash: clashSchema.nullable().describe('What clashes; null when everything is on time or the plan breaks a rule.'),
    wouldFit: z
      .array(wouldFitSchema)
      .nullable()
      .describe('What would make the late and left-out trays fit; null when the plan is not one of ours or breaks a rule.'),
  })
  .describe('The answer to why.');

export type WhyAnswer = z.infer<typeof whyAnswerSchema>;
