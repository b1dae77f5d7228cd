// Counts the steps that were planned before and are now planned otherwise: at another minute, in another place, by other people.
import { allRuns } from './hands.ts';
import type { JudgedDay, StepRun } from './judgedDay.ts';
import { isOfTogetherOven } from './loadedTogether.ts';
import { isSamePlace, whoDoesWhat } from './sameWork.ts';

function isMoved(day: JudgedDay, run: StepRun): boolean {
  const { record, named } = run;
  if (record === undefined || record.state !== 'planned') return false;
  if (record.start !== named.task.start || !isSamePlace(record.place, named.task.place)) return true;
  // One pair of hands serves a whole load: which of its trays the work stands on says nothing.
  if (isOfTogetherOven(day, run)) return false;
  return whoDoesWhat(record.handsOn) !== whoDoesWhat(named.task.handsOn);
}

/** Steps of trays and batches still planned that have moved; undefined when the day is not under way. */
export function movedTasks(day: JudgedDay): number | undefined {
  if (day.scenario.underway === undefined) return undefined;
  return allRuns(day).filter((run) => isMoved(day, run)).length;
}
