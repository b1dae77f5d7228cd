// What `ovenward plan --json` prints when more than the plan was asked for: the plan, and beside it what was asked.
import * as z from 'zod';
import { howSureSchema } from './howSure.ts';
import { planSchema } from './plan.ts';
import { scenarioSchema } from './scenario.ts';

export const howSurePlanSchema = z
  .strictObject({
    plan: planSchema.describe('The plan, as it is printed alone.'),
    careful: scenarioSchema
      .optional()
      .describe('With --careful: the scenario with the longer minutes, which the plan is made for and checked against.'),
    howSure: howSureSchema.optional().describe('With --how-sure: how sure the plan is.'),
  })
  .describe('A plan with how sure it is, or with the careful scenario it is made for.');

export type HowSurePlan = z.infer<typeof howSurePlanSchema>;
