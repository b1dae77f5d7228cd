// Heads and tails: how early a use or stay can begin, and how long after its end the makespan is at the earliest.
// Longest paths in the temporal network (Carlier 1982, EJOR 11, for the words head and tail).
import { NO_PATH } from '../network.ts';
import type { ShopProblem } from '../problem.ts';
import { type Shop, type StayUse, shortest, type UseOfPool } from '../shop.ts';

/**
 * Work of `length` on `amount` of capacity; `head` before its start, `tail` between its end and the makespan (below 0: it may
 * end after; NO_PATH: the makespan does not wait for it), `fromFirst`
 * between a first mark and its start: below 0 when it may begin before any first mark.
 */
export type Work = {
  readonly head: number;
  readonly length: number;
  readonly tail: number;
  readonly amount: number;
  readonly fromFirst: number;
  readonly unit: number;
  /** The time points it begins and ends at. */
  readonly from: Mark;
  readonly until: Mark;
};

export type Mark = { readonly variable: number; readonly offset: number };

function marksOf(
  shop: Shop,
  marks: readonly ({ readonly task: number; readonly edge: 'start' | 'end'; readonly offset: number } | null)[],
): Mark[] {
  const { network } = shop;
  return marks.flatMap((mark) => {
    if (mark === null) return [];
    const isStart = mark.edge === 'start';
    const variable = (isStart ? network.startVar : network.endVar)[mark.task] as number;
    return [{ variable, offset: ((isStart ? network.startOff : network.endOff)[mark.task] as number) + mark.offset }];
  });
}

/** Paths to the ready points and from the first marks of a problem, per variable. */
export class Paths {
  private readonly tails: Int32Array;
  private readonly fromFirsts: Int32Array;

  constructor(shop: Shop, problem: ShopProblem) {
    const count = shop.network.variableCount;
    this.tails = new Int32Array(count).fill(NO_PATH);
    this.fromFirsts = new Int32Array(count).fill(NO_PATH);
    const ready = marksOf(
      shop,
      problem.units.map((unit) => unit.ready),
    );
    const first = marksOf(shop, problem.firstMarks);
    const { component, members } = shop.network;
    for (const { variable, offset } of ready) {
      for (const v of members[component[variable] as number] as Int32Array) {
        const path = shortest(shop.network, v, variable);
        if (path !== NO_PATH) this.tails[v] = Math.max(this.tails[v] as number, path + offset);
      }
    }
    for (const { variable, offset } of first) {
      for (const v of members[component[variable] as number] as Int32Array) {
        const path = shortest(shop.network, variable, v);
        if (path !== NO_PATH) this.fromFirsts[v] = Math.max(this.fromFirsts[v] as number, path - offset);
      }
    }
  }

  /** Least time from a variable to the makespan, below 0 when it may come after it; NO_PATH when it does not lead to one. */
  tail(variable: number): number {
    return this.tails[variable] as number;
  }

  /** Least time from a first mark to a variable; NO_PATH when none leads to it. Negative: it may come before. */
  fromFirst(variable: number): number {
    return this.fromFirsts[variable] as number;
  }
}

/** What follows for work from when it begins and ends. */
function workBetween(shop: Shop, paths: Paths, task: number, from: Mark, until: Mark) {
  const head = (shop.network.earliest[from.variable] as number) + from.offset;
  const tail = paths.tail(until.variable);
  return {
    head: Math.max(0, head),
    tail: tail === NO_PATH ? NO_PATH : tail - until.offset,
    fromFirst: paths.fromFirst(from.variable) + from.offset,
    unit: shop.unitOfTask[task] as number,
    from,
    until,
  };
}

export function workOfUse(shop: Shop, paths: Paths, use: UseOfPool): Work {
  const from = { variable: use.fromVar, offset: use.fromOff };
  const until = { variable: use.untilVar, offset: use.untilOff };
  return { ...workBetween(shop, paths, use.task, from, until), length: use.minLength, amount: use.amount };
}

/** Work of a stay; its head waits for the chamber to reach a state it can use. */
export function workOfStay(shop: Shop, paths: Paths, stay: StayUse): Work {
  const reach = stay.chambers.map((c) => {
    const chamber = shop.problem.chambers[c] as ShopProblem['chambers'][number];
    const rise = (stay.low - chamber.initial) / chamber.riseRate;
    const fall = (chamber.initial - stay.high) / chamber.fallRate;
    return Math.max(0, Math.ceil(rise - 1e-9), Math.ceil(fall - 1e-9));
  });
  const from = { variable: stay.startVar, offset: stay.startOff };
  const until = { variable: stay.endVar, offset: stay.endOff };
  const work = workBetween(shop, paths, stay.task, from, until);
  return { ...work, head: Math.max(work.head, Math.min(...reach)), length: stay.minLength, amount: stay.room };
}
