// Whatever the beam builds for days of one person drawn at random breaks no rule and costs what the search counts.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { compileScenario } from '../../src/compile/shopProblem.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import { audit } from '../../src/solver/audit.ts';
import { beamOf } from '../../src/solver/beam/beam.ts';
import { randomOf } from '../../src/solver/random.ts';
import { Search } from '../../src/solver/search.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { anyScenario } from './anyScenario.ts';

/** The day with its first person alone, each tray in and out of the oven by itself. */
function alone(scenario: Scenario): Scenario {
  const { equipment, goals } = scenario;
  return {
    ...scenario,
    equipment: { ...equipment, ovens: equipment.ovens.map((oven) => ({ ...oven, loading: 'any-time' })) },
    people: scenario.people?.slice(0, 1),
    goals: { ...goals, aim: 'finish-early' },
  };
}

it('the schedules of the beam pass the audit, on days with due times and breaks too', () => {
  const found = { schedules: 0, days: 0, due: 0 };
  fc.assert(
    fc.property(anyScenario.map(alone), fc.integer({ min: 1, max: 1000 }), (scenario, seed) => {
      const shop = shopOf(compileScenario(scenario).problem);
      const beam = beamOf(shop, randomOf(seed));
      if (beam === null) return;
      let count = 0;
      for (const layout of beam.schedules()) {
        if (beam.steps >= 1500 || count >= 3) break;
        if (layout === null) continue;
        count++;
        const search = new Search(shop, randomOf(1));
        audit(shop, layout, search.adopt(layout));
      }
      found.schedules += count;
      if (count > 0) found.days++;
      if (count > 0 && scenario.goals.lateTrayMinute > 0) found.due++;
    }),
    { numRuns: 200, seed: 11 },
  );
  expect(found.days).toBeGreaterThan(15);
  expect(found.due).toBeGreaterThan(5);
  expect(found.schedules).toBeGreaterThan(20);
}, 60_000);
