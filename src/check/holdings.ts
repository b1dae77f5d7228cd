// Who holds which place from when until when. A tray that waits keeps its shelf, retarder or cooling rack until its next
// step begins; bowl, bench and deck are free when their step ends.
import type { PlaceKind } from '../model/plan.ts';
import type { BatchRun, JudgedDay, StepRun } from './judgedDay.ts';
import type { NamedTask } from './nameTasks.ts';
import { placeKindOf } from './places.ts';

export type Holding = {
  readonly kind: PlaceKind;
  readonly placeId: string;
  readonly position: number;
  readonly from: number;
  /** Excluded. */
  readonly until: number;
  /** The tray or batch, as "tray rye-1". */
  readonly holder: string;
  readonly named: NamedTask;
};

const KEPT_WHILE_WAITING: readonly PlaceKind[] = ['shelf', 'retarder', 'rack'];

function holding(holder: string, run: StepRun, nextBegins: number | undefined): readonly Holding[] {
  const { place, start, end } = run.named.task;
  const kind = placeKindOf(run.step);
  // A place of the wrong kind is PLACE_KIND's to say; it holds nothing here.
  if (place === undefined || kind === undefined || place.kind !== kind) return [];
  const until = KEPT_WHILE_WAITING.includes(kind) ? Math.max(end, nextBegins ?? end) : end;
  return [{ kind, placeId: place.id, position: place.position, from: start, until, holder, named: run.named }];
}

function holdingsOf(holder: string, runs: readonly (StepRun | undefined)[], afterLast: number | undefined): readonly Holding[] {
  return runs.flatMap((run, index) => {
    if (run === undefined) return [];
    return holding(holder, run, index === runs.length - 1 ? afterLast : runs[index + 1]?.begins);
  });
}

/** When the first tray of a batch begins, or began though it is left out now; undefined when none has its first step. */
export function firstTrayBegins(batch: BatchRun): number | undefined {
  let first = batch.leftOutBegan;
  for (const { runs } of batch.trays) {
    const begins = runs[0]?.begins;
    if (begins !== undefined && (first === undefined || begins < first)) first = begins;
  }
  return first;
}

/** All holdings of the plan's steps, batches first. */
export function holdings(day: JudgedDay): readonly Holding[] {
  return [
    ...day.batches.flatMap((batch) => holdingsOf(`batch ${batch.id}`, batch.runs, firstTrayBegins(batch))),
    ...day.trays.flatMap((tray) => holdingsOf(`tray ${tray.id}`, tray.runs, undefined)),
  ];
}
