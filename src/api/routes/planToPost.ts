// A plan that somebody wants posted for a day, by its id or whole with its scenario: what there is to post, or everything wrong with it.
import type { Request } from 'express';
import type { InputError, Reading } from '../../model/inputError.ts';
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { readPlanValue } from '../../read/readPlan.ts';
import { both, plainBody, shapeOf, within } from '../bodyValue.ts';
import { mustRead } from '../mustRead.ts';
import type { ApiParts } from '../parts.ts';
import { askedScenario } from './askedScenario.ts';
import { postedByIdSchema, postedWholeSchema } from './bodies.ts';
import type { PostingCode } from './postingCodes.ts';

export type PlanToPost = {
  readonly scenario: Scenario;
  readonly plan: Plan;
  /** The plan as JSON; of one the service made, to the letter as it was made. */
  readonly planText: string;
};

function wrong(code: PostingCode, says: string, doThis: string): Reading<never> {
  return { ok: false, errors: [{ code, path: '/plan', says, doThis }] };
}

function readBoth(scenario: unknown, plan: unknown, parts: ApiParts): Reading<PlanToPost> {
  const reading = both(within('scenario', parts.readScenarioValue(scenario)), within('plan', readPlanValue(plan)));
  if (!reading.ok) return reading;
  return { ok: true, value: { scenario: reading.value[0], plan: reading.value[1], planText: JSON.stringify(plan) } };
}

function readWhole(body: unknown, parts: ApiParts): Reading<PlanToPost> {
  const { scenario, plan } = shapeOf(postedWholeSchema, body);
  return readBoth(scenario, plan, parts);
}

/** Of a plan that is still being made its best so far. A re-plan answers with the scenario of the rest of the day beside the plan. */
async function readWork(id: string, parts: ApiParts): Promise<Reading<PlanToPost>> {
  const [work, record] = [await parts.jobs.find(id), await parts.store.work(id)];
  if (work === null || record === null)
    return wrong('UNKNOWN_PLAN', 'There is no plan of this id.', 'Ask for one with POST /v1/plans, then post it by its id.');
  const { answer } = work;
  if (answer === null) return wrong('NO_PLAN_YET', 'There is no plan of this id yet.', 'Wait until GET of it shows an answer.');
  if ('tasks' in answer) return readBoth(askedScenario(record.asked), answer, parts);
  if ('movedTasks' in answer) return readBoth(answer.scenario, answer.plan, parts);
  return wrong(
    'NO_SINGLE_PLAN',
    'What has this id is no plan and no re-plan.',
    'Send the plan wanted, whole, with its scenario.',
  );
}

function isById(body: unknown): boolean {
  return typeof body === 'object' && body !== null && 'plan' in body && typeof body.plan === 'string';
}

function ofDate(plan: Plan, date: string): readonly InputError[] {
  const { date: own } = plan.scenario;
  if (own === date) return [];
  const reading = wrong('OTHER_DATE', `The plan is for ${own}, not for ${date}.`, 'Post it for its own date, or plan this day.');
  return reading.ok ? [] : reading.errors;
}

/** The plan a request wants posted for a date: read, of that date, and without a breach. */
export async function planToPost(request: Request, date: string, parts: ApiParts): Promise<PlanToPost> {
  const body = plainBody(request);
  const reading = isById(body) ? await readWork(shapeOf(postedByIdSchema, body).plan, parts) : readWhole(body, parts);
  const found = mustRead(reading);
  const { scenario, plan } = found;
  const breaches = parts
    .judge(scenario, plan)
    .breaches.map(({ rule, says, doThis }): InputError => ({ code: rule, path: '/plan', says, doThis }));
  const errors = [...ofDate(plan, date), ...breaches];
  return mustRead(errors.length === 0 ? { ok: true, value: found } : { ok: false, errors });
}
