// A plan within a body that must be one of ours for a scenario and keep every rule. Used by fits and re-plans.
import type { Verdict } from '../../check/finding.ts';
import { judge } from '../../check/judge.ts';
import type { InputError, Reading } from '../../model/inputError.ts';
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { readPlanValue } from '../../read/readPlan.ts';
import { readScenarioValue } from '../../read/readScenario.ts';
import { both, within } from '../bodyValue.ts';
import { mustRead } from '../mustRead.ts';

export function scenarioWithin(value: unknown): Reading<Scenario> {
  return within('scenario', readScenarioValue(value));
}

/** Breaches of a plan that must have none, as errors of the body it is in. */
export function breachErrors({ breaches }: Verdict): readonly InputError[] {
  return breaches.map(({ rule, says, doThis }) => ({ code: rule, path: '/plan', says, doThis }));
}

/** The scenario and its plan; errors of both at once, then breaches. */
export function soundPlan(scenarioValue: unknown, planValue: unknown): readonly [Scenario, Plan] {
  const [scenario, plan] = mustRead(both(scenarioWithin(scenarioValue), within('plan', readPlanValue(planValue))));
  const errors = breachErrors(judge(scenario, plan));
  return mustRead(errors.length === 0 ? { ok: true, value: [scenario, plan] } : { ok: false, errors });
}
