// Who works from when to when. Part of the terminal summary.
import { dayClockOf } from '../draw/dayClock.ts';
import type { Plan } from '../model/plan.ts';
import { columns } from './columns.ts';
import { sayMinutes, sayTime } from './sayTime.ts';

export function sayPeople(plan: Plan): readonly string[] {
  const clock = dayClockOf(plan);
  const work = plan.tasks.flatMap((task) => task.handsOn);
  const rows = plan.bakehouse.people.map(({ id, name }) => {
    const own = work.filter(({ person }) => person === id);
    if (own.length === 0) return [name, 'nothing to do'];
    const start = Math.min(...own.map((hands) => hands.start));
    const end = Math.max(...own.map((hands) => hands.end));
    const handsOn = own.reduce((sum, hands) => sum + hands.end - hands.start, 0);
    return [name, `${sayTime(clock, start)} to ${sayTime(clock, end)}`, `${sayMinutes(handsOn)} hands-on`];
  });
  return columns(rows);
}
