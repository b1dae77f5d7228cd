// A plan that was read back, as the schedule it describes, as far as this scenario has its trays: the start of a search.
// Used by planning.ts.
import type { Plan, Task } from '../model/plan.ts';
import { emptyLayout, type Layout } from '../solver/layout.ts';
import type { Demand } from '../solver/problem.ts';
import { shopOf } from '../solver/shop.ts';
import type { Compiled } from './shopProblem.ts';
import { marginsOf, waitsInPlace } from './shopTasks.ts';

type PlannedTray = { readonly id: string; readonly product: string; readonly tasks: readonly Task[] };
type PlannedBatch = {
  readonly id: string;
  readonly dough: string;
  readonly tasks: readonly Task[];
  readonly trays: readonly PlannedTray[];
};

function plannedBatches(plan: Plan): PlannedBatch[] {
  const inOrder = (tasks: readonly Task[]): Task[] => [...tasks].sort((a, b) => a.start - b.start || a.end - b.end);
  return plan.batches.map((batch) => {
    const mine = plan.tasks.filter((task) => task.batch === batch.id);
    const trays = batch.trays.map(({ id, product }) => ({
      id,
      product,
      tasks: inOrder(mine.filter((task) => task.tray === id)),
    }));
    return { id: batch.id, dough: batch.dough, tasks: inOrder(mine.filter((task) => task.tray === undefined)), trays };
  });
}

/**
 * Our number of each planned batch: of the same dough, with room for its trays, each number once. Null when there is no such
 * choice. Where a batch finds its numbers taken, another makes room (augmenting paths: Kuhn 1955, Naval Research Logistics 2).
 */
function batchNumbers(compiled: Compiled, planned: readonly PlannedBatch[]): number[] | null {
  const fits = planned.map((batch) => fittingBatches(compiled, batch));
  const holder = new Map<number, number>();
  const place = (i: number, tried: Set<number>): boolean => {
    for (const number of fits[i] as readonly number[]) {
      if (tried.has(number)) continue;
      tried.add(number);
      const before = holder.get(number);
      if (before !== undefined && !place(before, tried)) continue;
      holder.set(number, i);
      return true;
    }
    return false;
  };
  if (!planned.every((_, i) => place(i, new Set()))) return null;
  const numbers = new Array<number>(planned.length);
  for (const [number, i] of holder) numbers[i] = number;
  return numbers;
}

/** Our batches of the same dough that hold the trays of a planned one, the smallest first. */
function fittingBatches(compiled: Compiled, { id, dough, trays }: PlannedBatch): number[] {
  const own = compiled.batchNames.indexOf(id);
  if (own >= 0) return [own];
  const found = [...compiled.batches.keys()].filter((b) => {
    if (compiled.batchNames[b] !== null) return false;
    const ours = compiled.batches[b] as Compiled['batches'][number];
    const left = ours.trays.map((product) => product.id);
    return (
      ours.dough.id === dough &&
      trays.every(({ product }) => left.splice(left.indexOf(product), left.includes(product) ? 1 : 0).length > 0)
    );
  });
  return found.sort((a, b) => (compiled.batches[a]?.trays.length ?? 0) - (compiled.batches[b]?.trays.length ?? 0) || a - b);
}

class Filler {
  private readonly compiled: Compiled;
  private readonly plan: Plan;
  readonly layout: Layout;
  private readonly useOf = new Map<string, number>();
  private readonly stayOf = new Map<number, number>();

  constructor(compiled: Compiled, plan: Plan) {
    this.compiled = compiled;
    this.plan = plan;
    const shop = shopOf(compiled.problem);
    this.layout = emptyLayout(shop);
    shop.uses.forEach((use, u) => {
      this.useOf.set(`${use.task} ${use.indexInTask}`, u);
    });
    shop.stays.forEach((stay, s) => {
      this.stayOf.set(stay.task, s);
    });
    this.fixed();
  }

  /** What stands for no step has one time and place. */
  private fixed(): void {
    this.compiled.problem.tasks.forEach((task, i) => {
      if (this.compiled.stepOfTask[i] !== null) return;
      this.layout.start[i] = task.earliestStart;
      this.layout.end[i] = task.earliestStart + task.minDuration;
      const stay = this.stayOf.get(i);
      if (stay !== undefined) this.layout.chamber[stay] = task.stay?.chambers[0] ?? -1;
    });
  }

  /**
   * Puts the steps of a chain where the plan has them; false when it has them otherwise. Steps that are over in a day under way
   * have no task. `until`: when what follows a waiting last step begins.
   */
  chain(numbers: readonly number[], planned: readonly Task[], until: number | null): boolean {
    const { origin } = this.compiled;
    const seen = new Map<string, number>();
    const ordinals = planned.map(({ step }) => {
      seen.set(step, (seen.get(step) ?? 0) + 1);
      return seen.get(step) as number;
    });
    const steps = numbers.flatMap((task) => this.compiled.stepOfTask[task] ?? []);
    const at = steps.map(({ step, ordinal }) => planned.findIndex((mine, i) => mine.step === step.do && ordinals[i] === ordinal));
    const over = planned.length - steps.length;
    if (over < 0 || (origin === 0 && over > 0) || at.some((i, k) => i !== over + k)) return false;
    steps.forEach(({ task, step, old }, k) => {
      const mine = planned[over + k] as Task;
      const next = planned[over + k + 1];
      let end = mine.end;
      if (waitsInPlace(step)) {
        const following = steps[k + 1];
        if (following !== undefined && next !== undefined)
          end = next.start - marginsOf(following.step).before - marginsOf(step).after;
        else if (until !== null) end = until;
      }
      this.layout.start[task] = old?.state === 'begun' ? Math.max(0, old.start - origin) : mine.start - origin;
      this.layout.end[task] = end - origin;
      this.places(task, mine);
    });
    return true;
  }

  private places(task: number, mine: Task): void {
    const { roles } = this.compiled.shop;
    this.compiled.problem.tasks[task]?.demands.forEach((demand, d) => {
      const u = this.useOf.get(`${task} ${d}`);
      if (u === undefined) return;
      const isHands = roles[demand.pools[0] as number]?.kind === 'people';
      const name = isHands ? this.personFor(mine, demand) : mine.place?.id;
      const pool = demand.pools.find((p) => {
        const role = roles[p];
        if (role === undefined || name === undefined) return false;
        if (role.kind === 'people') return role.ids.includes(name);
        return role.kind === 'bench' || role.kind === 'rack' ? true : role.id === name;
      });
      this.layout.pool[u] = pool ?? -1;
    });
    const stay = this.stayOf.get(task);
    if (stay === undefined) return;
    this.layout.chamber[stay] = this.compiled.shop.decks.findIndex((deck) => deck.id === mine.place?.id);
  }

  /** Who does it; of a load that goes in together, whoever does it for any tray of the load. */
  private personFor(mine: Task, demand: Demand): string | undefined {
    const kind = demand.from.edge === 'end' ? 'unload' : demand.from.offset < 0 ? 'load' : null;
    const of = (task: Task): string | undefined => task.handsOn.find((hands) => kind === null || hands.for === kind)?.person;
    if (kind === null || of(mine) !== undefined) return of(mine);
    const load = this.plan.tasks.filter(
      (task) => task.step === 'bake' && task.place?.id === mine.place?.id && task.start === mine.start,
    );
    return load.map(of).find((person) => person !== undefined);
  }
}

export type Start = {
  /** Trays and batches that this scenario has otherwise are missing; what is there need not fit any more. */
  readonly layout: Layout;
  readonly isWhole: boolean;
};

/** The schedule of a plan of this scenario, or of another version of it with more or fewer trays, other places or other steps. */
export function startLayout(compiled: Compiled, plan: Plan): Start {
  const planned = plannedBatches(plan);
  const exact = batchNumbers(compiled, planned);
  const numbers = exact ?? likestNumbers(compiled, planned);
  const filler = new Filler(compiled, plan);
  const taken = new Set<number>();
  let isWhole = exact !== null;
  planned.forEach((batch, i) => {
    const b = numbers[i] as number;
    if (b < 0) return;
    const trunk = compiled.problem.units[compiled.batchUnits[b] as number]?.tasks ?? [];
    const first = Math.min(...batch.trays.map((tray) => firstStart(compiled, tray)));
    isWhole = filler.chain(trunk, batch.tasks, Number.isFinite(first) ? first : null) && isWhole;
    for (const tray of batch.trays) {
      const t = trayOf(compiled, b, tray, taken);
      if (t < 0) continue;
      taken.add(t);
      isWhole = filler.chain(compiled.trays[t]?.tasks ?? [], tray.tasks, null) && isWhole;
    }
  });
  return { layout: filler.layout, isWhole };
}

/** Our number of a planned tray: the one of its name, or one of its product in its batch that is not taken; -1 when there is none. */
function trayOf(compiled: Compiled, batch: number, tray: PlannedTray, taken: ReadonlySet<number>): number {
  const own = compiled.trays.findIndex(({ id }) => id === tray.id);
  if (own >= 0) return own;
  return compiled.trays.findIndex(
    (key, k) => key.id === null && key.batch === batch && key.product.id === tray.product && !taken.has(k),
  );
}

/** Where our batches are made up otherwise: for each planned one the batch of its dough that shares most trays with it, or -1. */
function likestNumbers(compiled: Compiled, planned: readonly PlannedBatch[]): number[] {
  const pairs = planned.flatMap((batch, i) =>
    compiled.batches.flatMap((ours, b) => {
      if (ours.dough.id !== batch.dough) return [];
      const left = ours.trays.map((product) => product.id);
      const shared = batch.trays.filter(
        ({ product }) => left.splice(left.indexOf(product), left.includes(product) ? 1 : 0).length > 0,
      );
      return [{ i, b, shared: shared.length }];
    }),
  );
  pairs.sort((x, y) => y.shared - x.shared || x.i - y.i || x.b - y.b);
  const numbers = planned.map(() => -1);
  const held = new Set<number>();
  for (const { i, b, shared } of pairs) {
    if (shared === 0 || numbers[i] !== -1 || held.has(b)) continue;
    numbers[i] = b;
    held.add(b);
  }
  return numbers;
}

/** When a tray takes over from its batch: its first step, or the loading before it. */
function firstStart(compiled: Compiled, tray: PlannedTray): number {
  const product = compiled.products.find((one) => one.product.id === tray.product)?.product;
  const step = product?.steps[0];
  return (tray.tasks[0]?.start ?? Number.POSITIVE_INFINITY) - (step === undefined ? 0 : marginsOf(step).before);
}
