// A plan laid beside its scenario, as every rule reads it: trays and batches with each step's begin and end in minutes.
import { type Clock, clockOf } from '../model/clock.ts';
import type { Dough, Product, Scenario } from '../model/scenario.ts';
import type { BatchStep, TrayStep } from '../model/steps.ts';
import type { UnderwayTask } from '../model/underway.ts';
import type { WrittenPlan } from '../model/writtenPlan.ts';
import { type DeckDay, deckDays } from './deckDays.ts';
import { type NamedTask, nameTasks } from './nameTasks.ts';
import { orderedTrays, type ProductOrders } from './orderedTrays.ts';
import { type OvenLoad, ovenLoads, type PairedBake } from './ovenLoads.ts';
import type { PairedStep } from './pairSteps.ts';
import { plannedBatches, plannedTrays } from './plannedTrays.ts';
import { type RecordOf, recordsOf } from './records.ts';
import { type RememberedClock, rememberedClock } from './rememberedClock.ts';

/** A step a task does. Minutes from the start of the day. */
export type StepRun = {
  readonly step: BatchStep | TrayStep;
  readonly named: NamedTask;
  /** When the step begins to need its tray: the task's start; for a bake, when loading begins. */
  readonly begins: number;
  /** When the step is done: the task's end; for a bake, when unloading ends. */
  readonly done: number;
  /** Only on a bake. */
  readonly load?: OvenLoad;
  /** What the scenario says of it, when the day is under way and the step was known before. */
  readonly record?: UnderwayTask;
};

type Run = {
  readonly id: string;
  /** One for each step, in order; undefined where no task does it. */
  readonly runs: readonly (StepRun | undefined)[];
  readonly spare: readonly NamedTask[];
};
export type TrayRun = Run & { readonly product: Product; readonly batch: string | undefined };
export type BatchRun = Run & {
  readonly dough: Dough;
  readonly trays: readonly TrayRun[];
  /** When the first of its trays began that had begun by now and are left out; undefined when there is none. */
  readonly leftOutBegan: number | undefined;
};

export type JudgedDay = RememberedClock & {
  readonly scenario: Scenario;
  readonly plan: WrittenPlan;
  readonly clock: Clock;
  /** What the orders need, product by product. */
  readonly ordered: readonly ProductOrders[];
  readonly tasks: readonly NamedTask[];
  readonly trays: readonly TrayRun[];
  readonly batches: readonly BatchRun[];
  /** The scenario's decks by oven/deck, each with its set point minute by minute. */
  readonly decks: ReadonlyMap<string, DeckDay>;
};

function stepRun(
  { step, named }: PairedStep<BatchStep | TrayStep>,
  loads: ReadonlyMap<NamedTask, OvenLoad>,
  record: UnderwayTask | undefined,
): StepRun {
  const load = loads.get(named);
  const { start, end } = named.task;
  const known = record === undefined ? {} : { record };
  if (load === undefined) return { step, named, begins: start, done: end, ...known };
  return { step, named, begins: start - load.loadMinutes, done: end + load.unloadMinutes, load, ...known };
}

/** The runs of one tray or batch; `recordOf` gives what is known of its n-th step of a kind. */
function stepRuns(
  paired: readonly (PairedStep<BatchStep | TrayStep> | undefined)[],
  steps: readonly (BatchStep | TrayStep)[],
  loads: ReadonlyMap<NamedTask, OvenLoad>,
  recordOf: RecordOf,
): readonly (StepRun | undefined)[] {
  return paired.map((pair, index) => {
    if (pair === undefined) return undefined;
    const ordinal = steps.slice(0, index + 1).filter((step) => step.do === pair.step.do).length;
    return stepRun(pair, loads, recordOf(pair.step.do, ordinal));
  });
}

function pairedBake(pair: PairedStep<TrayStep> | undefined): readonly PairedBake[] {
  return pair?.step.do === 'bake' ? [{ step: pair.step, named: pair.named }] : [];
}

/** Of the trays of a batch that have begun and are not planned any more: when the first began, its loading included. */
function leftOutBegan(scenario: Scenario, batchId: string, planned: ReadonlyMap<string, TrayRun>): number | undefined {
  const { underway } = scenario;
  const trays = underway?.batches.find(({ id }) => id === batchId)?.trays ?? [];
  const begins = trays.flatMap(({ id, product }) => {
    const [first] = scenario.products.find((one) => one.id === product)?.steps ?? [];
    if (planned.has(id) || first === undefined) return [];
    const record = underway?.tasks.find((task) => task.tray === id && task.step === first.do && task.ordinal === 1);
    if (record === undefined || record.state === 'planned') return [];
    return [record.start - (first.do === 'bake' ? first.load : 0)];
  });
  return begins.length === 0 ? undefined : Math.min(...begins);
}

export function judgedDayOf(scenario: Scenario, plan: WrittenPlan): JudgedDay {
  const clock = clockOf(scenario);
  const tasks = nameTasks(plan.tasks);
  const decks = deckDays(scenario, plan, clock.minutes);
  const planned = plannedTrays(scenario, plan, tasks);
  const bakes = planned.flatMap((tray) => tray.paired.flatMap(pairedBake));
  const loads = ovenLoads(bakes, (deckId) => decks.get(deckId)?.oven.loading === 'together');
  const records = recordsOf(scenario.underway);
  const trayById = new Map(
    planned.map(({ id, product, batch, paired, spare }) => {
      const runs = stepRuns(paired, product.steps, loads, records.ofTray(id));
      const tray: TrayRun = { id, product, batch, runs, spare };
      return [id, tray];
    }),
  );
  const batches = plannedBatches(scenario, plan, tasks, planned).map(({ id, dough, trays, paired, spare }) => ({
    id,
    dough,
    trays: trays.flatMap((tray) => trayById.get(tray.id) ?? []),
    runs: stepRuns(paired, dough.steps, loads, records.ofBatch(id)),
    spare,
    leftOutBegan: leftOutBegan(scenario, id, trayById),
  }));
  const times = rememberedClock(clock);
  const ordered = orderedTrays(scenario, times.minuteOf);
  return { ...times, scenario, plan, clock, ordered, tasks, trays: [...trayById.values()], batches, decks };
}
