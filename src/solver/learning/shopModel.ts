// A shop as a model for the learning solver: which variables, clauses, arcs and propagators say the same as the problem.
// Units that are not planned are left away, or may be: see presence.ts. Stays that come and go together are beyond it, and so are
// prices too fine or large.
import { moveTerms } from '../homes.ts';
import { emptyLayout, type Layout, spanOf, timesOf } from '../layout.ts';
import type { Chamber, ShopProblem } from '../problem.ts';
import type { Shop, StayUse, UseOfPool } from '../shop.ts';
import { inTwinOrder, orderedTasks, type Twins, twinsOf } from '../twins.ts';
import { addBursts } from './burstModel.ts';
import { type CrowdUse, Engine, type Term } from './engine.ts';
import { isFalse, isTrue, type Literal, negated } from './literal.ts';
import type { ModelDraft } from './modelDraft.ts';
import { OrderModel } from './orderModel.ts';
import { type Part, Presence } from './presence.ts';
import { addPrice } from './priceModel.ts';
import { chambersOf, type StayModel } from './stayModel.ts';

/** Prices are multiplied by the first of these that makes them whole. */
const SCALES = [1, 2, 4, 5, 10, 20, 50, 100, 1000];
const LARGEST_TOTAL = 500_000_000;

/** Pools of capacity one with at most so many uses get a yes-or-no variable for each pair's order; fewer where uses may be elsewhere. */
const MOST_ORDERED = 240;
const MOST_ORDERED_IF = 100;

/** Whether the learning solver can hold a problem at all. */
export function scaleOf(problem: ShopProblem): number | null {
  if (problem.chambers.some((chamber) => chamber.together)) return null;
  const { makespan, stateChange, move = 0 } = problem.prices;
  const prices = [makespan, stateChange, move, ...problem.families.map((family) => family.latePrice)];
  const scale = SCALES.find((s) => prices.every((price) => Math.abs(price * s - Math.round(price * s)) < 1e-9));
  if (scale === undefined) return null;
  const late = problem.units.reduce((sum, unit) => sum + (problem.families[unit.family]?.latePrice ?? 0), 0);
  const total = scale * (problem.horizon * (makespan + late) + (stateChange + move) * problem.tasks.length);
  return total < LARGEST_TOTAL ? scale : null;
}

/** Above so many uses of a capacity the slower arguments about it take too long. */
const MOST_ENERGY_USES = 130;

/** Share of the longest day of any capacity from which one gets the slower arguments. */
const ENERGY_SHARE = 0.6;

/** When a use holds its places, and how many, whatever it depends on. */
function crowdSpan(use: UseOfPool): Omit<CrowdUse, 'condition'> {
  const { fromVar, fromOff, untilVar, untilOff, amount, minLength } = use;
  return { from: fromVar, fromOff, until: untilVar, untilOff, amount, length: minLength };
}

export class ShopModel implements ModelDraft {
  readonly engine = new Engine();
  /** The price, times `scale`, of what is in the model: with what units that may be left out of it then cost. */
  readonly objective: number;
  /** The variable that is at most every first mark, or -1; it wants to be late. */
  private readonly latestFirst: number;
  readonly scale: number;
  /** Whether no contradiction showed while building. */
  readonly isPossible: boolean;
  readonly twins: Twins;
  readonly shop: Shop;
  private readonly isThorough: boolean;
  readonly plannedTask: Uint8Array;
  readonly presence: Presence;
  /** Per use with a choice of pools: a yes-or-no variable for each. */
  readonly poolChoice: (readonly number[] | null)[];
  readonly stays: StayModel;
  private readonly orders = new OrderModel(this.engine, (...literals) => this.clause(...literals));
  private isConsistent = true;
  private readonly crowds: { readonly capacity: Int32Array; readonly list: readonly CrowdUse[]; readonly reach: number }[] = [];

  /**
   * `isThorough`: with the slower arguments about work that must happen between two times. `guessesChanges`: changes of state are counted as
   * most schedules need them, see chambersOf; no floor is proved then where they have a price. `isOpen`: which of the planned units
   * may be left out all the same, at their price.
   */
  constructor(
    shop: Shop,
    scale: number,
    isPlanned: (unit: number) => boolean,
    isThorough = false,
    guessesChanges = false,
    isOpen: (unit: number) => boolean = () => false,
  ) {
    this.shop = shop;
    this.isThorough = isThorough;
    this.scale = scale;
    const { problem, network } = shop;
    this.plannedTask = Uint8Array.from(problem.tasks, (_, i) => {
      const unit = shop.unitOfTask[i] as number;
      return unit < 0 || isPlanned(unit) ? 1 : 0;
    });
    for (let v = 0; v < network.variableCount; v++) {
      const earliest = network.earliest[v] as number;
      const latest = network.latest[v] as number;
      if (earliest > latest && this.isActive(v)) this.isConsistent = false;
      this.engine.addVariable(Math.min(earliest, latest), latest);
    }
    this.twins = twinsOf(shop, isPlanned);
    const partOf = (unit: number): Part => (isOpen(unit) ? 'open' : 'planned');
    this.presence = new Presence(this, (unit) => (isPlanned(unit) ? partOf(unit) : 'away'));
    this.presence.addTwinOrder(this, this.twins);
    this.addLags();
    addBursts(this, shop, this.twins);
    this.poolChoice = shop.uses.map((use) => this.addPoolChoice(use));
    this.addPools();
    this.stays = chambersOf(this, shop, (s) => this.plannedTask[(shop.stays[s] as StayUse).task] === 1, guessesChanges);
    this.addEnergies();
    this.addTwinOrder();
    this.orders.addOrders();
    const price = addPrice(this, isPlanned, this.stays.changes, this.moveTerms(), this.presence.terms);
    this.objective = price.total;
    this.latestFirst = price.first;
    const worth = new Float64Array(this.engine.variableCount);
    for (let v = 0; v < network.variableCount; v++)
      if (this.isActive(v)) worth[v] = 1 - (network.earliest[v] as number) / (problem.horizon + 1);
    this.isPossible = this.isConsistent && this.engine.freeze(worth);
  }

  private isActive(variable: number): boolean {
    if (this.activeVar === null) {
      const { network, problem } = this.shop;
      const active = new Uint8Array(network.variableCount);
      problem.tasks.forEach((_, i) => {
        if (this.plannedTask[i] === 0) return;
        active[network.startVar[i] as number] = 1;
        active[network.endVar[i] as number] = 1;
      });
      this.activeVar = active;
    }
    return this.activeVar[variable] === 1;
  }
  private activeVar: Uint8Array | null = null;

  /** A yes-or-no variable. */
  addFlag(): number {
    return this.engine.addVariable(0, 1);
  }

  clause(...literals: readonly Literal[]): void {
    if (!this.engine.addClause(literals)) this.isConsistent = false;
  }

  private addLags(): void {
    for (const { from, to, lag } of this.shop.network.arcs) {
      if (from !== to && Number.isFinite(lag) && this.isActive(from) && this.isActive(to)) this.engine.addArc(from, to, lag);
    }
  }

  private addPoolChoice(use: UseOfPool): readonly number[] | null {
    if (use.pools.length === 1 || this.plannedTask[use.task] === 0) return null;
    const flags = use.pools.map(() => this.addFlag());
    const { durations, task } = use;
    this.exactlyOne(flags, this.presenceOf(task));
    if (durations === null) return flags;
    const { startVar, startOff, endVar, endOff } = this.shop.network;
    const start = startVar[task] as number;
    const end = endVar[task] as number;
    const shift = (startOff[task] as number) - (endOff[task] as number);
    flags.forEach((flag, i) => {
      this.engine.addArc(start, end, (durations[i] as number) + shift, isTrue(flag));
      this.engine.addArc(end, start, -(durations[i] as number) - shift, isTrue(flag));
    });
    return flags;
  }

  presenceOf(task: number): Literal | null {
    return this.presence.ofTask(task);
  }

  exactlyOne(flags: readonly number[], when: Literal | null = null): void {
    this.clause(...flags.map(isTrue), ...(when === null ? [] : [negated(when)]));
    flags.forEach((a, i) => {
      if (when !== null) this.clause(isFalse(a), when);
      for (const b of flags.slice(i + 1)) this.clause(isFalse(a), isFalse(b));
    });
  }

  private addPools(): void {
    const { problem, uses } = this.shop;
    const inPool: CrowdUse[][] = problem.pools.map(() => []);
    const unions = new Map<string, CrowdUse[]>();
    uses.forEach((use, u) => {
      if (this.plannedTask[use.task] === 0) return;
      const span = crowdSpan(use);
      const flags = this.poolChoice[u] ?? null;
      use.pools.forEach((p, i) => {
        inPool[p]?.push({ ...span, condition: flags === null ? this.presenceOf(use.task) : isTrue(flags[i] as number) });
      });
      if (flags === null) return;
      const key = use.pools.join(',');
      unions.set(key, [...(unions.get(key) ?? []), { ...span, condition: this.presenceOf(use.task) }]);
    });
    inPool.forEach((list, p) => {
      this.addCrowd([p], list);
    });
    for (const [key, list] of unions) {
      const pools = key.split(',').map(Number);
      const inside = uses.flatMap((use, u): CrowdUse[] =>
        this.plannedTask[use.task] === 1 && this.poolChoice[u] === null && pools.includes(use.pools[0] as number)
          ? [{ ...crowdSpan(use), condition: this.presenceOf(use.task) }]
          : [],
      );
      this.addCrowd(pools, [...list, ...inside]);
    }
  }

  private addCrowd(pools: readonly number[], list: readonly CrowdUse[]): void {
    const { problem } = this.shop;
    const capacity = new Int32Array(problem.horizon);
    for (const p of pools) {
      for (const [from, until] of problem.pools[p]?.open ?? []) {
        for (let t = Math.max(0, from); t < Math.min(until, problem.horizon); t++) {
          capacity[t] = (capacity[t] as number) + (problem.pools[p]?.capacity ?? 0);
        }
      }
    }
    this.crowd(capacity, list);
  }

  /** Adds a capacity; pairs of uses that can never be side by side in it get an order of their own when they are few. */
  crowd(capacity: Int32Array, list: readonly CrowdUse[]): void {
    if (list.length === 0) return;
    this.engine.addCrowd(capacity, list);
    if (this.isThorough && list.length <= MOST_ENERGY_USES)
      this.crowds.push({ capacity, list, reach: this.reachOf(capacity, list) });
    const most = capacity.reduce((a, b) => Math.max(a, b), 0);
    const mostOrdered = list.every(({ condition }) => condition === null) ? MOST_ORDERED : MOST_ORDERED_IF;
    if (list.length > mostOrdered || 2 * Math.max(...list.map((use) => use.amount)) <= most) return;
    list.forEach((a, i) => {
      for (const b of list.slice(i + 1))
        if (a.length > 0 && b.length > 0 && a.amount + b.amount > most) this.orders.keepApart(a, b);
    });
  }

  /** How long all uses of a capacity take one after another, with what comes before the first and after the last. */
  private reachOf(capacity: Int32Array, list: readonly CrowdUse[]): number {
    const { engine } = this;
    const most = capacity.reduce((a, b) => Math.max(a, b), 1);
    const head = Math.min(...list.map(({ from, fromOff }) => engine.min(from) + fromOff));
    const tail = this.shop.problem.horizon - Math.max(...list.map(({ until, untilOff }) => engine.max(until) + untilOff));
    return head + list.reduce((sum, { amount, length }) => sum + amount * length, 0) / most + tail;
  }

  /** The slower arguments, for the capacities that can bind the day: those of the others only take time. */
  private addEnergies(): void {
    const most = Math.max(0, ...this.crowds.map(({ reach }) => reach));
    for (const { capacity, list, reach } of this.crowds) if (reach >= ENERGY_SHARE * most) this.engine.addEnergy(capacity, list);
  }

  orderFlag(from: number, to: number, lag: number): number {
    return this.orders.flag(from, to, lag);
  }

  private moveTerms(): readonly Term[] {
    const flagOf = (flags: readonly number[] | null, at: number): Literal | null =>
      flags === null || at < 0 ? null : isTrue(flags[at] as number);
    return moveTerms(
      this,
      {
        pool: (use, pool) => flagOf(this.choiceOf(use), this.shop.uses[use]?.pools.indexOf(pool) ?? -1),
        chamber: (stay, chamber) =>
          flagOf(this.stays.flags[stay] ?? null, this.shop.stays[stay]?.chambers.indexOf(chamber) ?? -1),
      },
      Math.round((this.shop.problem.prices.move ?? 0) * this.scale),
    );
  }

  private addTwinOrder(): void {
    const { problem, network } = this.shop;
    const order = (a: number, b: number, isStart: boolean): void => {
      const variable = isStart ? network.startVar : network.endVar;
      const offset = isStart ? network.startOff : network.endOff;
      this.engine.addArc(variable[a] as number, variable[b] as number, (offset[a] as number) - (offset[b] as number));
    };
    for (const group of this.twins.children) {
      const ordered = orderedTasks(problem, group[0] as number);
      for (let i = 1; i < group.length; i++) {
        const before = problem.units[group[i - 1] as number]?.tasks ?? [];
        (problem.units[group[i] as number]?.tasks ?? []).slice(0, ordered + 1).forEach((task, k) => {
          order(before[k] as number, task, true);
          if (k < ordered) order(before[k] as number, task, false);
        });
      }
    }
    for (const group of this.twins.parents) {
      for (let i = 1; i < group.length; i++) {
        const first = (g: number): number => problem.units[group[g]?.unit ?? 0]?.tasks[0] ?? 0;
        order(first(i - 1), first(i), true);
      }
    }
  }

  /** The schedule that stands in the bounds after a solution. */
  read(): Layout {
    const { shop } = this;
    const { network, problem } = shop;
    const { engine } = this;
    const layout = emptyLayout(shop);
    problem.tasks.forEach((_, i) => {
      if (!this.isIn(i)) return;
      layout.start[i] = engine.min(network.startVar[i] as number) + (network.startOff[i] as number);
      layout.end[i] = engine.min(network.endVar[i] as number) + (network.endOff[i] as number);
    });
    shop.uses.forEach((use, u) => {
      if (!this.isIn(use.task)) return;
      const flags = this.poolChoice[u] ?? null;
      const [from, until] = spanOf(shop, layout, use);
      const chosen = flags === null ? 0 : flags.findIndex((flag) => engine.min(flag) === 1);
      if (until > from) layout.pool[u] = use.pools[chosen] as number;
    });
    this.stays.read(layout);
    return layout;
  }

  /** Makes the values of a layout, in twin order, those the engine decides for first. Returns the layout as it stands then. */
  aimAt(layout: Layout): Layout {
    const sorted = inTwinOrder(this.shop, this.twins, layout);
    const { engine } = this;
    const { target } = engine;
    for (let v = 0; v < target.length; v++) target[v] = engine.min(v);
    const time = timesOf(this.shop, sorted);
    for (let v = 0; v < time.length; v++) if ((time[v] as number) >= 0) target[v] = time[v] as number;
    this.shop.uses.forEach((use, u) => {
      this.poolChoice[u]?.forEach((flag, i) => {
        target[flag] = use.pools[i] === sorted.pool[u] ? 1 : 0;
      });
    });
    this.stays.aimAt(sorted);
    this.presence.aimAt(this, sorted);
    this.orders.aimAt(target);
    if (this.latestFirst >= 0) target[this.latestFirst] = engine.max(this.latestFirst);
    return sorted;
  }

  /** Whether a layout is one of the model's schedules as far as its units go. */
  holds(layout: Layout): boolean {
    return this.shop.problem.tasks.every((_, i) => {
      const isPlanned = (layout.start[i] as number) >= 0;
      return isPlanned ? this.plannedTask[i] === 1 : this.plannedTask[i] === 0 || this.presenceOf(i) !== null;
    });
  }

  /** The price of a schedule that it holds, `total` by the problem, as the model counts it. */
  priceOf(layout: Layout, total: number): number {
    const { price, weight } = this.presence.leftOut(layout);
    return Math.floor((total - price) * this.scale + 1e-6) + weight;
  }

  private isIn(task: number): boolean {
    return this.plannedTask[task] === 1 && this.presence.isIn(this, task);
  }

  /** Yes-or-no variables of a use's pools, or null where there is no choice. */
  choiceOf(use: number): readonly number[] | null {
    return this.poolChoice[use] ?? null;
  }

  capacityOf(chambers: readonly Chamber[]): Int32Array {
    return new Int32Array(this.shop.problem.horizon).fill(chambers.reduce((sum, chamber) => sum + chamber.room, 0));
  }
}
