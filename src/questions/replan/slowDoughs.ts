// Which step of a slow batch or tray needs the minutes told: the one it rests in now, or the next one it will. Used by dayAt.ts.
import type { Happened } from '../../model/happened.ts';
import type { BatchRuns, Job } from './runs.ts';
import type { Standing } from './trayStates.ts';

const SLOW: readonly string[] = ['bulk', 'rest', 'retard', 'proof'];

export type SlowDoughs = {
  /** Minutes needed beyond what was known, by task id. */
  readonly moreById: ReadonlyMap<string, number>;
  /** Events for which nothing is left to wait for: their index, and the last such step, which is over. */
  readonly tooLate: readonly {
    readonly index: number;
    readonly over: Standing | undefined;
    readonly next: Standing | undefined;
  }[];
};

function jobsNamed(batches: readonly BatchRuns[], batch: string | undefined, tray: string | undefined): readonly Job[] {
  if (batch !== undefined) return batches.find(({ id }) => id === batch)?.jobs ?? [];
  return batches.flatMap(({ trays }) => trays).find(({ id }) => id === tray)?.jobs ?? [];
}

export function slowDoughs(
  happened: Happened,
  batches: readonly BatchRuns[],
  standings: ReadonlyMap<string, Standing>,
): SlowDoughs {
  const moreById = new Map<string, number>();
  const tooLate: { index: number; over: Standing | undefined; next: Standing | undefined }[] = [];
  happened.happened.forEach((event, index) => {
    if (event.what !== 'needs-more') return;
    const jobs = jobsNamed(batches, event.batch, event.tray);
    const rests = jobs.filter(({ step }) => SLOW.includes(step.do)).flatMap(({ task }) => standings.get(task.id) ?? []);
    const wanted = rests.find(({ state }) => state !== 'ended');
    if (wanted !== undefined) {
      const id = wanted.job.task.id;
      moreById.set(id, (moreById.get(id) ?? 0) + event.minutes);
      return;
    }
    const over = rests.at(-1);
    const followers = batches.flatMap(({ jobs: own, trays }) => [...own, ...trays.flatMap((tray) => tray.jobs)]);
    const next = followers.find(({ before }) => before !== null && before === over?.job);
    tooLate.push({ index, over, next: next === undefined ? undefined : standings.get(next.task.id) });
  });
  return { moreById, tooLate };
}
