// The price of a schedule in the making, counted afresh: lateness, omissions, makespan and changes of state.
import { asksForState, type HeldStay } from './chamberLine.ts';
import { MoveCounter } from './homes.ts';
import type { Chamber, ShopProblem } from './problem.ts';
import type { ShopState } from './shopState.ts';

/** Price of a task that must be planned and is not: above anything else a schedule can cost. */
export const MISSING_PRICE = 1e9;

export type Cost = {
  readonly total: number;
  readonly lateness: number;
  readonly omitted: number;
  readonly makespan: number;
  readonly firstMark: number;
  readonly changes: number;
  /** Tasks that are not at their homes. */
  readonly moved: number;
  /** Sum of the ready times: of two schedules of one price the denser one leads further. */
  readonly sumReady: number;
  readonly missing: number;
};

type ReadyAt = { readonly variable: number; readonly offset: number } | null;

/** Counts prices of one problem; the layout of units and families is worked out once. */
export class CostCounter {
  private readonly problem: ShopProblem;
  private readonly state: ShopState;
  private readonly ready: readonly ReadyAt[];
  private readonly isParent: readonly boolean[];
  private readonly first: readonly { readonly variable: number; readonly offset: number }[];
  private readonly mandatory: readonly number[];
  private readonly readyOfFamily: number[][];
  private readonly moves: MoveCounter;

  constructor(state: ShopState) {
    this.state = state;
    this.moves = new MoveCounter(state);
    this.problem = state.shop.problem;
    const { network } = state.shop;
    const at = (mark: { readonly task: number; readonly edge: 'start' | 'end'; readonly offset: number }) => {
      const isStart = mark.edge === 'start';
      const variable = (isStart ? network.startVar : network.endVar)[mark.task] as number;
      const edgeOff = (isStart ? network.startOff : network.endOff)[mark.task] as number;
      return { variable, offset: edgeOff + mark.offset };
    };
    this.ready = this.problem.units.map((unit) => (unit.ready === null ? null : at(unit.ready)));
    const parents = new Set(this.problem.units.map((unit) => unit.parent));
    this.isParent = this.problem.units.map((_, u) => parents.has(u));
    this.first = this.problem.firstMarks.map(at);
    this.mandatory = this.problem.tasks.flatMap((_, i) => {
      const unit = state.shop.unitOfTask[i] as number;
      return unit < 0 || (!this.isParent[unit] && this.problem.units[unit]?.omissionPrice === Infinity)
        ? [network.startVar[i] as number]
        : [];
    });
    this.readyOfFamily = this.problem.families.map(() => []);
  }

  /** When a unit is ready; -1 when it is omitted. */
  readyTime(unit: number): number {
    const ready = this.ready[unit];
    if (ready == null || !this.state.isPlaced(ready.variable)) return -1;
    return (this.state.time[ready.variable] as number) + ready.offset;
  }

  count(): Cost {
    const { prices } = this.problem;
    const counted = this.countUnits();
    let missing = 0;
    for (const v of this.mandatory) if (!this.state.isPlaced(v)) missing++;
    let firstMark = Infinity;
    for (const mark of this.first) {
      if (this.state.isPlaced(mark.variable))
        firstMark = Math.min(firstMark, (this.state.time[mark.variable] as number) + mark.offset);
    }
    if (firstMark === Infinity) firstMark = 0;
    let changes = 0;
    this.problem.chambers.forEach((chamber, c) => {
      changes += changesOf(chamber, this.state.chambers[c]?.stays ?? []);
    });
    const lateness = this.latenessPrice();
    const span = counted.makespan - (prices.fromFirstMark ? firstMark : 0);
    const moved = this.moves.count();
    const total =
      lateness +
      counted.omissionPrice +
      prices.makespan * span +
      prices.stateChange * changes +
      (prices.move ?? 0) * moved +
      MISSING_PRICE * missing;
    return {
      total,
      lateness,
      omitted: counted.omitted,
      makespan: counted.makespan,
      firstMark,
      changes,
      moved,
      sumReady: counted.sumReady,
      missing,
    };
  }

  private countUnits(): { makespan: number; sumReady: number; omitted: number; omissionPrice: number } {
    let makespan = 0;
    let sumReady = 0;
    let omitted = 0;
    let omissionPrice = 0;
    for (const list of this.readyOfFamily) list.length = 0;
    this.problem.units.forEach((unit, u) => {
      if (unit.ready === null) return;
      const at = this.readyTime(u);
      if (at < 0) {
        if (unit.omissionPrice === Infinity) return;
        omitted++;
        omissionPrice += unit.omissionPrice;
        return;
      }
      makespan = Math.max(makespan, at);
      sumReady += at;
      if (unit.family >= 0) this.readyOfFamily[unit.family]?.push(at);
    });
    return { makespan, sumReady, omitted, omissionPrice };
  }

  private latenessPrice(): number {
    let price = 0;
    this.problem.families.forEach((family, f) => {
      if (family.latePrice === 0) return;
      const ready = (this.readyOfFamily[f] as number[]).sort((a, b) => a - b);
      ready.forEach((at, k) => {
        price += family.latePrice * Math.max(0, at - (family.dues[k] as number));
      });
    });
    return price;
  }
}

/** Fewest states that serve the stays in the order of their starts, less the first: what a chamber changes, but where a move
 * passes through a stay while it lasts. */
export function changesOf(chamber: Chamber, stays: readonly HeldStay[]): number {
  const first = stays.find(asksForState);
  if (first === undefined) return 0;
  let groups = 1;
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  const startsRight =
    (chamber.isSettled === true && chamber.underWay === undefined) ||
    (chamber.initial >= first.low && chamber.initial <= first.high && first.start === 0);
  if (startsRight) {
    low = chamber.initial;
    high = chamber.initial;
  }
  for (const stay of stays) {
    if (!asksForState(stay)) continue;
    low = Math.max(low, stay.low);
    high = Math.min(high, stay.high);
    if (low > high) {
      groups++;
      low = stay.low;
      high = stay.high;
    }
  }
  return groups - 1;
}
