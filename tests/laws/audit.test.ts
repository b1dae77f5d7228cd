// Debug runs count every schedule the searches accept once more, slowly, from the problem alone: exchanges, neighbourhoods,
// proofs and fresh starts, on days drawn at random.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { compileScenario } from '../../src/compile/shopProblem.ts';
import { audit } from '../../src/solver/audit.ts';
import { randomOf } from '../../src/solver/random.ts';
import { Search } from '../../src/solver/search.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { anyScenario } from './anyScenario.ts';
import { planned } from './planned.ts';

it('every accepted schedule costs what the search says and breaks no rule', async () => {
  await fc.assert(
    fc.asyncProperty(anyScenario, fc.integer({ min: 1, max: 1000 }), async (scenario, seed) => {
      await planned(scenario, 150, seed, { isAudited: true });
    }),
    { numRuns: 40 },
  );
}, 240_000);

it('the audit sees a wrong price and a task out of its place', () => {
  fc.assert(
    fc.property(anyScenario, (scenario) => {
      const shop = shopOf(compileScenario(scenario).problem);
      const search = new Search(shop, randomOf(1));
      for (const _ of search.construct());
      const layout = search.bestLayout();
      const { bestCost } = search;
      audit(shop, layout, bestCost);
      expect(() => audit(shop, layout, { ...bestCost, total: bestCost.total + 1 })).toThrow('the search counted');
      const task = layout.start.findIndex((at) => at >= 0);
      if (task < 0) return;
      layout.start[task] = shop.problem.horizon;
      expect(() => audit(shop, layout, bestCost)).toThrow('a schedule of the search is wrong');
    }),
    { numRuns: 30 },
  );
});
