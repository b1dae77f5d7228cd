// A plan laid beside its scenario for re-planning: the steps of each batch and tray with the task that does them, in order.
import type { Plan, Task } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { BatchStep, TrayStep } from '../../model/steps.ts';
import type { UnderwayTask } from '../../model/underway.ts';
import { type Range, rangeOf } from '../../model/units.ts';

export type Step = BatchStep | TrayStep;

/** One task of the plan with the step it does. Times are minutes from the start of the day. */
export type Job = {
  readonly task: Task;
  readonly step: Step;
  /** Which of the steps of this kind, from 1. */
  readonly ordinal: number;
  /** The one before it in its tray; of a tray's first, the last of its batch. */
  readonly before: Job | null;
  /** Whether nothing comes after it in its tray. */
  readonly isLast: boolean;
  /** Minutes of loading and unloading; 0 but on a bake. In an oven loaded together, the longest of the load. */
  readonly load: number;
  readonly unload: number;
  /** When it was to begin, loading included. */
  readonly plannedBegin: number;
  /** Minutes it lasts, at least and at most, with what it is known to need more. */
  readonly minutes: Range;
  /** What was said of it when the day was planned anew before. */
  readonly known: UnderwayTask | undefined;
};

export type TrayRuns = { readonly id: string; readonly product: string; readonly jobs: readonly Job[] };
export type BatchRuns = {
  readonly id: string;
  readonly dough: string;
  readonly jobs: readonly Job[];
  readonly trays: readonly TrayRuns[];
};

/** Steps that go on by themselves until the next step begins. */
export function restsByItself(step: Step): boolean {
  return ['bulk', 'rest', 'retard', 'proof', 'cool'].includes(step.do);
}

export function stepMinutes(step: Step): Range {
  return rangeOf('minutes' in step ? step.minutes : step.minutesPerTray);
}

/** Bakes that go in together, by the id of each: one alone, or all of a load on a deck that is loaded together. */
export function loadsOf(plan: Plan): ReadonlyMap<string, readonly Task[]> {
  const together = new Set(plan.bakehouse.decks.filter(({ loading }) => loading === 'together').map(({ id }) => id));
  const loads = new Map<string, Task[]>();
  const byId = new Map<string, Task[]>();
  for (const task of plan.tasks) {
    if (task.step !== 'bake') continue;
    const deck = task.place?.id ?? '';
    const key = together.has(deck) ? `${deck} ${task.start}` : task.id;
    const load = loads.get(key) ?? [];
    load.push(task);
    loads.set(key, load);
    byId.set(task.id, load);
  }
  return byId;
}

type Pair = { readonly step: Step; readonly task: Task; readonly ordinal: number };

/** The task of each step: the first bake in time does the first bake of the product, and so on. */
function pairs(steps: readonly Step[], tasks: readonly Task[]): readonly Pair[] {
  const waiting = [...tasks].sort((a, b) => a.start - b.start || a.end - b.end);
  return steps.map((step, index) => {
    const at = waiting.findIndex((task) => task.step === step.do);
    const [task] = at < 0 ? [] : waiting.splice(at, 1);
    if (task === undefined) throw new RangeError(`the plan has no ${step.do} where the scenario asks for one`);
    return { step, task, ordinal: steps.slice(0, index).filter((earlier) => earlier.do === step.do).length + 1 };
  });
}

function keyOf(batch: string, tray: string | undefined, step: string, ordinal: number): string {
  return JSON.stringify([batch, tray ?? null, step, ordinal]);
}

type Laid = {
  readonly loads: ReadonlyMap<string, readonly Task[]>;
  readonly stepById: ReadonlyMap<string, Step>;
  readonly known: ReadonlyMap<string, UnderwayTask>;
};

/** Longest loading or unloading among the bakes of a load. */
function marginsOf(task: Task, { loads, stepById }: Laid): { readonly load: number; readonly unload: number } {
  const bakes = (loads.get(task.id) ?? []).flatMap(({ id }) => {
    const step = stepById.get(id);
    return step?.do === 'bake' ? [step] : [];
  });
  return { load: Math.max(0, ...bakes.map(({ load }) => load)), unload: Math.max(0, ...bakes.map(({ unload }) => unload)) };
}

function chain(paired: readonly Pair[], laid: Laid, before: Job | null, isTray: boolean): readonly Job[] {
  const jobs: Job[] = [];
  for (const { step, task, ordinal } of paired) {
    const { load, unload } = marginsOf(task, laid);
    const known = laid.known.get(keyOf(task.batch, task.tray, step.do, ordinal));
    const { min, max } = stepMinutes(step);
    const more = known?.moreMinutes ?? 0;
    jobs.push({
      task,
      step,
      ordinal,
      before: jobs.at(-1) ?? before,
      isLast: isTray && jobs.length === paired.length - 1,
      load,
      unload,
      plannedBegin: task.start - load,
      minutes: { min: min + more, max: max + more },
      known,
    });
  }
  return jobs;
}

function tasksBy(plan: Plan, keyOfTask: (task: Task) => string | undefined): ReadonlyMap<string, readonly Task[]> {
  const groups = new Map<string, Task[]>();
  for (const task of plan.tasks) {
    const key = keyOfTask(task);
    if (key === undefined) continue;
    const group = groups.get(key) ?? [];
    group.push(task);
    groups.set(key, group);
  }
  return groups;
}

/** The batches of a plan that keeps the rules of its scenario. */
export function runsOf(scenario: Scenario, plan: Plan): readonly BatchRuns[] {
  const ofBatch = tasksBy(plan, (task) => (task.tray === undefined ? task.batch : undefined));
  const ofTray = tasksBy(plan, (task) => task.tray);
  const paired = plan.batches.map(({ id, dough, trays }) => ({
    id,
    dough,
    own: pairs(scenario.doughs.find((one) => one.id === dough)?.steps ?? [], ofBatch.get(id) ?? []),
    trays: trays.map((tray) => {
      const steps = scenario.products.find((product) => product.id === tray.product)?.steps ?? [];
      return { ...tray, own: pairs(steps, ofTray.get(tray.id) ?? []) };
    }),
  }));
  const all = paired.flatMap(({ own, trays }) => [...own, ...trays.flatMap((tray) => tray.own)]);
  const known = (scenario.underway?.tasks ?? []).map(
    (task) => [keyOf(task.batch, task.tray, task.step, task.ordinal), task] as const,
  );
  const laid = { loads: loadsOf(plan), stepById: new Map(all.map(({ task, step }) => [task.id, step])), known: new Map(known) };
  return paired.map(({ id, dough, own, trays }) => {
    const jobs = chain(own, laid, null, false);
    return {
      id,
      dough,
      jobs,
      trays: trays.map((tray) => ({
        id: tray.id,
        product: tray.product,
        jobs: chain(tray.own, laid, jobs.at(-1) ?? null, true),
      })),
    };
  });
}

/** Every job, by when it was to begin. */
export function jobsOf(batches: readonly BatchRuns[]): readonly Job[] {
  const jobs = batches.flatMap((batch) => [...batch.jobs, ...batch.trays.flatMap((tray) => tray.jobs)]);
  return jobs.sort((a, b) => a.plannedBegin - b.plannedBegin || a.task.end - b.task.end || (a.task.id < b.task.id ? -1 : 1));
}
