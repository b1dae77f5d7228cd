// How sure a plan is: chances from mornings simulated with the real minutes of each step. One source of the HowSure type;
// printed by `ovenward plan --how-sure --json`.
import * as z from 'zod';
import { planSchema } from './plan.ts';
import { spreadPercent, spreadSchema } from './spread.ts';

const share = z.number().min(0).max(1);
const instant = z.string().describe('Local time with offset, as 2026-05-16T06:32:00+01:00.');
const minutes = z.number().min(0);

export const chanceSchema = z
  .strictObject({
    chance: share.describe('Share of the mornings in which it happened, 0 to 1.'),
    low: share.describe('Lower end of the 95 % interval (Wilson 1927), included.'),
    high: share.describe('Upper end of the 95 % interval, included.'),
  })
  .describe('A chance counted over the mornings, and the interval it lies in.');

export const riskSchema = chanceSchema
  .extend({ minutes: minutes.describe('Minutes too many on average over the mornings in which it happened; 0 when in none.') })
  .describe('A chance, and how bad it usually is.');

const spreadStep = spreadSchema.keyof().describe('Which step, or which work at the oven.');

export const orderSureSchema = z.strictObject({
  product: z.string().describe('Id of the product.'),
  pieces: z.int().min(1).describe('How many are wanted.'),
  readyBy: instant.describe('When they are wanted.'),
  plannedReadyAt: instant.nullable().describe('When the plan has them ready; null when trays of it are left out.'),
  usuallyReadyAt: instant.nullable().describe('Half of the mornings they are ready by then, rounded up to the minute; or null.'),
  mostlyReadyAt: instant.nullable().describe('Nine mornings in ten they are ready by then, rounded up to the minute; or null.'),
  onTime: chanceSchema.describe('Chance that all of its pieces are ready by its time; 0 when trays of it are left out.'),
});

export const trayAtRiskSchema = z.strictObject({
  tray: z.string().describe('Id of the tray in the plan.'),
  product: z.string().describe('Id of its product.'),
  late: riskSchema.describe('Ready after the time of the order it serves.'),
  standsTooLong: riskSchema.describe(
    'Its dough stands more than 5 minutes longer, all waits together, than it may that morning.',
  ),
  bakesTooLong: riskSchema.describe('It is in the oven more than 2 minutes longer than it may that morning.'),
});

export const howSureSchema = z
  .strictObject({
    howSure: z.literal(1).describe('Version of this format.'),
    scenario: planSchema.shape.scenario.describe('The scenario whose minutes were drawn.'),
    seed: z.int().min(0).describe('Seed of the chances; the same seed gives the same mornings.'),
    mornings: z.int().min(1).describe('Mornings simulated.'),
    spread: z
      .record(spreadSchema.keyof(), spreadPercent)
      .describe('The spread of each step that was used, in percent, where a step has none of its own.'),
    allOnTime: chanceSchema.describe('Chance that every order is ready by its time.'),
    lateTrayMinutes: minutes.describe('Minutes late over all trays, a morning on average.'),
    plannedLateTrayMinutes: minutes.describe('The same when every step takes the minutes stated.'),
    orders: z.array(orderSureSchema).describe('The orders as the scenario lists them.'),
    traysAtRisk: z
      .array(trayAtRiskSchema)
      .describe('Trays with a chance of at least 0.05 to be late, to stand or to bake too long; the greatest chance first.'),
    pastHours: z
      .array(z.strictObject({ person: z.string().describe('Id of the person.'), works: riskSchema }))
      .describe('People with a chance of at least 0.05 to be at work after their hours.'),
    hurts: z
      .array(
        z.strictObject({
          step: spreadStep,
          lateTrayMinutes: z.number().describe('Minutes late over all trays it adds to a morning on average; can be below 0.'),
        }),
      )
      .describe('What the spread of each step adds to lateness: the same mornings once more without it. The most first.'),
    hurtsMost: z
      .strictObject({
        step: spreadStep,
        of: z.string().describe('Id of the dough or product.'),
        lateTrayMinutes: minutes.describe('Minutes late over all trays it adds to a morning on average, above 0.'),
      })
      .nullable()
      .describe('Of the step that hurts most, the dough or product whose spread adds most; null when nothing adds lateness.'),
  })
  .describe('How sure a plan is.');

export type Chance = z.infer<typeof chanceSchema>;
export type Risk = z.infer<typeof riskSchema>;
export type HowSure = z.infer<typeof howSureSchema>;
export type OrderSure = z.infer<typeof orderSureSchema>;
export type TrayAtRisk = z.infer<typeof trayAtRiskSchema>;
