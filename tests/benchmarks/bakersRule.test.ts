// The baker's rule: plans that pass the judge, never cheaper than a proved floor, longest proof first.
import { describe, expect, it } from 'vitest';
import { judgedFigures } from '../../benchmarks/planners/judged.ts';
import { planFrom } from '../../benchmarks/planners/planFrom.ts';
import { bakersRule } from '../../benchmarks/rule/bakersRule.ts';
import { generateScenario } from '../../benchmarks/scenarios/generateScenario.ts';
import { KINDS } from '../../benchmarks/scenarios/kinds.ts';
import { compileScenario } from '../../src/compile/shopProblem.ts';
import type { Plan } from '../../src/model/plan.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import { readScenarioValue } from '../../src/read/readScenario.ts';
import { planned } from '../laws/planned.ts';

function planByRule(scenario: Scenario): Plan {
  const compiled = compileScenario(scenario);
  const outcome = { schedule: bakersRule(compiled), lowerBound: 0, cost: null, stopped: 'effort' as const };
  return planFrom(scenario, compiled, outcome, { seed: 1, seconds: 0, version: 'test' });
}

describe.each(KINDS)('%s', (kind) => {
  it.each([10, 30])('%i trays: every tray planned, every rule kept', (trays) => {
    const scenario = generateScenario({ kind, trays, seed: 2 });
    const figures = judgedFigures(scenario, planByRule(scenario), "baker's rule");
    expect(figures.leftOutTrays).toBe(0);
    expect(figures.finishMinute).toBeGreaterThan(0);
  });
});

it('is never cheaper than the floor the planner proves', async () => {
  for (const kind of KINDS) {
    const scenario = generateScenario({ kind, trays: 8, seed: 5 });
    const { score } = await planned(scenario, 50);
    expect(score.lowerBound).toBeLessThanOrEqual(planByRule(scenario).score.cost);
  }
});

it('begins with the longest proof', () => {
  const scenario = generateScenario({ kind: 'plain', trays: 16, seed: 1 });
  const proofOf = new Map(
    scenario.products.map(({ id, steps }) => {
      const minutes = steps.flatMap((step) => (step.do === 'proof' ? [step.minutes] : []));
      return [id, Math.max(...minutes.map((each) => (typeof each === 'number' ? each : each[0])))];
    }),
  );
  const plan = planByRule(scenario);
  const firstMix = plan.tasks.find((task) => task.step === 'mix');
  const product = plan.batches.find(({ id }) => id === firstMix?.batch)?.trays[0]?.product ?? '';
  expect(firstMix?.start).toBe(0);
  expect(proofOf.get(product)).toBe(Math.max(...proofOf.values()));
});

it('refuses an oven loaded together, which it knows nothing of', () => {
  const scenario = generateScenario({ kind: 'plain', trays: 8, seed: 1 });
  const ovens = scenario.equipment.ovens.map((oven) => ({ ...oven, loading: 'together' as const }));
  const reading = readScenarioValue({ ...scenario, equipment: { ...scenario.equipment, ovens } });
  if (!reading.ok) throw new Error('not read');
  expect(() => bakersRule(compileScenario(reading.value))).toThrow(/tray by tray/);
});

it('a plan that breaks a rule ends the run and names the rule', () => {
  const scenario = generateScenario({ kind: 'plain', trays: 8, seed: 1 });
  const plan = planByRule(scenario);
  const late = plan.tasks.map((task) => (task.step === 'bake' ? { ...task, end: task.end + 30 } : task));
  expect(() => judgedFigures(scenario, { ...plan, tasks: late }, "baker's rule")).toThrow(/STEP_MINUTES/);
});
