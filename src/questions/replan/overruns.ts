// Minutes by which what has begun must be let go beyond its most, because by now it cannot be helped: up to now and the work that
// must come first. Used by dayAt.ts.
import type { Scenario } from '../../model/scenario.ts';
import { type Beginning, earliestBegin, type Since } from './earliest.ts';
import { type BatchRuns, type Job, restsByItself } from './runs.ts';
import type { Standing } from './trayStates.ts';

type Standings = ReadonlyMap<string, Standing>;

/** Something that has to go on by a minute, and when it can. */
type Need = { readonly id: string; readonly latest: number; readonly earliest: () => Beginning };

/** What comes next in a tray or batch. `next`: the jobs of which one comes next. */
function goingOn(own: Standing, next: readonly Job[], more: number, since: Since): Need {
  const { job, start, end } = own;
  const isAtRest = restsByItself(job.step);
  const least = isAtRest ? start + job.minutes.min + more : end + job.unload;
  const latest = (isAtRest ? start + job.minutes.max + more : end + job.unload) + job.step.waitUpTo;
  const earliest = (): Beginning =>
    next
      .map((one) => earliestBegin(one, Math.max(since.now, least), since))
      .reduce((first, one) => (one.at < first.at ? one : first));
  return { id: job.task.id, latest, earliest };
}

/** A bake that is still on its deck has to come out. */
function comingOut({ job, start }: Standing, since: Since): Need {
  const from = Math.max(since.now, start + job.minutes.min);
  const earliest = (): Beginning => {
    const free = since.diary.firstFree('bake', from, job.unload, since.dayMinutes);
    return { ...(free ?? { at: from, person: undefined }), minutes: job.unload };
  };
  return { id: job.task.id, latest: start + job.minutes.max, earliest };
}

function chainNeeds(
  jobs: readonly Job[],
  afterLast: readonly Job[],
  standings: Standings,
  moreOf: (job: Job) => number,
  since: Since,
): readonly Need[] {
  return jobs.flatMap((job, index): readonly Need[] => {
    const own = standings.get(job.task.id);
    if (own === undefined || own.state === 'planned') return [];
    if (job.step.do === 'bake' && own.state === 'begun') return [comingOut(own, since)];
    const follower = jobs[index + 1];
    const next = follower === undefined ? afterLast : [follower];
    const hasGoneOn = next.some((one) => (standings.get(one.task.id)?.state ?? 'planned') !== 'planned');
    return next.length === 0 || hasGoneOn ? [] : [goingOn(own, next, moreOf(job), since)];
  });
}

/** First steps of trays that have not begun, where a tray of their batch has: they have to within the minutes it allows. */
function firstNeeds(batch: BatchRuns, scenario: Scenario, standings: Standings, since: Since): readonly Need[] {
  const firsts = batch.trays.flatMap(({ jobs }) => (jobs[0] === undefined ? [] : (standings.get(jobs[0].task.id) ?? [])));
  const begun = firsts.filter(({ state }) => state !== 'planned');
  if (begun.length === 0) return [];
  const within = scenario.doughs.find(({ id }) => id === batch.dough)?.shapeWithin ?? 0;
  const latest = Math.min(...begun.map(({ begin }) => begin)) + within;
  return firsts
    .filter(({ state }) => state === 'planned')
    .map(({ job }) => ({ id: job.task.id, latest, earliest: () => earliestBegin(job, since.now, since) }));
}

/**
 * Overrun of each job, by its task's id; none where there is no entry. `moreOf`: minutes a job newly needs beyond its own. What is
 * most overdue goes first; the hands it takes are not there for the next.
 */
export function overrunsOf(
  batches: readonly BatchRuns[],
  standings: Standings,
  moreOf: (job: Job) => number,
  since: Since,
): ReadonlyMap<string, number> {
  const needs = batches.flatMap((batch) => {
    const firsts = batch.trays.flatMap(({ jobs }) => jobs[0] ?? []);
    return [
      ...chainNeeds(batch.jobs, firsts, standings, moreOf, since),
      ...batch.trays.flatMap(({ jobs }) => chainNeeds(jobs, [], standings, moreOf, since)),
      ...firstNeeds(batch, since.scenario, standings, since),
    ];
  });
  const overruns = new Map<string, number>();
  for (const { id, latest, earliest } of needs.sort((a, b) => a.latest - b.latest || (a.id < b.id ? -1 : 1))) {
    const { at, person, minutes } = earliest();
    if (at <= latest) continue;
    overruns.set(id, at - latest);
    if (person !== undefined) since.diary.book(person, { from: at, until: at + minutes, taskId: id, isTold: false });
  }
  return overruns;
}
