// A published instance as a shop problem, with a recount of its schedules that knows the published data alone: constraints and
// objective are worked out again from there, so that a mistake of the conversion shows.
import type { Schedule, ShopProblem } from '../../src/solver/problem.ts';
import type { Folder } from './benchFolder.ts';

/** What the instance's own terms say of a schedule. */
export type Recount = {
  /** Conditions of the published problem it breaks, in words; empty when none. */
  readonly faults: readonly string[];
  /** Its objective, the published one: smaller is better. */
  readonly value: number;
  /** Anything else worth a column, by name. */
  readonly details?: Readonly<Record<string, number>>;
};

export type Published = {
  /** Best value printed, null when the instance has no schedule or no value was printed. */
  readonly best: number | null;
  readonly isFeasible: boolean;
  /** Whether `best` was read from a publication; otherwise it was computed by another program or by enumeration. */
  readonly isRead: boolean;
  /** Other printed values, by the names of `Recount.details`. */
  readonly details?: Readonly<Record<string, number>>;
};

export type PublishedCase = {
  readonly folder: Folder;
  readonly name: string;
  readonly problem: ShopProblem;
  readonly recount: (schedule: Schedule) => Recount;
  readonly published: Published;
  /** Published objective less the price of the problem, the same for every schedule; null when the two are different things. */
  readonly priceShift: number | null;
};

export type Use = { readonly from: number; readonly until: number; readonly amount: number };

/** A time at which uses are above a capacity, if any: looked for where a use begins, for only there it can rise. */
export function overloadedAt(uses: readonly Use[], capacity: number): number | undefined {
  const isOver = (t: number): boolean =>
    uses.reduce((sum, { from, until, amount }) => sum + (from <= t && t < until ? amount : 0), 0) > capacity;
  return uses.map(({ from }) => from).find(isOver);
}
