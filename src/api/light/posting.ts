// A plan that somebody wants posted for a day, whole with its scenario or from work of the service: read, of that day, without a breach
// and drawn, or refused with everything wrong with it.
import { judge } from '../../check/judge.ts';
import { drawPlan } from '../../draw/drawPlan.ts';
import type { InputError, Reading } from '../../model/inputError.ts';
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { readPlanValue } from '../../read/readPlan.ts';
import { both, plainBody, shapeOf, within } from '../bodyValue.ts';
import { mustRead } from '../mustRead.ts';
import { postedByIdSchema, postedWholeSchema } from '../routes/bodies.ts';
import { wrongToPost } from '../routes/postingCodes.ts';
import { askedScenario } from './askedScenario.ts';
import type { Answer, Given, ToPost } from './lightWork.ts';
import { breachErrors, scenarioWithin } from './soundPlan.ts';

/** `planText`: the plan as JSON; of one the service made, to the letter as it was made. */
type Found = { readonly scenario: Scenario; readonly plan: Plan; readonly planText: string };

function readBoth(scenario: unknown, plan: unknown): Reading<Found> {
  const reading = both(scenarioWithin(scenario), within('plan', readPlanValue(plan)));
  if (!reading.ok) return reading;
  return { ok: true, value: { scenario: reading.value[0], plan: reading.value[1], planText: JSON.stringify(plan) } };
}

function isById(body: unknown): boolean {
  return typeof body === 'object' && body !== null && 'plan' in body && typeof body.plan === 'string';
}

function ofDate(plan: Plan, date: string): readonly InputError[] {
  const { date: own } = plan.scenario;
  if (own === date) return [];
  return wrongToPost('OTHER_DATE', `The plan is for ${own}, not for ${date}.`, 'Post it for its own date, or plan this day.');
}

function toPost(reading: Reading<Found>, date: string): ToPost {
  const { scenario, plan, planText } = mustRead(reading);
  const errors = [...ofDate(plan, date), ...breachErrors(judge(scenario, plan))];
  if (errors.length > 0) return mustRead({ ok: false, errors });
  return { timeZone: scenario.timeZone, scenario: JSON.stringify(scenario), plan: planText, pages: drawPlan(plan) };
}

export function posting({ text, date }: Given<'posting'>): Answer<'posting'> {
  const body = plainBody(text);
  if (isById(body)) return { id: shapeOf(postedByIdSchema, body).plan };
  const { scenario, plan } = shapeOf(postedWholeSchema, body);
  return toPost(readBoth(scenario, plan), date);
}

/** A re-plan answers with the scenario of the rest of the day beside the plan. */
function foundIn(asked: string, answer: unknown): Reading<Found> {
  if (typeof answer === 'object' && answer !== null) {
    if ('tasks' in answer) return readBoth(askedScenario(asked), answer);
    if ('movedTasks' in answer && 'scenario' in answer && 'plan' in answer) return readBoth(answer.scenario, answer.plan);
  }
  const says = 'What has this id is no plan and no re-plan.';
  return { ok: false, errors: wrongToPost('NO_SINGLE_PLAN', says, 'Send the plan wanted, whole, with its scenario.') };
}

export function postingOfWork({ asked, answer, date }: Given<'posting of work'>): ToPost {
  return toPost(foundIn(asked, JSON.parse(answer)), date);
}
