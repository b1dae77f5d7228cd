// A plan within a body that must be one of ours for a scenario and keep every rule. Used by fits and re-plans.
import type { InputError, Reading } from '../../model/inputError.ts';
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { readPlanValue } from '../../read/readPlan.ts';
import { both, within } from '../bodyValue.ts';
import { mustRead } from '../mustRead.ts';
import type { ApiParts } from '../parts.ts';

export function scenarioWithin(value: unknown, parts: ApiParts): Reading<Scenario> {
  return within('scenario', parts.readScenarioValue(value));
}

/** The scenario and its plan; errors of both at once, then breaches. */
export function soundPlan(scenarioValue: unknown, planValue: unknown, parts: ApiParts): readonly [Scenario, Plan] {
  const [scenario, plan] = mustRead(both(scenarioWithin(scenarioValue, parts), within('plan', readPlanValue(planValue))));
  const { breaches } = parts.judge(scenario, plan);
  const errors = breaches.map(({ rule, says, doThis }): InputError => ({ code: rule, path: '/plan', says, doThis }));
  return mustRead(errors.length === 0 ? { ok: true, value: [scenario, plan] } : { ok: false, errors });
}
