// STEP_COMPLETE: for each planned tray and each batch with trays, tasks of a step = 1; no other task stands in the plan.
import type { Finding } from '../finding.ts';
import type { BatchRun, JudgedDay, TrayRun } from '../judgedDay.ts';

function runFindings(who: string, run: BatchRun | TrayRun): readonly Finding[] {
  const { steps } = 'product' in run ? run.product : run.dough;
  const missing = steps.flatMap((step, index) =>
    run.runs[index] === undefined
      ? [{ says: `${who} has no ${step.do} (step ${index + 1} of ${steps.length}).`, taskIds: [] }]
      : [],
  );
  const spare = run.spare.map(({ id, task }) => ({
    says: `${who} has the ${task.step} ${id} more often than its steps ask for.`,
    taskIds: [id],
    minute: task.start,
  }));
  return [...missing, ...spare];
}

/** A step on trays whose task names no tray. */
function traylessFindings(day: JudgedDay): readonly Finding[] {
  return day.tasks
    .filter(({ task }) => task.tray === undefined && task.batch === undefined)
    .map(({ id, task }) => ({
      says: `Task ${id} names neither the tray nor the batch it is done to.`,
      taskIds: [id],
      minute: task.start,
    }));
}

export function stepComplete(day: JudgedDay): readonly Finding[] {
  return [
    ...day.batches.flatMap((batch) => runFindings(`Batch ${batch.id}`, batch)),
    ...day.trays.flatMap((tray) => runFindings(`Tray ${tray.id}`, tray)),
    ...traylessFindings(day),
  ];
}
