// The plan of one day as a plan of another, where it stands there too and is cheaper than the one found. Used by compare, so
// that more room never looks worse.
import { judge } from '../../check/judge.ts';
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';

const UNBOUND = { argument: 'none', says: 'the trays are dealt to other batches than the bound was proved for.' };

/** Prices are stated to six decimals. */
const ROUNDING = 1e-6;

/**
 * The plan `other` as a plan of the scenario, or null when it breaks a rule there or costs no less than `own`. `title` says whose
 * plan it is. A lower bound is proved for the batches as they are dealt; a plan dealt otherwise may lie below it.
 */
export function carriedPlan(scenario: Scenario, own: Plan, other: Plan, title: string): Plan | null {
  const bare = { ...other, scenario: own.scenario, day: own.day, bakehouse: own.bakehouse };
  const { figures } = judge(scenario, bare);
  const { orders, ...score } = figures;
  if (score.cost >= own.score.cost - ROUNDING) return null;
  const isBound = own.score.lowerBound <= score.cost;
  const lowerBound = isBound ? own.score.lowerBound : 0;
  const isBest = score.cost === lowerBound;
  const carried: Plan = {
    ...bare,
    orders: [...orders],
    score: { ...score, lowerBound, gap: score.cost === 0 ? 0 : Math.round(((score.cost - lowerBound) / score.cost) * 1e6) / 1e6 },
    bound: isBound ? own.bound : UNBOUND,
    holds: heldBy(other, isBest, score.leftOutTrays),
    stopped: isBest ? 'proved' : own.stopped,
    leftOut: other.leftOut.map((left) => ({ ...left, reasons: [] })),
    solver: { ...own.solver, notes: [`The plan of "${title}": it stands here too, and nothing cheaper was found.`] },
  };
  return judge(scenario, carried).breaches.length === 0 ? carried : null;
}

function heldBy(plan: Plan, isBest: boolean, leftOutTrays: number): Plan['holds'] {
  if (isBest) return 'optimal';
  if (plan.batches.length === 0) return 'nothing';
  return leftOutTrays > 0 ? 'partial' : 'feasible';
}
