// DAY_WINDOW: 0 <= start <= end <= minutes of the day, for tasks, hands-on work and moves of set points.
import type { Finding } from '../finding.ts';
import type { JudgedDay } from '../judgedDay.ts';
import { sayMinute, sayMinutes } from '../sayMinute.ts';

type Span = { readonly start: number; readonly end: number };

export function dayWindow(day: JudgedDay): readonly Finding[] {
  const last = day.clock.minutes;

  function outside(what: string, { start, end }: Span, taskIds: readonly string[]): readonly Finding[] {
    const found = (wrong: string, minute: number): readonly Finding[] => {
      const when = `${sayMinute(day.clock, start)} to ${sayMinute(day.clock, end)}`;
      return [{ says: `${what}, ${when}, ${wrong}.`, taskIds, minute }];
    };
    if (end < start) return found(`ends ${sayMinutes(start - end)} before it starts`, start);
    if (start < 0) return found(`starts ${sayMinutes(-start)} before the day does`, start);
    if (end > last) return found(`ends ${sayMinutes(end - last)} after the day does`, end);
    return [];
  }

  return [
    ...day.tasks.flatMap(({ id, task }) => [
      ...outside(`Task ${id}`, task, [id]),
      ...task.handsOn.flatMap((work) => outside(`The work of ${work.person} on ${id} (${work.for})`, work, [id])),
    ]),
    ...day.plan.decks.flatMap((deck) => deck.setPoints.flatMap((move) => outside(`A move of deck ${deck.id}`, move, []))),
  ];
}
