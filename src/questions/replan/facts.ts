// What is told of single tasks: when one began or ended, and which have not begun. Used by soFar.ts.
import { type Clock, minuteAt } from '../../model/clock.ts';
import type { Happened } from '../../model/happened.ts';
import { type Job, restsByItself } from './runs.ts';

export type Fact = {
  /** Minute at which it began, loading included. */
  readonly begin?: number;
  readonly end?: number;
  readonly isNotYet: boolean;
  /** Whether it was known before: it happened as it stands in the plan. */
  readonly isKnown: boolean;
  /** Where in the file it is told, as a JSON Pointer. */
  readonly at: string;
};

/** What was known of a job when the day was planned anew before. */
function knownFact(job: Job): readonly (readonly [string, Fact])[] {
  const { known, task, load } = job;
  if (known === undefined || known.state === 'planned') return [];
  const end = known.state === 'ended' && (!restsByItself(job.step) || job.isLast) ? { end: known.end } : {};
  return [[task.id, { begin: known.start - load, ...end, isNotYet: false, isKnown: true, at: '' }]];
}

/** What is told of each task, by its id; what is told now counts more than what was known before. */
export function factsOf(happened: Happened, jobs: readonly Job[], clock: Clock): ReadonlyMap<string, Fact> {
  const jobById = new Map(jobs.map((job) => [job.task.id, job]));
  const facts = new Map<string, Fact>(jobs.flatMap((job) => knownFact(job)));
  happened.happened.forEach((event, index) => {
    if (event.what !== 'began' && event.what !== 'ended' && event.what !== 'not-yet') return;
    const at = `/happened/${index}`;
    const before = { ...facts.get(event.task), isNotYet: false, isKnown: false, at };
    if (event.what === 'not-yet') facts.set(event.task, { isNotYet: true, isKnown: false, at });
    else {
      const minute = minuteAt(clock, event.at);
      const load = jobById.get(event.task)?.load ?? 0;
      facts.set(event.task, event.what === 'began' ? { ...before, begin: minute - load } : { ...before, end: minute });
    }
  });
  return facts;
}
