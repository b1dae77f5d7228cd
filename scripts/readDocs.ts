// Makes the pages and schemas that are written from the code: docs/schema/*.json, docs/errors.md, the tables of docs/scenario.md.
// Used by writeSchemas.ts, which writes them, and its test, which compares.
import { z } from 'zod';
import { additionSchema } from '../src/model/addition.ts';
import { changesSchema } from '../src/model/changes.ts';
import { comparisonSchema } from '../src/model/comparison.ts';
import { fitAnswerSchema } from '../src/model/fitAnswer.ts';
import { happenedSchema } from '../src/model/happened.ts';
import { howSureSchema } from '../src/model/howSure.ts';
import { planSchema } from '../src/model/plan.ts';
import { replanAnswerSchema } from '../src/model/replanAnswer.ts';
import { scenarioSchema } from '../src/model/scenario.ts';
import { whyAnswerSchema } from '../src/model/why.ts';
import { writtenPlanInputSchema } from '../src/model/writtenPlan.ts';
import { errorsPage } from './errorsPage.ts';
import { fieldTables } from './fieldTables.ts';

function jsonSchema(schema: z.ZodType, title: string): Record<string, unknown> {
  return { title, ...z.toJSONSchema(schema, { io: 'input', target: 'draft-2020-12' }) };
}

const SCENARIO = jsonSchema(scenarioSchema, 'ovenward scenario');
const PLAN = jsonSchema(planSchema, 'ovenward plan');
const HOW_SURE = jsonSchema(howSureSchema, 'ovenward how sure');
const WHY = jsonSchema(whyAnswerSchema, 'ovenward why');
const ADDITION = jsonSchema(additionSchema, 'ovenward addition to a day');
const FIT = jsonSchema(fitAnswerSchema, 'ovenward answer to fit');
const CHANGES = jsonSchema(changesSchema, 'ovenward changes to compare');
const COMPARISON = jsonSchema(comparisonSchema, 'ovenward comparison');
const REPLAN = jsonSchema(replanAnswerSchema, 'ovenward answer to replan');
const HAPPENED = jsonSchema(happenedSchema, 'ovenward, what has happened on a day under way');
const WRITTEN_PLAN = jsonSchema(writtenPlanInputSchema, 'ovenward plan, to be judged');

/** The whole scenario that docs/scenario.md shows. */
export function wholeScenario(scenarioPage: string): string {
  const text = /```yaml scenario\n([\s\S]*?)```/.exec(scenarioPage)?.[1];
  if (text === undefined) throw new Error('docs/scenario.md shows no whole scenario');
  return text;
}

/** Text of every written file, by its path. `scenarioPage` is docs/scenario.md as it stands. */
export function readDocs(scenarioPage: string): ReadonlyMap<string, string> {
  const schemas = new Map([
    ['scenario', SCENARIO],
    ['plan', WRITTEN_PLAN],
  ]);
  return new Map([
    ['docs/schema/scenario.json', `${JSON.stringify(SCENARIO, null, 2)}\n`],
    ['docs/schema/plan.json', `${JSON.stringify(PLAN, null, 2)}\n`],
    ['docs/schema/how-sure.json', `${JSON.stringify(HOW_SURE, null, 2)}\n`],
    ['docs/schema/why.json', `${JSON.stringify(WHY, null, 2)}\n`],
    ['docs/schema/addition.json', `${JSON.stringify(ADDITION, null, 2)}\n`],
    ['docs/schema/fit.json', `${JSON.stringify(FIT, null, 2)}\n`],
    ['docs/schema/changes.json', `${JSON.stringify(CHANGES, null, 2)}\n`],
    ['docs/schema/comparison.json', `${JSON.stringify(COMPARISON, null, 2)}\n`],
    ['docs/schema/replan.json', `${JSON.stringify(REPLAN, null, 2)}\n`],
    ['docs/schema/written-plan.json', `${JSON.stringify(WRITTEN_PLAN, null, 2)}\n`],
    ['docs/schema/happened.json', `${JSON.stringify(HAPPENED, null, 2)}\n`],
    ['docs/errors.md', errorsPage(wholeScenario(scenarioPage))],
    ['docs/scenario.md', fieldTables(scenarioPage, schemas)],
  ]);
}
