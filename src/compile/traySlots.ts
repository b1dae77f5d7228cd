// Names the batches and trays of a schedule: batches by when they are mixed, trays of a product by when they are ready.
import type { Schedule } from '../solver/problem.ts';
import type { Compiled } from './shopProblem.ts';

export type Names = {
  /** Per batch of the compiled scenario: its id in the plan. */
  readonly batchIds: readonly string[];
  /** Per tray: its id, its number among its product's trays from 1, and the minute it is ready (null: left out). */
  readonly trays: readonly { readonly id: string; readonly number: number; readonly readyMinute: number | null }[];
};

function readyMinuteOf(compiled: Compiled, schedule: Schedule, tray: number): number | null {
  const unit = compiled.problem.units[compiled.trays[tray]?.unit as number];
  if (unit?.ready == null) return null;
  const end = schedule.end[unit.ready.task] as number;
  return end < 0 ? null : end + unit.ready.offset;
}

function numbered(indexes: readonly number[], key: (index: number) => readonly number[]): Map<number, number> {
  const keyed = indexes.map((index) => ({ index, key: key(index) }));
  keyed.sort((a, b) => {
    const at = a.key.findIndex((value, i) => value !== b.key[i]);
    return at < 0 ? a.index - b.index : (a.key[at] as number) - (b.key[at] as number);
  });
  return new Map(keyed.map(({ index }, i) => [index, i + 1]));
}

/** Names everything; left-out batches and trays take the last numbers. */
export function namesOf(compiled: Compiled, schedule: Schedule): Names {
  const startOf = (task: number): number =>
    (schedule.start[task] as number) < 0 ? Number.POSITIVE_INFINITY : (schedule.start[task] as number);
  const batchIds: string[] = [];
  for (const dough of new Set(compiled.batches.map((batch) => batch.dough.id))) {
    const mine = compiled.batches.flatMap((batch, b) => (batch.dough.id === dough ? [b] : []));
    const numbers = numbered(mine, (b) => [
      startOf(compiled.problem.units[compiled.batchUnits[b] as number]?.tasks[0] as number),
    ]);
    for (const [b, number] of numbers) batchIds[b] = `${dough}-${number}`;
  }
  const ready = compiled.trays.map((_, t) => readyMinuteOf(compiled, schedule, t));
  const trays: { id: string; number: number; readyMinute: number | null }[] = [];
  for (const { product } of compiled.products) {
    const mine = compiled.trays.flatMap((tray, t) => (tray.product.id === product.id ? [t] : []));
    const numbers = numbered(mine, (t) => [ready[t] ?? Number.POSITIVE_INFINITY, startOf(compiled.trays[t]?.tasks[0] as number)]);
    for (const [t, number] of numbers)
      trays[t] = { id: `${product.id}-${number}`, number, readyMinute: ready[t] as number | null };
  }
  return { batchIds, trays };
}
