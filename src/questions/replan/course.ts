// How far one job has come by now. Used by whatever goes through the day so far.
import type { HandsOn } from '../../model/plan.ts';
import type { Stay } from './rooms.ts';
import type { Job } from './runs.ts';

/** How far a job has come. Minutes of the day; `end` is null while it is not known. */
export type Course = {
  readonly job: Job;
  begin: number;
  start: number;
  end: number | null;
  stay: Stay | null;
  unloading: readonly HandsOn[];
  /** Whether it is told that it came off its deck. */
  isToldOut: boolean;
};
