// The learning model in which units may be left out. On tiny problems the cheapest schedule it has is held against every schedule
// there is; on bakeries drawn at random, with their batches, bursts and twins, it holds the schedules that leave trays out.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileScenario } from '../../src/compile/shopProblem.ts';
import { scheduleOfLayout } from '../../src/solver/audit.ts';
import { checkSchedule } from '../../src/solver/checkSchedule.ts';
import { emptyLayout, type Layout, timesOf } from '../../src/solver/layout.ts';
import { heldStill } from '../../src/solver/learning/heldStill.ts';
import { openModel } from '../../src/solver/learning/improvedModels.ts';
import { atMost } from '../../src/solver/learning/literal.ts';
import { scaleOf } from '../../src/solver/learning/shopModel.ts';
import type { ShopProblem } from '../../src/solver/problem.ts';
import { type Random, randomOf } from '../../src/solver/random.ts';
import { Search } from '../../src/solver/search.ts';
import { type Shop, shopOf } from '../../src/solver/shop.ts';
import { anyScenario } from '../laws/anyScenario.ts';
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
    const total = model.engine.min(model.objective);
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
          expect(found.price).toBeCloseTo(least, 6);
          ends.push(cost.omitted > 0 ? 'some' : 'all');
        }),
        { numRuns: 500 },
      );
      for (const end of ['none', 'all', 'some'] as const) expect(ends.filter((one) => one === end).length).toBeGreaterThan(30);
    });
  }
});

describe('a model of a bakery in which trays may be left out', () => {
  it('holds every schedule that leaves some out, at no more than its price', { timeout: 120_000 }, () => {
    let held = 0;
    fc.assert(
      fc.property(anyScenario, fc.integer({ min: 1, max: 1000 }), (scenario, seed) => {
        const { problem: whole } = compileScenario(scenario);
        const problem = { ...whole, prices: { ...whole.prices, stateChange: 0 } };
        const scale = scaleOf(problem);
        const shop = shopOf(problem);
        fc.pre(scale !== null && !shop.network.isContradictory);
        const random = randomOf(seed);
        const search = new Search(shop, random);
        for (const _ of search.construct());
        for (const layout of [search.bestLayout(), thinned(shop, search.bestLayout(), random)]) {
          const cost = search.adopt(layout);
          if (cost.missing > 0 || cost.omitted === 0) continue;
          // Without the tray that came first, others of its batch can come too late.
          if (checkSchedule(problem, scheduleOfLayout(shop, layout)).length > 0) continue;
          const model = openModel(shop, scale as number, layout, false);
          const sorted = model.aimAt(layout);
          const isFree = new Uint8Array(shop.network.variableCount);
          const place = { kind: 'stretch', isFree, earlier: 0, later: 0, keepsChambers: true, mayPlan: false } as const;
          const still = heldStill(model, sorted, timesOf(shop, sorted), place);
          const price = model.priceOf(sorted, cost.total);
          expect(model.isPossible).toBe(true);
          expect(model.engine.search([atMost(model.objective, price), ...still], 5000, () => true)).toBe('solution');
          expect(search.adopt(model.read()).total).toBeCloseTo(cost.total, 6);
          held++;
        }
      }),
      { numRuns: 80 },
    );
    expect(held).toBeGreaterThan(30);
  });
});

/** A schedule without some of its trays, and without batches of which none is left. */
function thinned(shop: Shop, layout: Layout, random: Random): Layout {
  const { units } = shop.problem;
  const start = layout.start.slice();
  const end = layout.end.slice();
  const takeOut = (unit: number): void => {
    for (const task of units[unit]?.tasks ?? []) start[task] = end[task] = -1;
  };
  units.forEach(({ ready, omissionPrice }, u) => {
    if (ready !== null && Number.isFinite(omissionPrice) && random.next() < 0.4) takeOut(u);
  });
  units.forEach((_, u) => {
    const children = units.flatMap(({ parent }, c) => (parent === u ? [c] : []));
    const isLeft = (child: number): boolean => (start[units[child]?.tasks[0] ?? 0] as number) < 0;
    if (children.length > 0 && children.every(isLeft)) takeOut(u);
  });
  const pool = layout.pool.map((chosen, u) => ((start[shop.uses[u]?.task ?? 0] as number) < 0 ? -1 : chosen));
  const chamber = layout.chamber.map((chosen, s) => ((start[shop.stays[s]?.task ?? 0] as number) < 0 ? -1 : chosen));
  return { start, end, pool, chamber };
}
