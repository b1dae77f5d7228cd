// Schemas of answers that are made in the service itself: problems, verdicts, where a piece of work stands, what is kept. The answers
// of the planner have theirs in model.
import * as z from 'zod';
import { eventSchema } from '../../model/happened.ts';
import { planOrderSchema, planSchema } from '../../model/plan.ts';
import { RULES } from '../../model/rules.ts';
import { scenarioSchema } from '../../model/scenario.ts';
import { WORK_KINDS, WORK_STATES } from '../../store/store.ts';

const whole = z.int().min(0);
const minute = z.int().describe('Whole minutes from the start of the day.');

export const instantSchema = z.iso.datetime().describe('Instant of RFC 3339 in UTC, as 2026-05-16T04:03:00.000Z.');
export const workIdSchema = z
  .string()
  .regex(/^[A-Za-z0-9_-]{1,100}$/)
  .describe('Id of a piece of work: letters, digits, - and _.');

export const inputErrorSchema = z
  .strictObject({
    code: z.string().describe('What kind of error; the list of codes is in docs/errors.md.'),
    path: z.string().describe('JSON Pointer (RFC 6901) into the body; it begins with /query or /path for the address.'),
    line: z.int().min(1).optional().describe('Line in the text that was sent, from 1.'),
    column: z.int().min(1).optional().describe('Column in that line, from 1.'),
    says: z.string().describe('What is wrong.'),
    doThis: z.string().describe('What to do about it.'),
  })
  .describe('One thing wrong with an input.');

export const problemSchema = z
  .strictObject({
    type: z.literal('about:blank').describe('Always about:blank: the status says what kind of problem it is.'),
    title: z.string().describe('The phrase of the status.'),
    status: z.int().min(400).max(599).describe('The status of the answer.'),
    detail: z.string().describe('What is wrong, in a sentence.'),
    instance: z.string().optional().describe('Names this answer: the id of the request, as the log of the service has it.'),
    errors: z.array(inputErrorSchema).min(1).optional().describe('Everything wrong with the input, at once.'),
  })
  .describe('Problem details of RFC 9457.');

const breachSchema = z
  .strictObject({
    rule: z.enum(Object.keys(RULES)).describe('Code of the rule; the list is in docs/rules.md.'),
    says: z.string().describe('What breaks it, where and when.'),
    doThis: z.string().describe('What to do about it.'),
    taskIds: z.array(z.string()).describe('Tasks it is about.'),
    minute: minute.optional().describe('When it shows; absent where no minute can be named.'),
  })
  .describe('A place where a plan does not meet a rule.');

const figuresSchema = z
  .strictObject({
    cost: z.number().describe('Price of the plan, rounded to 6 decimals.'),
    lateTrayMinutes: whole.describe('Minutes late, over all trays.'),
    leftOutTrays: whole.describe('Trays left out.'),
    finishMinute: minute.describe('Makespan: minute at which the last tray is ready; 0 when none is planned.'),
    temperatureChanges: whole.describe('Temperature changes over all decks.'),
    firstHandsOnMinute: minute.describe('First minute of hands-on work; 0 when there is none.'),
    movedTasks: whole.optional().describe('Steps planned otherwise before; only of a day under way.'),
    orders: z.array(planOrderSchema).describe('When each order is ready, in the order of the scenario.'),
  })
  .describe('The figures of a plan, recounted from its tasks and set points alone.');

export const verdictSchema = z
  .strictObject({
    breaches: z.array(breachSchema).describe('Empty when the plan keeps every rule.'),
    figures: figuresSchema,
  })
  .describe("The judge's verdict on a plan.");

const progressSchema = z
  .strictObject({
    seconds: z.number().min(0).describe('Seconds since the search began.'),
    cost: z.number().describe('Price of the best plan so far.'),
    lowerBound: z.number().describe('No plan can cost less: proved so far.'),
    gap: z.number().describe('(cost - lowerBound) / cost; 0 when cost is 0.'),
    plannedTrays: whole.describe('Trays in the best plan so far.'),
    trays: whole.describe('Trays of the day.'),
    rounds: whole.describe('Rounds of search done.'),
    changed: z.string().describe('What is better than at the last report, in words.'),
  })
  .describe('How far a search is.');

export const workNewsSchema = z
  .strictObject({
    progress: progressSchema.nullable().describe('Figures of the search; null for work that has none.'),
    says: z.string().describe('What goes on, in words.'),
    seconds: z.number().min(0).describe('Seconds since its turn came.'),
  })
  .describe('The last that was told of work that goes on.');

export const workKindSchema = z.enum(WORK_KINDS).describe('What is made.');
export const workStateSchema = z
  .enum(WORK_STATES)
  .describe('done: ended by itself. stopped: ended early, and the best so far was kept. failed: a fault of ovenward.');

const failureSchema = z
  .strictObject({
    says: z.string().describe('Why there is no answer.'),
    errors: z.array(inputErrorSchema).describe('What was wrong with the input, where it was to blame.'),
  })
  .describe('Why there is no answer.');

/** A piece of work as GET shows it, over the answer it makes. */
export function workSchemaOf(kind: (typeof WORK_KINDS)[number], answer: z.ZodType, answerSays: string) {
  return z.strictObject({
    id: workIdSchema,
    kind: z.literal(kind).describe('What is made.'),
    state: workStateSchema,
    askedAt: instantSchema,
    endedAt: instantSchema.nullable().describe('When it ended; null while it waits or runs.'),
    ahead: whole.describe('How many wait before it; 0 when it does not wait.'),
    news: workNewsSchema.nullable().describe('The last news; null while there is none.'),
    answer: answer.nullable().describe(answerSays),
    failure: failureSchema.nullable().describe('Of failed work; null otherwise.'),
  });
}

export const scenarioEntrySchema = z
  .strictObject({
    name: z.string().describe('Name it is kept under.'),
    revision: z.int().min(1).describe('1 for the first text under this name, then one more each time.'),
    savedAt: instantSchema,
    mediaType: z.enum(['application/json', 'application/yaml']).describe('Media type it was sent in.'),
  })
  .describe('A kept scenario, without its text.');

export const scenarioListSchema = z
  .strictObject({ scenarios: z.array(scenarioEntrySchema).describe('By name.') })
  .describe('The scenarios that are kept.');

export const scenarioHistorySchema = z
  .strictObject({
    name: z.string().describe('Name it is kept under.'),
    revisions: z.array(scenarioEntrySchema).describe('The newest first.'),
  })
  .describe('All revisions of a scenario.');

export const postedEntrySchema = z
  .strictObject({
    date: z.iso.date().describe('The day.'),
    revision: z.int().min(1).describe('1 for the first plan posted for the day, then one more each time.'),
    postedAt: instantSchema,
    timeZone: z.string().describe('IANA time zone of the day.'),
  })
  .describe('A posted plan, without the plan.');

export const postedHistorySchema = z
  .strictObject({ date: z.iso.date().describe('The day.'), revisions: z.array(postedEntrySchema).describe('The newest first.') })
  .describe('Everything that was posted for a day.');

export const postedSchema = postedEntrySchema
  .extend({
    pages: whole.describe('Pages of its sheet.'),
    scenario: scenarioSchema.describe('The scenario it is a plan of.'),
    plan: planSchema.describe('The plan.'),
  })
  .describe('A posted plan. Scenario and plan can be posted again as they are.');

export const happenedListSchema = z
  .strictObject({
    date: z.iso.date().describe('The day.'),
    happened: z
      .array(
        z.strictObject({
          number: z.int().min(1).describe('In the order told, from 1.'),
          toldAt: instantSchema,
          event: eventSchema,
        }),
      )
      .describe('In the order told.'),
  })
  .describe('What has happened on a day, as it was told.');

export const healthSchema = z.strictObject({
  version: z.string().describe('Version of ovenward.'),
  running: whole.describe('Pieces of work that are being done.'),
  waiting: whole.describe('Pieces of work that wait.'),
});

export const readinessSchema = z.strictObject({ isReady: z.literal(true) });
