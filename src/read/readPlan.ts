// The door for plans: those we wrote, whole and strict, and those of anybody, to be judged. Used by the command line and the API.
import type { Reading } from '../model/inputError.ts';
import { type Plan, planSchema } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import { type WrittenPlan, writtenPlanInputSchema } from '../model/writtenPlan.ts';
import { errorList } from './errorList.ts';
import { MAX_PLAN_VALUES } from './limits.ts';
import { minutesOfPlan } from './minutesOfPlan.ts';
import { plainValue } from './plainValue.ts';
import { planErrors } from './planChecks.ts';
import { type Judged, planText } from './planText.ts';
import { schemaErrors } from './schemaErrors.ts';

function ownPlan(value: unknown): Judged<Plan> {
  const result = planSchema.safeParse(value);
  if (!result.success) return { value: undefined, errors: schemaErrors(result.error.issues, planSchema, value) };
  return { value: result.data, errors: planErrors(result.data) };
}

/** Reads a plan this program wrote. */
export function readPlan(text: string): Reading<Plan> {
  return planText(text, ownPlan);
}

/** Reads a plan this program wrote from a parsed JSON value: the same errors without line and column. */
export function readPlanValue(value: unknown): Reading<Plan> {
  const plain = plainValue(value, MAX_PLAN_VALUES);
  const { value: plan, errors } = ownPlan(plain.value);
  if (plan !== undefined && errors.length === 0 && plain.errors.length === 0) return { ok: true, value: plan };
  return { ok: false, errors: errorList(plain.errors, errors, (error) => error) };
}

/** Reads a plan of anybody for a scenario; times may be minutes or clock times of the scenario's day. */
export function readWrittenPlan(text: string, scenario: Scenario): Reading<WrittenPlan> {
  return planText(text, (value) => {
    const result = writtenPlanInputSchema.safeParse(value);
    if (!result.success) return { value: undefined, errors: schemaErrors(result.error.issues, writtenPlanInputSchema, value) };
    const { plan, errors } = minutesOfPlan(result.data, scenario);
    return { value: plan, errors };
  });
}
