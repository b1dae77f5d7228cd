// What the comparison of optima found, in words and a table.
import { table } from './markdown.ts';

export type Agreement = {
  readonly scenario: string;
  readonly ownCost: number;
  readonly ownFloor: number;
  readonly ownProved: boolean;
  readonly ownSeconds: number;
  /** Null: CP-SAT had no plan. */
  readonly cpCost: number | null;
  readonly cpFloor: number;
  readonly cpProved: boolean;
};

/**
 * agree: CP-SAT's plan is proved best and ours costs the same. dearer: ours costs more than the best. contradiction: a floor
 * is above a judged plan. undecided: CP-SAT did not prove its plan.
 */
export type Agreed = 'agree' | 'dearer' | 'contradiction' | 'undecided';

export function verdictOf({ ownCost, ownFloor, cpCost, cpFloor, cpProved }: Agreement): Agreed {
  if (cpFloor > ownCost || (cpCost !== null && ownFloor > cpCost)) return 'contradiction';
  if (!cpProved || cpCost === null) return 'undecided';
  return ownCost === cpCost ? 'agree' : 'dearer';
}

export function agreementText(all: readonly Agreement[]): string {
  const having = (verdict: Agreed): readonly Agreement[] => all.filter((each) => verdictOf(each) === verdict);
  const agreed = having('agree');
  const proved = agreed.filter((each) => each.ownProved);
  const slowest = Math.max(0, ...proved.map((each) => each.ownSeconds));
  const sentence =
    `Of ${all.length} scenarios, the prices are the same on ${agreed.length}; on ${proved.length} of these ovenward proved it too, ` +
    `the slowest in ${slowest.toFixed(1)} s. Dearer: ${having('dearer').length}; a floor above a plan: ${having('contradiction').length}; ` +
    `not decided by CP-SAT in its time: ${having('undecided').length}.`;
  const others = all.filter((each) => verdictOf(each) !== 'agree');
  if (others.length === 0) return sentence;
  const head = ['scenario', 'verdict', 'ovenward', 'its floor', 'CP-SAT', 'its floor'];
  const rows = others.map((each) => {
    const { scenario, ownCost, ownFloor, cpCost, cpFloor } = each;
    return [scenario, verdictOf(each), `${ownCost}`, `${ownFloor}`, cpCost === null ? 'no plan' : `${cpCost}`, `${cpFloor}`];
  });
  return `${sentence}\n\n${table(head, rows, 2)}`;
}
