// A plan of a part of a day, or of a day under other prices, as a plan of the day itself: the same tasks, counted anew. Used by fit,
// where the plan that shows that it fits is not the cheapest.
import { judge } from '../../check/judge.ts';
import { traysFor } from '../../dough/traysFor.ts';
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';

const NOTE = 'The plan that shows that it fits; a cheaper one was found in which it does not.';
const UNBOUND = { argument: 'none', says: 'No bound is known.' };

function leftOutOf(scenario: Scenario, { batches }: Plan): Plan['leftOut'] {
  return scenario.products.flatMap(({ id, piecesPerTray }) => {
    const pieces = scenario.orders.reduce((sum, order) => sum + (order.product === id ? order.pieces : 0), 0);
    const planned = batches.reduce((sum, { trays }) => sum + trays.filter(({ product }) => product === id).length, 0);
    const trays = traysFor(pieces, piecesPerTray) - planned;
    return pieces === 0 || trays < 1 ? [] : [{ product: id, trays, reasons: [] }];
  });
}

/** The tasks of `shown` as a plan of the scenario; null when they break a rule there. `own` is another plan of the scenario. */
export function restatedPlan(scenario: Scenario, own: Plan, shown: Plan): Plan | null {
  const { figures } = judge(scenario, shown);
  const { orders, ...score } = figures;
  const isBound = own.score.lowerBound <= score.cost;
  const lowerBound = isBound ? own.score.lowerBound : 0;
  const isBest = lowerBound === score.cost;
  const partly = score.leftOutTrays > 0 ? 'partial' : 'feasible';
  const plan: Plan = {
    ...shown,
    scenario: own.scenario,
    day: own.day,
    bakehouse: own.bakehouse,
    stopped: isBest ? 'proved' : own.stopped,
    holds: isBest ? 'optimal' : partly,
    score: { ...score, lowerBound, gap: score.cost === 0 ? 0 : Math.round(((score.cost - lowerBound) / score.cost) * 1e6) / 1e6 },
    bound: isBound ? own.bound : UNBOUND,
    orders: [...orders],
    leftOut: leftOutOf(scenario, shown),
    solver: { ...own.solver, notes: [NOTE] },
  };
  return judge(scenario, plan).breaches.length === 0 ? plan : null;
}
