// STEP_MINUTES: least minutes <= end - start <= most minutes. Of a day under way: least + more <= end - start <= most + more +
// overrun.
import { allowedMinutes } from '../allowances.ts';
import type { Finding } from '../finding.ts';
import { allRuns } from '../hands.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayMinute, sayMinutes } from '../sayMinute.ts';

export function stepMinutes(day: JudgedDay): readonly Finding[] {
  return allRuns(day).flatMap((run) => {
    const { id, task } = run.named;
    const { min, max } = allowedMinutes(run);
    const minutes = task.end - task.start;
    if (minutes >= min && minutes <= max) return [];
    const allowed = min === max ? sayMinutes(min) : `${min} to ${sayMinutes(max)}`;
    const by = minutes < min ? `${sayMinutes(min - minutes)} too short` : `${sayMinutes(minutes - max)} too long`;
    const from = sayMinute(day.clock, task.start);
    const isAllowedMore = run.record !== undefined && run.record.moreMinutes + run.record.overrunMinutes > 0;
    const source = isAllowedMore ? 'the scenario and the day so far say' : 'the scenario says';
    const says = `${id} from ${from} lasts ${sayMinutes(minutes)}, ${by}: ${source} ${allowed}.`;
    return [{ says, taskIds: [id], minute: task.start, until: task.end }];
  });
}
