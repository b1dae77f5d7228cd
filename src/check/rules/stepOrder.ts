// STEP_ORDER: done of a step <= begin of the next <= done of the step + waitUpTo.
// From a batch to its trays: done of its last step <= begin of its first tray <= done + waitUpTo. Of a day under way the wait is
// longer by the overrun of the step before, and that of the first tray by the overrun of its first step.
import { allowedDelay, allowedWait } from '../allowances.ts';
import type { Finding } from '../finding.ts';
import { firstTrayBegins } from '../holdings.ts';
import type { BatchRun, JudgedDay, StepRun } from '../judgedDay.ts';
import { sayMinute, sayMinutes } from '../sayMinute.ts';

type Late = { readonly before: StepRun; readonly mayWait: number; readonly begins: number };

function tooLate(day: JudgedDay, { before, mayWait, begins }: Late, what: string, taskId: string): readonly Finding[] {
  const late = begins - (before.done + mayWait);
  if (late <= 0) return [];
  const says =
    `${what} begins at ${sayMinute(day.clock, begins)}, ${sayMinutes(late)} too late: ${before.named.id} is done at ` +
    `${sayMinute(day.clock, before.done)} and may wait ${sayMinutes(mayWait)}.`;
  return [{ says, taskIds: [before.named.id, taskId], minute: begins, until: begins }];
}

function tooSoon(day: JudgedDay, before: StepRun, begins: number, what: string, taskId: string): readonly Finding[] {
  const early = before.done - begins;
  if (early <= 0) return [];
  const says =
    `${what} begins at ${sayMinute(day.clock, begins)}, ${sayMinutes(early)} too soon: ${before.named.id} is done at ` +
    `${sayMinute(day.clock, before.done)}.`;
  return [{ says, taskIds: [before.named.id, taskId], minute: begins, until: begins }];
}

/** Each step after the one before it; where a step is missing, STEP_COMPLETE says so. */
function chainFindings(day: JudgedDay, runs: readonly (StepRun | undefined)[]): readonly Finding[] {
  return runs.flatMap((run, index) => {
    const before = index === 0 ? undefined : runs[index - 1];
    if (run === undefined || before === undefined) return [];
    const { id } = run.named;
    const late = { before, mayWait: allowedWait(before), begins: run.begins };
    return [...tooSoon(day, before, run.begins, id, id), ...tooLate(day, late, id, id)];
  });
}

function fromBatchToTrays(day: JudgedDay, batch: BatchRun): readonly Finding[] {
  const last = batch.runs[batch.runs.length - 1];
  const first = firstTrayBegins(batch);
  if (last === undefined || first === undefined) return [];
  const starts = batch.trays.flatMap((tray) => tray.runs[0] ?? []);
  // Of trays that begin first together, the one that is allowed most counts as the first.
  const firsts = starts.filter((run) => run.begins === first).sort((a, b) => allowedDelay(b) - allowedDelay(a));
  return [
    ...starts.flatMap((run) => tooSoon(day, last, run.begins, run.named.id, run.named.id)),
    ...firsts.slice(0, 1).flatMap((run) => {
      const late = { before: last, mayWait: allowedWait(last) + allowedDelay(run), begins: first };
      return tooLate(day, late, `${run.named.id}, the first tray of batch ${batch.id},`, run.named.id);
    }),
  ];
}

export function stepOrder(day: JudgedDay): readonly Finding[] {
  return [
    ...day.batches.flatMap((batch) => [...chainFindings(day, batch.runs), ...fromBatchToTrays(day, batch)]),
    ...day.trays.flatMap((tray) => chainFindings(day, tray.runs)),
  ];
}
