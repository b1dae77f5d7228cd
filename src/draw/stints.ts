// Pieces of work of the plan: who has hands on which tasks and from when to when. A rack pushed in whole is one piece.
import type { HandsOn, Plan, Task } from '../model/plan.ts';

export type Stint = {
  readonly does: HandsOn['for'];
  readonly person: string | null;
  readonly start: number;
  readonly end: number;
  /** All tasks it serves: one, or the trays of a load that goes in or out together. */
  readonly tasks: readonly Task[];
};

const HANDWORK: ReadonlySet<string> = new Set(['mix', 'fold', 'divide', 'shape', 'finish']);

function isHandwork(step: string): step is 'mix' | 'fold' | 'divide' | 'shape' | 'finish' {
  return HANDWORK.has(step);
}

function handworkStints(task: Task): readonly Stint[] {
  if (!isHandwork(task.step)) return [];
  const step = task.step;
  const hands = task.handsOn.filter((part) => part.for === step);
  if (hands.length === 0) return [{ does: step, person: null, start: task.start, end: task.end, tasks: [task] }];
  return hands.map(({ person, start, end }) => ({ does: step, person, start, end, tasks: [task] }));
}

function ovenStints(load: readonly Task[]): readonly Stint[] {
  const [first] = load;
  if (first === undefined) return [];
  const hands = load.flatMap((task) => task.handsOn);
  return (['load', 'unload'] as const).flatMap((does): readonly Stint[] => {
    const parts = hands.filter((part) => part.for === does);
    const at = does === 'load' ? first.start : first.end;
    if (parts.length === 0) return [{ does, person: null, start: at, end: at, tasks: load }];
    return parts.map(({ person, start, end }) => ({ does, person, start, end, tasks: load }));
  });
}

/** Bakes in the groups in which they are loaded: single trays, or whole loads on decks that load together. */
export function loadsOf(plan: Plan): readonly (readonly Task[])[] {
  const together = new Set(plan.bakehouse.decks.filter((deck) => deck.loading === 'together').map((deck) => deck.id));
  const loads = new Map<string, Task[]>();
  for (const task of plan.tasks.filter(({ step }) => step === 'bake')) {
    const deck = task.place?.id ?? '';
    const key = together.has(deck) ? `${deck} ${task.start} ${task.end}` : task.id;
    const load = loads.get(key);
    if (load === undefined) loads.set(key, [task]);
    else load.push(task);
  }
  return [...loads.values()];
}

/** Every piece of handwork of the plan, by start. */
export function stintsOf(plan: Plan): readonly Stint[] {
  const stints = [...plan.tasks.flatMap(handworkStints), ...loadsOf(plan).flatMap(ovenStints)];
  return stints.sort(
    (a, b) => a.start - b.start || a.end - b.end || (a.tasks[0]?.id ?? '').localeCompare(b.tasks[0]?.id ?? '', 'en'),
  );
}
