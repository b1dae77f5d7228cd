// Does a change that is offered do what it says? Made to the scenario as JSON, read again, planned again from scratch, judged; the
// orders are looked at one by one. Used by the law in the suite and by the fifty days run by hand.
import { judge } from '../../../src/check/judge.ts';
import type { Plan } from '../../../src/model/plan.ts';
import type { Scenario } from '../../../src/model/scenario.ts';
import type { OfferedChange, WouldFit } from '../../../src/model/wouldFit.ts';
import { makePlan } from '../../../src/planning.ts';
import type { Patching } from '../../../src/questions/whatWouldFit/trial.ts';
import { patchScenario } from '../../../src/read/patchScenario.ts';
import { patchValue } from '../../../src/read/patchValue.ts';
import { readScenarioValue } from '../../../src/read/readScenario.ts';

export const patching: Patching = (scenario, operations) => {
  const patched = patchScenario(scenario, operations);
  return patched.ok ? patched.scenario : null;
};

const isFine = (order: Plan['orders'][number] | undefined): boolean => order?.lateMinutes === 0;

/** What is wrong with the day planned again after a change; empty when the trays fit. `before`: the plan that was in trouble. */
export async function actedOn(
  scenario: Scenario,
  before: Plan,
  { orders }: WouldFit,
  change: OfferedChange,
): Promise<readonly string[]> {
  const patched = patchValue(JSON.parse(JSON.stringify(scenario)), change.operations);
  if (!patched.ok) return [`cannot be made: ${patched.fault.says}`];
  const reading = readScenarioValue(patched.value);
  if (!reading.ok) return reading.errors.map(({ says }) => `unsound: ${says}`);
  const plan = await makePlan(reading.value, { seed: 1, now: () => performance.now(), version: 'test' });
  const { breaches, figures } = judge(reading.value, plan);
  const wanted = new Set(orders.map(({ number }) => number - 1));
  const wrong = figures.orders.flatMap((order, index) => {
    const mustBeFine = wanted.has(index) || isFine(before.orders[index]);
    return mustBeFine && !isFine(order) ? [`order ${index + 1} is late or left out`] : [];
  });
  return [...breaches.map(({ rule, says }) => `${rule}: ${says}`), ...wrong];
}
