// STEP_MINUTES: least minutes <= end - start <= most minutes.
import type { BatchStep, TrayStep } from '../../model/steps.ts';
import { type Range, rangeOf } from '../../model/units.ts';
import type { Finding } from '../finding.ts';
import { allRuns } from '../hands.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayMinute, sayMinutes } from '../sayMinute.ts';

function allowedMinutes(step: BatchStep | TrayStep): Range {
  return rangeOf('minutes' in step ? step.minutes : step.minutesPerTray);
}

export function stepMinutes(day: JudgedDay): readonly Finding[] {
  return allRuns(day).flatMap(({ step, named: { id, task } }) => {
    const { min, max } = allowedMinutes(step);
    const minutes = task.end - task.start;
    if (minutes >= min && minutes <= max) return [];
    const allowed = min === max ? sayMinutes(min) : `${min} to ${sayMinutes(max)}`;
    const by = minutes < min ? `${sayMinutes(min - minutes)} too short` : `${sayMinutes(minutes - max)} too long`;
    const from = sayMinute(day.clock, task.start);
    const says = `${id} from ${from} lasts ${sayMinutes(minutes)}, ${by}: the scenario says ${allowed}.`;
    return [{ says, taskIds: [id], minute: task.start }];
  });
}
