// HANDS_ON: the hands-on work of a task = the work its step needs, minute by minute, each by one person.
// mix [start, start + handsOn); fold, divide, shape, finish [start, end); bake [begin - load, begin) and [end, end + unload),
// once for a load. Without people in the scenario: none. Of a day under way, loading and unloading that began before now is
// AS_BEGUN's to see: it is as it happened, though a tray of the load has since been left out.
import type { Finding } from '../finding.ts';
import { allRuns, type NeededHands, neededHands } from '../hands.ts';
import type { JudgedDay, StepRun } from '../judgedDay.ts';
import { sayMinute } from '../sayMinute.ts';

type Work = Pick<NeededHands, 'for' | 'start' | 'end'>;

function key(work: Work): string {
  return `${work.for} ${work.start} ${work.end}`;
}

/** Of a bake that has begun: its loading, and what else began before now. AS_BEGUN sees to that. */
function hasHappened(day: JudgedDay, { step, record }: StepRun, work: Work, isNeeded: boolean): boolean {
  const now = day.scenario.underway?.now;
  if (now === undefined || step.do !== 'bake' || record === undefined || record.state === 'planned') return false;
  // The loading a smaller load needs would begin later than that of the whole load did.
  return work.start < now || (isNeeded && work.for === 'load');
}

export function handsOn(day: JudgedDay): readonly Finding[] {
  const say = (work: Work) => `${work.for} ${sayMinute(day.clock, work.start)} to ${sayMinute(day.clock, work.end)}`;
  return allRuns(day).flatMap((run) => {
    const { id, task } = run.named;
    const missing = day.scenario.people === undefined ? [] : [...neededHands(run)];
    const spare = task.handsOn.filter((work) => {
      const at = missing.findIndex((needed) => key(needed) === key(work));
      if (at !== -1) missing.splice(at, 1);
      return at === -1;
    });
    return [
      ...spare
        .filter((work) => !hasHappened(day, run, work, false))
        .map((work) => ({
          says: `${work.person} is at ${id} for ${say(work)}, which the step does not need.`,
          taskIds: [id],
          minute: work.start,
          until: work.end,
        })),
      ...missing
        .filter((work) => !hasHappened(day, run, work, true))
        .map((work) => ({
          says: `Nobody is at ${id} for ${say(work)}.`,
          taskIds: [id],
          minute: work.start,
          until: work.end,
        })),
    ];
  });
}
