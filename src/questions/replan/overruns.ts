// Minutes by which what has begun must be let go beyond its most, because by now it cannot be helped: up to now and the work that
// must come first. Used by dayAt.ts.
import type { Scenario } from '../../model/scenario.ts';
import { earliestBegin, type Since } from './earliest.ts';
import { type BatchRuns, type Job, restsByItself } from './runs.ts';
import type { Standing } from './trayStates.ts';

type Standings = ReadonlyMap<string, Standing>;

/** How much longer than allowed it takes until the next step can begin. `next`: the jobs of which one comes next. */
function beyond(own: Standing, next: readonly Job[], more: number, since: Since): number {
  const { job, start, end } = own;
  const least = restsByItself(job.step) ? start + job.minutes.min + more : end + job.unload;
  const latest = (restsByItself(job.step) ? start + job.minutes.max + more : end + job.unload) + job.step.waitUpTo;
  const earliest = Math.min(...next.map((one) => earliestBegin(one, Math.max(since.now, least), since)));
  return Math.max(0, earliest - latest);
}

/** How much longer than its most a bake lasts that is still on its deck. */
function beyondBake({ job, start }: Standing, since: Since): number {
  const from = Math.max(since.now, start + job.minutes.min);
  const out = since.diary.firstFree('bake', from, job.unload, since.dayMinutes) ?? from;
  return Math.max(0, out - start - job.minutes.max);
}

function chainOverruns(
  jobs: readonly Job[],
  afterLast: readonly Job[],
  standings: Standings,
  moreOf: (job: Job) => number,
  since: Since,
): Map<string, number> {
  const overruns = new Map<string, number>();
  jobs.forEach((job, index) => {
    const own = standings.get(job.task.id);
    if (own === undefined || own.state === 'planned') return;
    if (job.step.do === 'bake' && own.state === 'begun') {
      overruns.set(job.task.id, beyondBake(own, since));
      return;
    }
    const follower = jobs[index + 1];
    const next = follower === undefined ? afterLast : [follower];
    const hasGoneOn = next.some((one) => (standings.get(one.task.id)?.state ?? 'planned') !== 'planned');
    if (next.length > 0 && !hasGoneOn) overruns.set(job.task.id, beyond(own, next, moreOf(job), since));
  });
  return overruns;
}

/** How much later than its batch allows a tray's first step begins at the earliest, where a tray of the batch has begun. */
function lateFirsts(
  batch: BatchRuns,
  scenario: Scenario,
  standings: Standings,
  since: Since,
): readonly (readonly [string, number])[] {
  const firsts = batch.trays.flatMap(({ jobs }) => (jobs[0] === undefined ? [] : (standings.get(jobs[0].task.id) ?? [])));
  const begun = firsts.filter(({ state }) => state !== 'planned');
  if (begun.length === 0) return [];
  const within = scenario.doughs.find(({ id }) => id === batch.dough)?.shapeWithin ?? 0;
  const latest = Math.min(...begun.map(({ begin }) => begin)) + within;
  return firsts
    .filter(({ state }) => state === 'planned')
    .map(({ job }) => [job.task.id, Math.max(0, earliestBegin(job, since.now, since) - latest)] as const);
}

/** Overrun of each job, by its task's id; none where there is no entry. `moreOf`: minutes a job newly needs beyond its own. */
export function overrunsOf(
  batches: readonly BatchRuns[],
  standings: Standings,
  moreOf: (job: Job) => number,
  since: Since,
): ReadonlyMap<string, number> {
  return new Map(
    batches.flatMap((batch) => {
      const firsts = batch.trays.flatMap(({ jobs }) => jobs[0] ?? []);
      return [
        ...chainOverruns(batch.jobs, firsts, standings, moreOf, since),
        ...batch.trays.flatMap(({ jobs }) => [...chainOverruns(jobs, [], standings, moreOf, since)]),
        ...lateFirsts(batch, since.scenario, standings, since),
      ];
    }),
  );
}
