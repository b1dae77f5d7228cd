// Every schema of the document by name: those that read requests, and those of the answers.
import * as z from 'zod';
import { additionSchema } from '../../model/addition.ts';
import { changeSchema } from '../../model/changes.ts';
import { comparisonSchema, dayFiguresSchema } from '../../model/comparison.ts';
import { fitAnswerSchema } from '../../model/fitAnswer.ts';
import { eventSchema, happenedSchema, keepSchema } from '../../model/happened.ts';
import { planSchema } from '../../model/plan.ts';
import { replanAnswerSchema } from '../../model/replanAnswer.ts';
import { doughSchema, orderSchema, productSchema, scenarioSchema } from '../../model/scenario.ts';
import { batchStepSchema, trayStepSchema } from '../../model/steps.ts';
import { underwaySchema } from '../../model/underway.ts';
import { wouldFitSchema } from '../../model/wouldFit.ts';
import { writtenPlanInputSchema } from '../../model/writtenPlan.ts';
import {
  changesBodySchema,
  fitBodySchema,
  happenedBodySchema,
  postedByIdSchema,
  postedWholeSchema,
  replanBodySchema,
  sweepBodySchema,
  sweepSchema,
} from '../routes/bodies.ts';
import {
  happenedListSchema,
  healthSchema,
  inputErrorSchema,
  postedEntrySchema,
  postedHistorySchema,
  postedSchema,
  problemSchema,
  readinessSchema,
  scenarioEntrySchema,
  scenarioHistorySchema,
  scenarioListSchema,
  verdictSchema,
  workNewsSchema,
  workSchemaOf,
} from './answerSchemas.ts';
import { componentSchemas, type Named } from './componentSchemas.ts';

/** As a client may write it: what has a default may be left out. */
export const READ = {
  Scenario: scenarioSchema,
  Dough: doughSchema,
  Product: productSchema,
  Order: orderSchema,
  DayUnderWay: underwaySchema,
  WrittenPlan: writtenPlanInputSchema,
  Addition: additionSchema,
  Change: changeSchema,
  Happened: happenedSchema,
  Event: eventSchema,
  Kept: keepSchema,
  BatchStep: batchStepSchema,
  TrayStep: trayStepSchema,
  CheckRequest: z
    .strictObject({ scenario: scenarioSchema, plan: writtenPlanInputSchema })
    .describe('A scenario and a plan for it.'),
  FitRequest: fitBodySchema.extend({
    scenario: scenarioSchema,
    addition: additionSchema.optional(),
    plan: planSchema.optional(),
  }),
  Sweep: sweepSchema,
  ComparisonRequest: z
    .union([changesBodySchema.extend({ scenario: scenarioSchema }), sweepBodySchema.extend({ scenario: scenarioSchema })])
    .describe('A day compared with itself: under changes, or under a range of values.'),
  ReplanRequest: replanBodySchema.extend({ scenario: scenarioSchema, plan: planSchema }),
  PostedRequest: z.union([postedByIdSchema, postedWholeSchema.extend({ scenario: scenarioSchema, plan: planSchema })]),
  HappenedRequest: happenedBodySchema,
} satisfies Named;

/** As the service writes it. */
export const WRITTEN = {
  Problem: problemSchema,
  InputError: inputErrorSchema,
  Plan: planSchema,
  FitAnswer: fitAnswerSchema,
  WouldFit: wouldFitSchema,
  Comparison: comparisonSchema,
  DayFigures: dayFiguresSchema,
  ReplanAnswer: replanAnswerSchema,
  Verdict: verdictSchema,
  WorkNews: workNewsSchema,
  PlanWork: workSchemaOf('plan', planSchema, 'The plan; while it is made, the best so far. null while there is none.'),
  FitWork: workSchemaOf('fit', fitAnswerSchema, 'Whether it fits; null while there is no answer.'),
  ComparisonWork: workSchemaOf('comparison', comparisonSchema, 'The comparison; null while there is none.'),
  ReplanWork: workSchemaOf('replan', replanAnswerSchema, 'The rest of the day planned anew; null while there is none.'),
  ScenarioEntry: scenarioEntrySchema,
  PostedEntry: postedEntrySchema,
  ScenarioList: scenarioListSchema,
  ScenarioHistory: scenarioHistorySchema,
  Posted: postedSchema,
  PostedHistory: postedHistorySchema,
  HappenedList: happenedListSchema,
  Health: healthSchema,
  Readiness: readinessSchema,
} satisfies Named;

export const SCHEMAS = { ...componentSchemas(READ, 'input', WRITTEN), ...componentSchemas(WRITTEN, 'output', READ) };
export type SchemaName = keyof typeof READ | keyof typeof WRITTEN;
