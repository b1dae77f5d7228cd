// HANDS_ON: the hands-on work of a task = the work its step needs, minute by minute, each by one person.
// mix [start, start + handsOn); fold, divide, shape, finish [start, end); bake [begin - load, begin) and [end, end + unload),
// once for a load. Without people in the scenario: none.
import type { Finding } from '../finding.ts';
import { allRuns, type NeededHands, neededHands } from '../hands.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayMinute } from '../sayMinute.ts';

type Work = Pick<NeededHands, 'for' | 'start' | 'end'>;

function key(work: Work): string {
  return `${work.for} ${work.start} ${work.end}`;
}

export function handsOn(day: JudgedDay): readonly Finding[] {
  const say = (work: Work) => `${work.for} ${sayMinute(day.clock, work.start)} to ${sayMinute(day.clock, work.end)}`;
  return allRuns(day).flatMap((run) => {
    const { id, task } = run.named;
    const missing = day.scenario.people === undefined ? [] : [...neededHands(run)];
    const found: Finding[] = [];
    for (const work of task.handsOn) {
      const at = missing.findIndex((needed) => key(needed) === key(work));
      if (at !== -1) {
        missing.splice(at, 1);
        continue;
      }
      const says = `${work.person} is at ${id} for ${say(work)}, which the step does not need.`;
      found.push({ says, taskIds: [id], minute: work.start, until: work.end });
    }
    for (const needed of missing) {
      found.push({ says: `Nobody is at ${id} for ${say(needed)}.`, taskIds: [id], minute: needed.start, until: needed.end });
    }
    return found;
  });
}
