// A plan: every task with its time, place and people, the decks' set points, and what it is worth. One source of the Plan type.
import * as z from 'zod';
import { stepKind } from './steps.ts';

const minute = z.int().describe('Whole minutes from the start of the day.');
const instant = z.string().describe('Local time with offset, as 2026-05-16T06:32:00+01:00.');

export const PLACE_KINDS = ['bowl', 'bench', 'shelf', 'retarder', 'deck', 'rack'] as const;

export const placeSchema = z.strictObject({
  kind: z.enum(PLACE_KINDS).describe('What kind of place.'),
  id: z.string().describe('Mixer, proofer or retarder id; oven/deck; "bench"; "cooling-rack".'),
  position: z.int().min(1).describe('Place within it, counted from 1.'),
});

export const HANDS_ON_KINDS = ['mix', 'fold', 'divide', 'shape', 'finish', 'load', 'unload'] as const;

export const handsOnSchema = z.strictObject({
  person: z.string().describe('Id of the person.'),
  start: minute,
  end: minute.describe('Excluded.'),
  for: z.enum(HANDS_ON_KINDS).describe('What is done.'),
});

export const taskSchema = z.strictObject({
  id: z.string().describe('Batch or tray id, a slash, the step; numbered when a step comes twice.'),
  step: stepKind,
  product: z.string().optional().describe('Absent on batch steps.'),
  batch: z.string(),
  tray: z.string().optional().describe('Absent on batch steps.'),
  start: minute,
  end: minute.describe('Excluded. A bake runs from bake begin to bake end; loading and unloading stand in handsOn.'),
  startsAt: instant,
  endsAt: instant,
  place: placeSchema.optional().describe('Absent when the step needs none, or the place is unlimited.'),
  handsOn: z.array(handsOnSchema).describe('People at work on it. Empty when the scenario names no people.'),
});

export const setPointSchema = z
  .strictObject({
    start: minute,
    end: minute.describe('Excluded.'),
    fromC: z.number().describe('Set point in C at the start of the move.'),
    toC: z.number().describe('Set point in C at its end, held until the next move.'),
  })
  .describe('The set point moves evenly from fromC at start to toC at end, and holds until the next move.');

export const planDeckSchema = z.strictObject({
  id: z.string().describe('oven/deck.'),
  setPoints: z.array(setPointSchema).describe('Moves, in order.'),
});

export const planBatchSchema = z.strictObject({
  id: z.string(),
  dough: z.string(),
  kg: z.number().describe('Mixed dough, loss included.'),
  trays: z.array(z.strictObject({ id: z.string(), product: z.string() })),
});

export const planOrderSchema = z.strictObject({
  product: z.string(),
  pieces: z.int(),
  readyBy: instant,
  readyAt: instant.nullable().describe('When its last tray is ready; null when one is left out.'),
  lateMinutes: z.int().nullable(),
});

export const reasonSchema = z.strictObject({
  rule: z.string(),
  says: z.string(),
  wouldFitIf: z.string().optional().describe('Completes "It would fit if …"; ends with a full stop.'),
});

export const leftOutSchema = z.strictObject({
  product: z.string(),
  trays: z.int().min(1),
  reasons: z.array(reasonSchema),
});

export const scoreSchema = z.strictObject({
  cost: z.number(),
  lowerBound: z.number().describe('No plan of this scenario can cost less.'),
  gap: z.number().describe('(cost - lowerBound) / cost; 0 when cost is 0.'),
  lateTrayMinutes: z.int(),
  leftOutTrays: z.int(),
  finishMinute: z.int().describe('Makespan: minute at which the last tray is ready; 0 when none is planned.'),
  temperatureChanges: z.int(),
  firstHandsOnMinute: z.int().describe('First minute of hands-on work; 0 when none is planned.'),
  movedTasks: z
    .int()
    .min(0)
    .optional()
    .describe(
      'Steps that begin at another minute, in another place or by other people than planned before; only of a day under way.',
    ),
});

export const workerSchema = z.strictObject({
  person: z.string().describe('Id of the person.'),
  for: z.enum(HANDS_ON_KINDS).describe('What they do.'),
});

export const movedTaskSchema = z.strictObject({
  task: z.string().describe('Id of the task.'),
  from: z
    .strictObject({
      start: minute.describe('When it was to begin; of a bake, when the tray was to be on the deck.'),
      place: placeSchema.optional().describe('Where it was to be done.'),
      people: z.array(workerSchema).describe('Who was to do what of it.'),
    })
    .describe('How it was planned before.'),
});

export const planUnderwaySchema = z
  .strictObject({
    now: minute.describe('The minute it was when the rest of the day was planned.'),
    moved: z.array(movedTaskSchema).describe('Steps that were planned otherwise before.'),
    changes: z
      .array(
        z.strictObject({
          minute: minute.describe('When it matters.'),
          says: z.string().describe('What has changed, as one calls it across the room.'),
        }),
      )
      .default([])
      .describe('What has changed, in words, by when it matters. Default: nothing.'),
  })
  .describe('What has been planned anew; only of a day under way.');

const span = z.strictObject({ start: minute, end: minute });
const room = z.strictObject({ id: z.string(), name: z.string(), places: z.int(), temperatureC: z.number().optional() });

export const bakehouseSchema = z
  .strictObject({
    mixers: z.array(z.strictObject({ id: z.string(), name: z.string(), bowlKg: z.number() })),
    benchPlaces: z.int().nullable(),
    proofers: z.array(room),
    retarders: z.array(room),
    decks: z.array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        trays: z.int(),
        startsAtC: z.number(),
        loading: z.enum(['any-time', 'together']),
      }),
    ),
    coolingRackTrays: z.int().nullable(),
    people: z.array(z.strictObject({ id: z.string(), name: z.string(), hours: span, breaks: z.array(span) })),
    doughs: z.array(z.strictObject({ id: z.string(), name: z.string() })),
    products: z.array(
      z.strictObject({ id: z.string(), name: z.string(), dough: z.string(), piecesPerTray: z.int(), pieceG: z.number() }),
    ),
  })
  .describe('What a reader of the plan needs to know of the bakehouse: names, room and hours. null: unlimited.');

export const cautionSchema = z.strictObject({ code: z.string(), says: z.string(), source: z.string() });

export const STOPPED = ['proved', 'enough', 'time', 'effort', 'cancelled'] as const;
export const HOLDS = ['optimal', 'feasible', 'partial', 'nothing'] as const;

export const planSchema = z
  .strictObject({
    plan: z.literal(1).describe('Version of this format.'),
    scenario: z.strictObject({ name: z.string(), date: z.string(), timeZone: z.string(), fingerprint: z.string() }),
    day: z.strictObject({ startsAt: instant, endsAt: instant, minutes: z.int() }),
    stopped: z.enum(STOPPED).describe('Why the search ended.'),
    holds: z
      .enum(HOLDS)
      .describe('optimal: proved best. feasible: every tray planned. partial: some left out. nothing: none planned.'),
    score: scoreSchema,
    bound: z.strictObject({ argument: z.string(), says: z.string() }).describe('The argument behind lowerBound.'),
    tasks: z.array(taskSchema).describe('Sorted by start, then id.'),
    decks: z.array(planDeckSchema),
    batches: z.array(planBatchSchema),
    orders: z.array(planOrderSchema),
    leftOut: z.array(leftOutSchema),
    bakehouse: bakehouseSchema,
    cautions: z.array(cautionSchema),
    underway: planUnderwaySchema.optional(),
    solver: z.strictObject({
      seed: z.int(),
      effort: z.int().describe('Rounds of search done.'),
      seconds: z.number(),
      version: z.string(),
      notes: z.array(z.string()).describe('What the reader should know of how it was found.'),
    }),
  })
  .describe('A plan for one scenario.');

export type Plan = z.infer<typeof planSchema>;
export type Task = z.infer<typeof taskSchema>;
export type Place = z.infer<typeof placeSchema>;
export type PlaceKind = Place['kind'];
export type HandsOn = z.infer<typeof handsOnSchema>;
export type SetPoint = z.infer<typeof setPointSchema>;
export type PlanDeck = z.infer<typeof planDeckSchema>;
export type PlanBatch = z.infer<typeof planBatchSchema>;
export type PlanOrder = z.infer<typeof planOrderSchema>;
export type LeftOut = z.infer<typeof leftOutSchema>;
export type Reason = z.infer<typeof reasonSchema>;
export type Score = z.infer<typeof scoreSchema>;
export type Bakehouse = z.infer<typeof bakehouseSchema>;
export type MovedTask = z.infer<typeof movedTaskSchema>;
export type PlanUnderway = z.infer<typeof planUnderwaySchema>;
export type Caution = z.infer<typeof cautionSchema>;
export type Stopped = Plan['stopped'];
export type Holds = Plan['holds'];
