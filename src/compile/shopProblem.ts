// A scenario as a shop problem, with the key to read its schedules back: which task is which step of which batch or tray.
// Of a day under way only what is left is the problem; its time 0 is now.
import { type Clock, clockOf } from '../model/clock.ts';
import type { Product, Scenario } from '../model/scenario.ts';
import type { UnderwayTask } from '../model/underway.ts';
import type { Burst, Family, FirstMark, Home, Link, ShopProblem, ShopTask, Unit } from '../solver/problem.ts';
import { type Batch, batchesOf, kgOfTrays } from './batches.ts';
import { type OldBatch, type OldChain, oldBatches, oldPlaces, taskAtWork, taskToCome, waitAfter } from './remainder.ts';
import { type ShopPools, shopPoolsOf } from './shopPools.ts';
import { handMarks, lagBetween, marginsOf, type Step, taskOf } from './shopTasks.ts';
import { outages, shopFromNow, staying } from './sinceNow.ts';
import { type ProductTrays, traysOf } from './trays.ts';

/** A step of a batch (tray null) or of a tray, and the task that stands for it. */
export type StepTask = {
  readonly task: number;
  readonly step: Step;
  readonly batch: number;
  readonly tray: number | null;
  readonly ordinal: number;
  /** What the day under way says of it; null when it was not planned before. */
  readonly old: UnderwayTask | null;
};

export type TrayKey = {
  readonly product: Product;
  readonly batch: number;
  /** Its unit, or -1 when all its steps are over. */
  readonly unit: number;
  /** Tasks of the steps that are not over. */
  readonly tasks: readonly number[];
  /** What it is called already; null: it gets a name when its plan is known. */
  readonly id: string | null;
  /** Minute at which it was ready, when all its steps are over. */
  readonly doneMinute: number | null;
};

/** A step that is over before the problem begins. */
export type OverStep = { readonly step: Step; readonly batch: number; readonly tray: number | null; readonly old: UnderwayTask };

export type Compiled = {
  readonly problem: ShopProblem;
  readonly clock: Clock;
  /** The minute of the day that is the problem's time 0. */
  readonly origin: number;
  readonly shop: ShopPools;
  readonly products: readonly ProductTrays[];
  readonly batches: readonly Batch[];
  readonly trays: readonly TrayKey[];
  /** Null: the task stands for no step; it only keeps a place out of use, or a batch together. */
  readonly stepOfTask: readonly (StepTask | null)[];
  /** Per batch its unit, or -1 when all of it is over. */
  readonly batchUnits: readonly number[];
  /** Per batch what it is called already, or null. */
  readonly batchNames: readonly (string | null)[];
  readonly over: readonly OverStep[];
  /** Whether the judge would allow plans that this problem does not: its floor says nothing of the scenario then. */
  readonly isNarrowed: boolean;
};

/** A task of no length at time 0 in nobody's way. */
const MOMENT: Omit<ShopTask, 'id'> = {
  minDuration: 0,
  maxDuration: 0,
  earliestStart: 0,
  latestStart: 0,
  latestEnd: 0,
  demands: [],
};

/** Whether a step is over: a tray off its deck is, though it is still being unloaded. */
function isOver(step: Step, { state, end }: UnderwayTask, now: number): boolean {
  return state === 'ended' || (step.do === 'bake' && state === 'begun' && end <= now);
}

class Draft {
  readonly tasks: ShopTask[] = [];
  readonly links: Link[] = [];
  readonly bursts: Burst[] = [];
  readonly units: Unit[] = [];
  readonly firstMarks: FirstMark[] = [];
  readonly homes: Home[] = [];
  readonly stepOfTask: (StepTask | null)[] = [];
  readonly trays: TrayKey[] = [];
  readonly batchUnits: number[] = [];
  readonly over: OverStep[] = [];
  private readonly shop: ShopPools;
  private readonly scenario: Scenario;
  private readonly horizon: number;
  private readonly now: number;

  constructor(scenario: Scenario, shop: ShopPools, horizon: number) {
    this.scenario = scenario;
    this.shop = shop;
    this.horizon = horizon;
    this.now = scenario.underway?.now ?? 0;
  }

  addTask(task: ShopTask, stands: StepTask | null): number {
    this.tasks.push(task);
    this.stepOfTask.push(stands);
    return this.tasks.length - 1;
  }

  /** Tasks of the steps of a batch or tray that are not over, each linked to the one before. */
  private chain(
    id: string,
    steps: readonly Step[],
    batch: number,
    tray: number | null,
    kg: number,
    old: OldChain | null,
  ): number[] {
    const numbers: number[] = [];
    let before: { readonly step: Step; readonly old: UnderwayTask | null; readonly task: number } | null = null;
    steps.forEach((step, i) => {
      const oldTask: UnderwayTask | null = old?.tasks[i] ?? null;
      if (oldTask !== null && isOver(step, oldTask, this.now)) {
        this.over.push({ step, batch, tray, old: oldTask });
        before = { step, old: oldTask, task: -1 };
        return;
      }
      const ordinal = steps.slice(0, i).filter((earlier) => earlier.do === step.do).length + 1;
      const isLast = tray !== null && i === steps.length - 1;
      const task = this.addStep(`${id}/${step.do}`, { step, batch, tray, ordinal, old: oldTask }, kg, isLast);
      if (before !== null) this.follow(before, task, step, oldTask);
      before = { step, old: oldTask, task };
      numbers.push(task);
    });
    return numbers;
  }

  private addStep(id: string, stands: Omit<StepTask, 'task'>, kg: number, isLast: boolean): number {
    const { step, old } = stands;
    const number = this.tasks.length;
    const task = taskOf(this.shop, id, step, kg, this.horizon, isLast, this.scenario.people !== undefined);
    this.addTask(old === null ? task : this.oldTask(number, task, step, old, isLast), { ...stands, task: number });
    if (old?.state !== 'begun') for (const mark of handMarks(step)) this.firstMarks.push({ task: number, ...mark });
    return number;
  }

  private oldTask(number: number, task: ShopTask, step: Step, old: UnderwayTask, isLast: boolean): ShopTask {
    const places = oldPlaces(this.shop, task, old);
    if (old.state === 'begun') return taskAtWork(task, step, old, places, this.now, isLast);
    this.homes.push({ task: number, start: old.start - this.now, chamber: places.chamber, pools: places.pools });
    return taskToCome(this.shop, task, step, old, places, this.now, isLast);
  }

  /** A step after the one before it, which may be over. */
  private follow(
    before: { readonly step: Step; readonly old: UnderwayTask | null; readonly task: number },
    task: number,
    step: Step,
    old: UnderwayTask | null,
  ): void {
    const lag = lagBetween(before.task, before.step, task, step);
    const max = lag.min + waitAfter(before.step, before.old);
    if (before.task >= 0) this.links.push({ ...lag, max });
    else if (old?.state !== 'begun') {
      const done = (before.old as UnderwayTask).end - this.now;
      this.narrow(task, done + lag.min, done + max);
    }
  }

  /** Bounds the start of a task. */
  private narrow(number: number, earliest: number, latest: number): void {
    const task = this.tasks[number] as ShopTask;
    this.tasks[number] = {
      ...task,
      earliestStart: Math.max(task.earliestStart, earliest),
      latestStart: Math.min(task.latestStart ?? Number.POSITIVE_INFINITY, latest),
    };
  }

  addBatch(batch: Batch, b: number, familyOf: ReadonlyMap<string, number>, old: OldBatch | null): void {
    const trunk = this.chain(`batch ${b}`, batch.dough.steps, b, null, batch.kg, old);
    const isTrayOver = (tray: OldChain, product: Product | undefined): boolean =>
      tray.tasks.every((task, i) => isOver(product?.steps[i] as Step, task, this.now));
    const isAllOver = old?.trays.every((tray, t) => isTrayOver(tray, batch.trays[t])) === true;
    if (isAllOver) this.batchUnits.push(-1);
    else {
      if (trunk.length === 0) trunk.push(this.addTask({ ...MOMENT, id: `batch ${b}` }, null));
      this.batchUnits.push(this.units.length);
      this.units.push({ id: `batch ${b}`, tasks: trunk, parent: null, omissionPrice: 0, ready: null, family: -1 });
    }
    const unit = this.batchUnits[b] as number;
    const firsts = batch.trays.flatMap((product, t) =>
      this.addTray(product, b, unit, batch.kg, familyOf.get(product.id) ?? -1, old?.trays[t] ?? null),
    );
    if (isAllOver) return;
    this.addBurst(batch, trunk.at(-1) as number, firsts, old);
    if (old !== null) this.tie(trunk.at(-1) as number, unit);
  }

  /** Trays at work belong to their batch, however long ago it was done. */
  private tie(after: number, unit: number): void {
    for (const { parent, tasks } of this.units) {
      const [to] = tasks;
      if (parent === unit && to !== undefined)
        this.links.push({ from: after, fromEdge: 'end', to, toEdge: 'start', min: 0, max: this.horizon });
    }
  }

  /** The trays of a batch that have not begun: soon after one another, and the first of all soon after the batch. */
  private addBurst(batch: Batch, after: number, firsts: readonly number[], old: OldBatch | null): void {
    const last = batch.dough.steps.at(-1) as Step;
    const lastOld = old?.tasks.at(-1) ?? null;
    const begun = (old?.trays ?? []).flatMap((tray, t) => {
      const [first] = tray.tasks;
      if (first === undefined || first.state === 'planned') return [];
      return [first.start - marginsOf(batch.trays[t]?.steps[0] as Step).before];
    });
    const waiting = firsts.filter((task) => this.stepOfTask[task]?.old?.state !== 'begun');
    const lead = (task: number): number => marginsOf((this.stepOfTask[task] as StepTask).step).before;
    const overrun = (task: number): number => this.stepOfTask[task]?.old?.overrunMinutes ?? 0;
    const { shapeWithin } = batch.dough;
    const done = (lastOld?.end ?? 0) - this.now;
    if (begun.length > 0) {
      const first = Math.min(...begun) - this.now;
      for (const task of waiting) this.narrow(task, lead(task), first + shapeWithin + overrun(task) + lead(task));
      return;
    }
    const wait = waitAfter(last, lastOld);
    const left = lastOld?.state === 'ended' ? Math.max(0, done + wait) : wait;
    // Whichever tray goes first, it may be as late as this.
    const late = waiting.length === 0 ? 0 : Math.min(...waiting.map(overrun));
    const within = shapeWithin + late;
    const members = waiting.map((task) => ({ task, lead: lead(task) }));
    if (members.length > 0) this.bursts.push({ after, members, within, wait: left + late });
  }

  /** The first task of the tray when its first step is not over. */
  private addTray(product: Product, b: number, parent: number, kg: number, family: number, old: OldChain | null): number[] {
    const tray = this.trays.length;
    const tasks = this.chain(`tray ${tray}`, product.steps, b, tray, kg, old);
    const offset = marginsOf(product.steps.at(-1) as Step).after;
    const id = old?.id ?? null;
    const last = tasks.at(-1);
    if (last === undefined) {
      const doneMinute = (old?.tasks.at(-1)?.end ?? 0) + offset;
      this.trays.push({ product, batch: b, unit: -1, tasks, id, doneMinute });
      return [];
    }
    const ready = { task: last, edge: 'end' as const, offset };
    this.trays.push({ product, batch: b, unit: this.units.length, tasks, id, doneMinute: null });
    this.units.push({ id: `tray ${tray}`, tasks, parent, omissionPrice: this.scenario.goals.leftOutTray, ready, family });
    return tasks.length === product.steps.length ? [tasks[0] as number] : [];
  }
}

/** Batches as they were dealt before, then those of the trays the orders need beyond them. */
function allBatches(scenario: Scenario, products: readonly ProductTrays[], old: readonly OldBatch[]): readonly Batch[] {
  const before = new Map<string, number>();
  for (const { trays } of old) for (const { product } of trays) before.set(product, (before.get(product) ?? 0) + 1);
  const anew = products.flatMap(({ product, trays, dues }) => {
    const had = before.get(product.id) ?? 0;
    return trays > had ? [{ product, trays: trays - had, dues: dues.slice(had) }] : [];
  });
  const productById = new Map(scenario.products.map((product) => [product.id, product]));
  const dealt = old.map((batch) => oldBatch(scenario, batch, productById));
  return [...dealt, ...batchesOf(scenario, anew)];
}

function oldBatch(scenario: Scenario, old: OldBatch, productById: ReadonlyMap<string, Product>): Batch {
  const dough = scenario.doughs.find(({ id }) => id === old.dough);
  const trays = old.trays.flatMap(({ product }) => productById.get(product) ?? []);
  if (dough === undefined || trays.length !== old.trays.length)
    throw new RangeError(`batch ${old.id} of the day under way is of a dough or product the scenario has not`);
  return { dough, kg: kgOfTrays(trays, dough), trays };
}

/** Due times left: those the trays that are ready already have met or missed are theirs. */
function familiesOf(draft: Draft, products: readonly ProductTrays[], latePrice: number, now: number): Family[] {
  return products.map(({ product, dues }) => {
    const done = draft.trays.filter((tray) => tray.product.id === product.id && tray.doneMinute !== null).length;
    return { dues: dues.slice(done).map((due) => due - now), latePrice };
  });
}

/** Whether hands were at work before now: then the day's first minute of work is known. */
export function hasWorked({ over, stepOfTask }: Pick<Compiled, 'over' | 'stepOfTask'>): boolean {
  const isWork = (step: Step): boolean => handMarks(step).length > 0;
  return (
    over.some(({ step }) => isWork(step)) || stepOfTask.some((stands) => stands?.old?.state === 'begun' && isWork(stands.step))
  );
}

/** Compiles a scenario that has been read and found sound. */
export function compileScenario(scenario: Scenario): Compiled {
  const clock = clockOf(scenario);
  const origin = scenario.underway?.now ?? 0;
  const { shop, isNarrowed } = shopFromNow(scenario, shopPoolsOf(scenario, clock), clock);
  const products = traysOf(scenario, clock);
  const old = scenario.underway === undefined ? [] : oldBatches(scenario, scenario.underway);
  const batches = allBatches(scenario, products, old);
  const familyOf = new Map(products.map(({ product }, f) => [product.id, f]));
  const horizon = clock.minutes - origin;
  const draft = new Draft(scenario, shop, horizon);
  batches.forEach((batch, b) => {
    draft.addBatch(batch, b, familyOf, old[b] ?? null);
  });
  for (const task of outages(scenario, shop)) draft.addTask(task, null);
  const { links, bursts, units, firstMarks, trays, stepOfTask, batchUnits, over, homes } = draft;
  const tasks = staying(scenario, shop, draft.tasks, (task) => stepOfTask[task]?.old?.state === 'begun');
  const { goals, underway } = scenario;
  const prices = {
    makespan: goals.finishMinute,
    stateChange: goals.temperatureChange,
    fromFirstMark: goals.aim === 'start-late' && !hasWorked(draft),
    ...(underway === undefined ? {} : { move: underway.movePrice }),
  };
  const families = familiesOf(draft, products, goals.lateTrayMinute, origin);
  const { pools, chambers } = shop;
  const rest = underway === undefined ? {} : { homes };
  const problem = { horizon, tasks, links, bursts, pools, chambers, units, families, firstMarks, prices, ...rest };
  const batchNames = batches.map((_, b) => old[b]?.id ?? null);
  return { problem, clock, origin, shop, products, batches, trays, stepOfTask, batchUnits, batchNames, over, isNarrowed };
}
