// The baker's rule as a benchmark sees it: no limit, no floor, judged like the others.
import { compileScenario } from '../../src/compile/shopProblem.ts';
import { bakersRule } from '../rule/bakersRule.ts';
import type { Instance, Row } from './instance.ts';
import { judgedFigures } from './judged.ts';
import { planFrom } from './planFrom.ts';

export function ruleRow(instance: Instance, source: string): Row {
  const startedAt = performance.now();
  const compiled = compileScenario(instance.scenario);
  const outcome = { schedule: bakersRule(compiled), lowerBound: 0, cost: null, stopped: 'effort' as const };
  const plan = planFrom(instance.scenario, compiled, outcome, { seed: 1, seconds: 0, version: 'rule' });
  return {
    set: instance.set,
    scenario: instance.name,
    trays: instance.trays,
    planner: 'rule',
    limitSeconds: 0,
    ...judgedFigures(instance.scenario, plan, "baker's rule"),
    isProved: false,
    seconds: (performance.now() - startedAt) / 1000,
    cores: null,
    peakMb: null,
    source,
  };
}
