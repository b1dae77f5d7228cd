// Names the batches and trays of a schedule: batches by when they are mixed, trays of a product by when they are ready.
import type { Schedule } from '../solver/problem.ts';
import type { Compiled } from './shopProblem.ts';

export type Names = {
  /** Per batch of the compiled scenario: its id in the plan. */
  readonly batchIds: readonly string[];
  /** Per tray: its id and the minute it is ready (null: left out). */
  readonly trays: readonly { readonly id: string; readonly readyMinute: number | null }[];
};

function readyMinuteOf(compiled: Compiled, schedule: Schedule, tray: number): number | null {
  const { doneMinute } = compiled.trays[tray] as Compiled['trays'][number];
  if (doneMinute !== null) return doneMinute;
  const unit = compiled.problem.units[compiled.trays[tray]?.unit as number];
  if (unit?.ready == null) return null;
  const end = schedule.end[unit.ready.task] as number;
  return end < 0 ? null : end + unit.ready.offset;
}

/** The highest number of a name with this stem; 0 when there is none. */
function highestNumber(stem: string, names: Iterable<string>): number {
  const numbers = [...names].map((name) => (name.startsWith(`${stem}-`) ? Number(name.slice(stem.length + 1)) : 0));
  return Math.max(0, ...numbers.filter(Number.isInteger));
}

/** Names in the order of the keys, but for those that have one already: new ones are numbered on after the highest. */
function named(
  stem: string,
  indexes: readonly number[],
  nameOf: (index: number) => string | null,
  key: (index: number) => readonly number[],
): ReadonlyMap<number, string> {
  const names = new Map<number, string>();
  for (const index of indexes) {
    const name = nameOf(index);
    if (name !== null) names.set(index, name);
  }
  const highest = highestNumber(stem, names.values());
  const unnamed = indexes.filter((index) => !names.has(index)).map((index) => ({ index, key: key(index) }));
  unnamed.sort((a, b) => {
    const at = a.key.findIndex((value, i) => value !== b.key[i]);
    return at < 0 ? a.index - b.index : (a.key[at] as number) - (b.key[at] as number);
  });
  unnamed.forEach(({ index }, i) => {
    names.set(index, `${stem}-${highest + 1 + i}`);
  });
  return names;
}

/** Names everything; left-out batches and trays take the last numbers, and what has a name keeps it. */
export function namesOf(compiled: Compiled, schedule: Schedule): Names {
  const startOf = (task: number): number =>
    (schedule.start[task] as number) < 0 ? Number.POSITIVE_INFINITY : (schedule.start[task] as number);
  const batchIds: string[] = [];
  for (const dough of new Set(compiled.batches.map((batch) => batch.dough.id))) {
    const mine = compiled.batches.flatMap((batch, b) => (batch.dough.id === dough ? [b] : []));
    const firstTask = (b: number): number => compiled.problem.units[compiled.batchUnits[b] as number]?.tasks[0] as number;
    const ids = named(
      dough,
      mine,
      (b) => compiled.batchNames[b] ?? null,
      (b) => [startOf(firstTask(b))],
    );
    for (const [b, id] of ids) batchIds[b] = id;
  }
  const ready = compiled.trays.map((_, t) => readyMinuteOf(compiled, schedule, t));
  const trays: { id: string; readyMinute: number | null }[] = [];
  for (const { product } of compiled.products) {
    const mine = compiled.trays.flatMap((tray, t) => (tray.product.id === product.id ? [t] : []));
    const ids = named(
      product.id,
      mine,
      (t) => compiled.trays[t]?.id ?? null,
      (t) => [ready[t] ?? Number.POSITIVE_INFINITY, startOf(compiled.trays[t]?.tasks[0] as number)],
    );
    for (const [t, id] of ids) trays[t] = { id, readyMinute: ready[t] as number | null };
  }
  return { batchIds, trays };
}
