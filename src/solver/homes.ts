// Which tasks of a schedule are away from where they were planned before: a task moved has a price. Used by the cost counter, by
// the models of the learning solver and, slowly, by the audit.
import type { Layout } from './layout.ts';
import type { Term } from './learning/engine.ts';
import { atLeast, atMost, isTrue, type Literal, negated } from './learning/literal.ts';
import type { ModelDraft } from './learning/modelDraft.ts';
import type { Home } from './problem.ts';
import type { Shop } from './shop.ts';
import { type ShopState, UNPLACED } from './shopState.ts';

type LaidHome = {
  readonly task: number;
  readonly variable: number;
  /** Time of the variable at home. */
  readonly time: number;
  readonly stay: number;
  readonly chamber: number;
  readonly uses: readonly { readonly use: number; readonly pool: number }[];
};

/** Homes by the variables, uses and stays of a shop. */
function laidHomes(shop: Shop): readonly LaidHome[] {
  const { problem, network } = shop;
  const homes = problem.homes ?? [];
  if (homes.length === 0 || (problem.prices.move ?? 0) === 0) return [];
  const usesOfTask = new Map<number, number[]>();
  shop.uses.forEach((use, u) => {
    usesOfTask.set(use.task, [...(usesOfTask.get(use.task) ?? []), u]);
  });
  return homes.map((home: Home) => ({
    task: home.task,
    variable: network.startVar[home.task] as number,
    time: home.start - (network.startOff[home.task] as number),
    stay: home.chamber < 0 ? -1 : shop.stays.findIndex((stay) => stay.task === home.task),
    chamber: home.chamber,
    uses: (usesOfTask.get(home.task) ?? []).flatMap((use) => {
      const pool = home.pools[shop.uses[use]?.indexInTask ?? -1] ?? -1;
      return pool < 0 ? [] : [{ use, pool }];
    }),
  }));
}

/** Counts moved tasks of a schedule in the making. */
export class MoveCounter {
  private readonly homes: readonly LaidHome[];
  private readonly state: ShopState;

  constructor(state: ShopState) {
    this.state = state;
    this.homes = laidHomes(state.shop);
  }

  count(): number {
    let moved = 0;
    for (const home of this.homes) if (this.isMoved(home)) moved++;
    return moved;
  }

  private isMoved({ variable, time, stay, chamber, uses }: LaidHome): boolean {
    const at = this.state.time[variable] as number;
    if (at === UNPLACED) return false;
    if (at !== time || (stay >= 0 && this.state.chamberOfStay[stay] !== chamber)) return true;
    for (const { use, pool } of uses) {
      const taken = this.state.poolOfUse[use] as number;
      if (taken >= 0 && taken !== pool) return true;
    }
    return false;
  }
}

/** The same of a layout, slowly. */
export function movedInLayout(shop: Shop, layout: Layout): number {
  if ((shop.problem.prices.move ?? 0) === 0) return 0;
  return (shop.problem.homes ?? []).filter((home) => {
    const start = layout.start[home.task] as number;
    if (start < 0) return false;
    const stay = shop.stays.findIndex((one) => one.task === home.task);
    const isElsewhere = home.chamber >= 0 && layout.chamber[stay] !== home.chamber;
    const isByOthers = shop.uses.some((use, u) => {
      const pool = home.pools[use.indexInTask] ?? -1;
      const taken = layout.pool[u] as number;
      return use.task === home.task && pool >= 0 && taken >= 0 && taken !== pool;
    });
    return start !== home.start || isElsewhere || isByOthers;
  }).length;
}

/** The price of moved tasks as terms of a model: a yes-or-no variable for each, true unless all of its home holds. */
export function moveTerms(
  model: ModelDraft,
  choices: {
    readonly pool: (use: number, pool: number) => Literal | null;
    readonly chamber: (stay: number, chamber: number) => Literal | null;
  },
  weight: number,
): Term[] {
  return laidHomes(model.shop).flatMap(({ task, variable, time, stay, chamber, uses }) => {
    if (model.plannedTask[task] === 0) return [];
    const moved = model.addFlag();
    const isIn = model.presenceOf(task);
    const isFree = [isTrue(moved), ...(isIn === null ? [] : [negated(isIn)])];
    model.clause(...isFree, atLeast(variable, time));
    model.clause(...isFree, atMost(variable, time));
    const rest = [...uses.map(({ use, pool }) => choices.pool(use, pool)), stay < 0 ? null : choices.chamber(stay, chamber)];
    for (const literal of rest) if (literal !== null) model.clause(...isFree, literal);
    return [{ variable: moved, weight }];
  });
}
