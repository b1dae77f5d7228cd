// How planners stand on a scenario: the best plan and the highest floor anybody has of it, and how far a plan is from each.
import type { Planner, Row } from '../planners/instance.ts';

/** A planner within one limit. */
export type Entrant = { readonly planner: Planner; readonly limitSeconds: number };

export type Standing = {
  readonly scenario: string;
  readonly trays: number;
  readonly rows: readonly Row[];
  /** Price of the best plan of any planner within any limit; Infinity: there is none. */
  readonly best: number;
  readonly fewestLeftOut: number;
  readonly floor: number;
};

export const NAMES: Readonly<Record<Planner, string>> = { ovenward: 'ovenward', 'cp-sat': 'CP-SAT', rule: "baker's rule" };

export function entrantName({ planner, limitSeconds }: Entrant): string {
  return planner === 'rule' ? NAMES.rule : `${NAMES[planner]} ${limitSeconds} s`;
}

/** Standings of one set, by trays and name. */
export function standingsOf(rows: readonly Row[]): Standing[] {
  const names = [...new Set(rows.map((row) => row.scenario))];
  const standings = names.map((scenario) => {
    const mine = rows.filter((row) => row.scenario === scenario);
    const plans = mine.filter((row) => row.cost !== null);
    return {
      scenario,
      trays: mine[0]?.trays ?? 0,
      rows: mine,
      best: Math.min(...plans.map((row) => row.cost ?? Number.POSITIVE_INFINITY)),
      fewestLeftOut: Math.min(...plans.map((row) => row.leftOutTrays)),
      floor: Math.max(0, ...mine.map((row) => row.lowerBound)),
    };
  });
  return standings.sort((a, b) => a.trays - b.trays || (a.scenario < b.scenario ? -1 : 1));
}

/** A floor above a judged plan is a fault of whoever proved it; null when there is none. */
export function contradictionIn({ scenario, rows, best, floor }: Standing): string | null {
  if (floor <= best + 1e-6) return null;
  const provedBy = rows.filter((row) => row.lowerBound > best + 1e-6).map(entrantName);
  return `${scenario}: a judged plan costs ${best}, and a floor of ${floor} was claimed by ${provedBy.join(', ')}`;
}

/** Entrants of the rows: the rule, then ours by seconds, then CP-SAT by seconds. */
export function entrantsOf(rows: readonly Row[]): Entrant[] {
  const order: readonly Planner[] = ['rule', 'ovenward', 'cp-sat'];
  return order.flatMap((planner) => {
    const limits = new Set(rows.filter((row) => row.planner === planner).map((row) => row.limitSeconds));
    return [...limits].sort((a, b) => a - b).map((limitSeconds) => ({ planner, limitSeconds }));
  });
}

export function rowOf(standing: Standing, { planner, limitSeconds }: Entrant): Row | undefined {
  return standing.rows.find((row) => row.planner === planner && row.limitSeconds === limitSeconds);
}

/** Whether a row holds a plan that leaves out no more trays than the best one does. */
export function isWhole(standing: Standing, row: Row): boolean {
  return row.cost !== null && row.leftOutTrays <= standing.fewestLeftOut;
}

/** How far a plan is above another price, as a share of that price. */
export function above(cost: number, price: number): number {
  return price === 0 ? 0 : (cost - price) / price;
}

/** Plan against its planner's own floor; 1 without a plan. */
export function gapOf(row: Row): number {
  if (row.cost === null) return 1;
  return row.cost === 0 ? 0 : (row.cost - Math.max(0, row.lowerBound)) / row.cost;
}
