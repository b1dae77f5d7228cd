// SHAPE_WITHIN: begin of each tray of a batch <= begin of the batch's first tray + shapeWithin. Of a day under way: + the
// overrun of its first step.
import { allowedDelay } from '../allowances.ts';
import type { Finding } from '../finding.ts';
import { firstTrayBegins } from '../holdings.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayMinute, sayMinutes } from '../sayMinute.ts';

export function shapeWithin(day: JudgedDay): readonly Finding[] {
  return day.batches.flatMap((batch) => {
    const first = firstTrayBegins(batch);
    if (first === undefined) return [];
    return batch.trays.flatMap((tray) => {
      const run = tray.runs[0];
      if (run === undefined) return [];
      const within = batch.dough.shapeWithin + allowedDelay(run);
      if (run.begins <= first + within) return [];
      const says =
        `Tray ${tray.id} begins at ${sayMinute(day.clock, run.begins)}, ${sayMinutes(run.begins - first - within)} too late: ` +
        `the first tray of batch ${batch.id} begins at ${sayMinute(day.clock, first)} and the others within ${sayMinutes(within)}.`;
      return [{ says, taskIds: [run.named.id], minute: run.begins, until: run.begins }];
    });
  });
}
