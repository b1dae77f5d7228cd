// The learning model in which units may be left out, on tiny problems: the cheapest schedule it has is held against every schedule
// there is.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scheduleOfLayout } from '../../src/solver/audit.ts';
import { checkSchedule } from '../../src/solver/checkSchedule.ts';
import { emptyLayout, type Layout } from '../../src/solver/layout.ts';
import { openModel } from '../../src/solver/learning/improvedModels.ts';
import { atMost } from '../../src/solver/learning/literal.ts';
import { scaleOf } from '../../src/solver/learning/shopModel.ts';
import type { ShopProblem } from '../../src/solver/problem.ts';
import { randomOf } from '../../src/solver/random.ts';
import { Search } from '../../src/solver/search.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { anyProblem, leastPrice } from './tinyProblems.ts';

type Cheapest = { readonly layout: Layout; readonly price: number };

/** The cheapest schedule of the model and its price there; null where it has none, 'beyond' where it does not hold the problem. */
function cheapest(problem: ShopProblem): Cheapest | null | 'beyond' {
  const shop = shopOf(problem);
  const scale = scaleOf(problem);
  if (scale === null) return 'beyond';
  const model = openModel(shop, scale, emptyLayout(shop), false);
  let best: Cheapest | null = null;
  let most = Number.MAX_SAFE_INTEGER;
  while (model.isPossible) {
    const outcome = model.engine.search([atMost(model.objective, most)], 100_000, () => true);
    if (outcome !== 'solution') {
      expect(['impossible', 'refuted']).toContain(outcome);
      break;
    }
    const total = model.engine.bounds.min(model.objective);
    best = { layout: model.read(), price: total / scale };
    most = total - 1;
  }
  return best;
}

describe('a model in which units may be left out', () => {
  for (const hasStays of [false, true]) {
    it(hasStays ? 'with chambers' : 'without chambers', { timeout: 120_000 }, () => {
      const ends: ('none' | 'all' | 'some')[] = [];
      fc.assert(
        fc.property(anyProblem(hasStays), (problem) => {
          fc.pre(!shopOf(problem).network.isContradictory);
          const found = cheapest(problem);
          fc.pre(found !== 'beyond');
          const least = leastPrice(problem);
          if (found === null || least === null) {
            expect({ found, least }).toEqual({ found: null, least: null });
            ends.push('none');
            return;
          }
          const shop = shopOf(problem);
          const cost = new Search(shop, randomOf(1)).adopt(found.layout);
          expect(checkSchedule(problem, scheduleOfLayout(shop, found.layout))).toEqual([]);
          expect(cost.missing).toBe(0);
          expect(cost.total).toBeCloseTo(least, 6);
          if (problem.prices.stateChange === 0) expect(found.price).toBeCloseTo(least, 6);
          ends.push(cost.omitted > 0 ? 'some' : 'all');
        }),
        { numRuns: 500 },
      );
      for (const end of ['none', 'all', 'some'] as const) expect(ends.filter((one) => one === end).length).toBeGreaterThan(30);
    });
  }
});
