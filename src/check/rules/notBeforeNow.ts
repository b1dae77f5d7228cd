// NOT_BEFORE_NOW: begin of a step that has not begun >= now, and start of the work on it >= now; a bake begins when its loading does.
import type { Finding } from '../finding.ts';
import { allRuns } from '../hands.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayMinute, sayMinutes } from '../sayMinute.ts';

export function notBeforeNow(day: JudgedDay): readonly Finding[] {
  const now = day.scenario.underway?.now;
  if (now === undefined) return [];
  const tooSoon = (minute: number) => `${sayMinute(day.clock, minute)}, ${sayMinutes(now - minute)} before now`;
  return allRuns(day)
    .filter(({ record }) => record === undefined || record.state === 'planned')
    .flatMap(({ named: { id, task }, begins }) => {
      if (begins < now) {
        return [{ says: `${id} has not begun, and begins at ${tooSoon(begins)}.`, taskIds: [id], minute: begins }];
      }
      return task.handsOn
        .filter(({ start }) => start < now)
        .map(({ person, start, for: what }) => ({
          says: `${id} has not begun, and ${person} is at it (${what}) from ${tooSoon(start)}.`,
          taskIds: [id],
          minute: start,
        }));
    });
}
