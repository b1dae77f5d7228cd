// Laws that hold for every plan we make, over scenarios drawn at random from the whole format.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileScenario } from '../../src/compile/shopProblem.ts';
import { startLayout } from '../../src/compile/startLayout.ts';
import type { Plan } from '../../src/model/plan.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import { readPlan } from '../../src/read/readPlan.ts';
import { readScenarioValue } from '../../src/read/readScenario.ts';
import { anyScenario } from './anyScenario.ts';
import { planned } from './planned.ts';

/** The plan without what depends on the clock. */
const timeless = (plan: Plan): string => JSON.stringify({ ...plan, solver: { ...plan.solver, seconds: 0 } });

const longer = 240_000;

/** The scenario with another name for everything that has one. */
function renamed(scenario: Scenario): Scenario {
  const other = (id: string): string => `x${[...id].reverse().join('')}`;
  const { equipment } = scenario;
  const each = <T extends { readonly id: string }>(list: readonly T[]): T[] => list.map((one) => ({ ...one, id: other(one.id) }));
  return {
    ...scenario,
    equipment: {
      ...equipment,
      ovens: each(equipment.ovens).map((oven) => ({ ...oven, decks: each(oven.decks) })),
      proofers: each(equipment.proofers),
      retarders: each(equipment.retarders),
      ...(equipment.mixers === undefined ? {} : { mixers: each(equipment.mixers) }),
    },
    ...(scenario.people === undefined ? {} : { people: each(scenario.people) }),
    doughs: each(scenario.doughs),
    products: each(scenario.products).map((product) => ({ ...product, dough: other(product.dough) })),
    orders: scenario.orders.map((order) => ({ ...order, product: other(order.product) })),
  };
}

describe('laws', () => {
  it(
    'a plan passes the judge and its figures are the recount',
    async () => {
      let trays = 0;
      await fc.assert(
        fc.asyncProperty(anyScenario, async (scenario) => {
          expect(readScenarioValue(scenario).ok).toBe(true);
          const plan = await planned(scenario, 30);
          trays += new Set(plan.tasks.map((task) => task.tray)).size;
        }),
        { numRuns: 250 },
      );
      expect(trays).toBeGreaterThan(1000);
    },
    longer,
  );

  it(
    'the same scenario, seed and effort give the same bytes',
    async () => {
      await fc.assert(
        fc.asyncProperty(anyScenario, fc.integer({ min: 1, max: 1000 }), async (scenario, seed) => {
          const first = timeless(await planned(scenario, 20, seed));
          expect(timeless(await planned(scenario, 20, seed)) === first).toBe(true);
        }),
        { numRuns: 40 },
      );
    },
    longer,
  );

  it(
    'other names, same cost',
    async () => {
      await fc.assert(
        fc.asyncProperty(anyScenario, async (scenario) => {
          expect((await planned(renamed(scenario), 20)).score).toEqual((await planned(scenario, 20)).score);
        }),
        { numRuns: 40 },
      );
    },
    longer,
  );

  it(
    'what we write reads back the same',
    async () => {
      await fc.assert(
        fc.asyncProperty(anyScenario, async (scenario) => {
          const plan = await planned(scenario, 5);
          const read = readPlan(JSON.stringify(plan));
          expect(read.ok && read.value).toEqual(plan);
        }),
        { numRuns: 40 },
      );
    },
    longer,
  );

  it(
    'no bound is above the cost of any plan that passes the judge, whatever the seed',
    async () => {
      await fc.assert(
        fc.asyncProperty(anyScenario, async (scenario) => {
          const plans = [await planned(scenario, 20, 1), await planned(scenario, 60, 2), await planned(scenario, 5, 3)];
          const least = Math.min(...plans.map((plan) => plan.score.cost));
          for (const plan of plans) expect(plan.score.lowerBound).toBeLessThanOrEqual(least + 1e-6);
        }),
        { numRuns: 40 },
      );
    },
    longer,
  );

  it(
    'starting from a plan never ends worse than that plan',
    async () => {
      let better = 0;
      await fc.assert(
        fc.asyncProperty(anyScenario, fc.integer({ min: 1, max: 1000 }), async (scenario, seed) => {
          const first = await planned(scenario, 0);
          expect(startLayout(compileScenario(scenario), first)).not.toBeNull();
          const second = await planned(scenario, 40, seed, { startFrom: first });
          expect(second.score.cost).toBeLessThanOrEqual(first.score.cost + 1e-6);
          if (second.score.cost < first.score.cost - 1e-6) better++;
        }),
        { numRuns: 60 },
      );
      expect(better).toBeGreaterThan(5);
    },
    longer,
  );
});
