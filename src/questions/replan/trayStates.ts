// What each step of the day has come to by now: over, at work, or still to come. Used by dayAt.ts.
import type { HandsOn } from '../../model/plan.ts';
import type { TASK_STATES } from '../../model/underway.ts';
import type { Course } from './course.ts';
import { type BatchRuns, type Job, restsByItself } from './runs.ts';
import type { SoFar } from './soFar.ts';

export type State = (typeof TASK_STATES)[number];

/** A job as it stands now. Times of what has not begun are those planned. */
export type Standing = {
  readonly job: Job;
  readonly state: State;
  /** When it began to need its tray, loading included. */
  readonly begin: number;
  readonly start: number;
  readonly end: number;
  readonly handsOn: readonly HandsOn[];
  readonly course: Course | undefined;
};

/** Hands at work on a job that has begun, at the times they were. */
function handsOf(course: Course, state: State, end: number): HandsOn[] {
  const { job, begin } = course;
  const work = job.task.handsOn
    .filter((hands) => hands.for !== 'unload')
    .map((hands) => {
      const start = begin + hands.start - job.plannedBegin;
      const natural = start + hands.end - hands.start;
      const isAllOfIt = hands.end === job.task.end && hands.for !== 'load';
      return { ...hands, start, end: isAllOfIt ? end : Math.min(natural, Math.max(start, end)) };
    });
  if (state === 'ended') return [...work, ...course.unloading];
  const unloading = job.task.handsOn.filter((hands) => hands.for === 'unload');
  return [...work, ...unloading.map((hands) => ({ ...hands, start: end, end: end + hands.end - hands.start }))];
}

/** `nextBegin`: when what follows in its tray, or the first of its trays, began; null when nothing has. */
function standing(job: Job, course: Course | undefined, nextBegin: number | null, now: number): Standing {
  const { task, step } = job;
  if (course === undefined) {
    return { job, state: 'planned', begin: job.plannedBegin, start: task.start, end: task.end, handsOn: task.handsOn, course };
  }
  const { begin, start } = course;
  const as = (state: State, end: number): Standing => ({
    job,
    state,
    begin,
    start,
    end,
    handsOn: handsOf(course, state, end),
    course,
  });
  if (restsByItself(step) && !job.isLast) {
    if (nextBegin === null) return as('begun', Math.max(now, start + job.minutes.min, task.end));
    return as('ended', Math.min(nextBegin, start + job.minutes.max + (job.known?.overrunMinutes ?? 0)));
  }
  if (step.do === 'bake') {
    const isOut = course.end !== null && (course.end < now || (course.end === now && (course.isToldOut || job.unload === 0)));
    if (course.end !== null && isOut) return as('ended', course.end);
    // What is still on its deck comes off it after now.
    return as('begun', Math.max(now + 1, course.end ?? start + task.end - task.start));
  }
  const end = course.end ?? start;
  return as(end <= now ? 'ended' : 'begun', end);
}

/** How every job of batches stands, by its task's id. */
export function standingsOf(batches: readonly BatchRuns[], soFar: SoFar, now: number): ReadonlyMap<string, Standing> {
  const standings = new Map<string, Standing>();
  const beginOf = (job: Job | undefined): number | null =>
    job === undefined ? null : (soFar.courses.get(job.task.id)?.begin ?? null);
  const chain = (jobs: readonly Job[], afterLast: number | null): void => {
    jobs.forEach((job, index) => {
      const next = index === jobs.length - 1 ? afterLast : beginOf(jobs[index + 1]);
      standings.set(job.task.id, standing(job, soFar.courses.get(job.task.id), next, now));
    });
  };
  for (const batch of batches) {
    const { trays } = batch;
    const begins = trays.flatMap(({ jobs }) => beginOf(jobs[0]) ?? []);
    chain(batch.jobs, begins.length === 0 ? null : Math.min(...begins));
    for (const { jobs } of trays) chain(jobs, null);
  }
  return standings;
}
