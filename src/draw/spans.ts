// Stays of trays and batches in places: which positions, from when to when, and how long the place is kept after the step.
import type { Plan, Task } from '../model/plan.ts';
import type { Kind, Kinds } from './kinds.ts';
import type { Chain } from './names.ts';
import { stintsOf } from './stints.ts';

export type Span = {
  readonly start: number;
  /** Excluded. */
  readonly end: number;
  /** Minute at which the place is free, excluded; the tray may wait in it for the next step. */
  readonly heldUntil: number;
  readonly kind: Kind;
  /** Trays in it; 1 for a batch. */
  readonly trays: number;
  /** First of its positions, from 1. */
  readonly position: number;
  /** Positions side by side. */
  readonly positions: number;
  readonly tasks: readonly Task[];
  /** How it differs from the plan before; trays with the same difference are drawn as one. Empty: as it was, or never planned. */
  readonly change: string;
};

/** Minute at which each bake's loading begins, where the plan can say: it names people. */
function loadingStarts(plan: Plan): ReadonlyMap<string, number> {
  const hasPeople = plan.bakehouse.people.length > 0;
  const loads = stintsOf(plan).filter(({ does, person }) => does === 'load' && (person !== null || hasPeople));
  return new Map(loads.flatMap(({ start, tasks }) => tasks.map(({ id }) => [id, start] as const)));
}

/** The kind a task's bar shows. */
export function kindOf(kinds: Kinds, task: Task): Kind {
  return task.product === undefined ? kinds.ofBatch(task.batch) : kinds.ofProduct(task.product);
}

/** Trays in no counted place lie side by side as the sheet likes. Batches stay apart: each has its own kilograms. */
function isLoose(span: Span): boolean {
  return span.tasks.every((task) => task.place === undefined && task.tray !== undefined);
}

function joins(last: Span, next: Span): boolean {
  const isSame = last.kind === next.kind && last.start === next.start && last.end === next.end;
  const isBeside = next.position === last.position + last.positions || (isLoose(last) && isLoose(next));
  return (
    isSame &&
    isBeside &&
    last.change === next.change &&
    last.heldUntil === next.heldUntil &&
    last.tasks[0]?.step === next.tasks[0]?.step
  );
}

function joined(last: Span, next: Span): Span {
  const tasks = [...last.tasks, ...next.tasks];
  return { ...last, trays: last.trays + next.trays, positions: last.positions + next.positions, tasks };
}

/** When the place before a task is free. Where nobody is named a plan is silent on how long loading takes: as the step ends. */
function leavesAt(next: Task, loading: ReadonlyMap<string, number>): number {
  return next.step === 'bake' ? (loading.get(next.id) ?? 0) : next.start;
}

/** Changes by task, as text to compare. */
function changeOf(plan: Plan, task: Task): string {
  const from = plan.underway?.moved.find((one) => one.task === task.id)?.from;
  if (from === undefined) return '';
  return JSON.stringify([
    task.start - from.start,
    from.place?.id === task.place?.id ? '' : from.place?.id,
    from.start === task.start ? from.people : [],
  ]);
}

/** Spans of tasks; trays of one product side by side with the same times are one. */
export function spansOf(plan: Plan, kinds: Kinds, chain: Chain, tasks: readonly Task[]): readonly Span[] {
  const loading = loadingStarts(plan);
  const single = tasks.map((task): Span => {
    const next = chain.after(task);
    const heldUntil = next === undefined ? task.end : Math.max(task.end, leavesAt(next, loading));
    return {
      ...task,
      heldUntil,
      kind: kindOf(kinds, task),
      trays: 1,
      position: task.place?.position ?? 1,
      positions: 1,
      tasks: [task],
      change: changeOf(plan, task),
    };
  });
  single.sort((a, b) => a.start - b.start || a.end - b.end || a.kind.hatch - b.kind.hatch || a.position - b.position);
  const spans: Span[] = [];
  for (const span of single) {
    const last = spans.at(-1);
    if (last === undefined || !joins(last, span)) spans.push(span);
    else spans[spans.length - 1] = joined(last, span);
  }
  return spans;
}

/** Spans of one place one after the other, without a pause and of the same kind, drawn as one. */
export function joinRuns(spans: readonly Span[]): readonly Span[] {
  const runs: Span[] = [];
  const single = spans.flatMap((span) =>
    span.tasks.map((task) => ({ ...span, trays: 1, positions: 1, position: task.place?.position ?? 1, tasks: [task] })),
  );
  const sorted = single.sort((a, b) => a.position - b.position || a.start - b.start);
  for (const span of sorted) {
    const last = runs.at(-1);
    const isRun =
      last !== undefined && last.kind === span.kind && last.position === span.position && last.heldUntil === span.start;
    const isSameStep = last?.tasks[0]?.step === span.tasks[0]?.step && last?.change === span.change;
    if (!isRun || !isSameStep) runs.push(span);
    else {
      const tasks = [...last.tasks, ...span.tasks];
      runs[runs.length - 1] = { ...last, end: span.end, heldUntil: span.heldUntil, trays: last.trays + span.trays, tasks };
    }
  }
  return runs;
}
