// When each person works in a plan: from the first hands-on minute to the last, apart where a long rest lies between.
// Used by the cautions about hours and rest. Minutes are half-open.
import type { Task } from '../../model/plan.ts';
import type { Person } from '../../model/scenario.ts';

/** Daily rest in minutes: eleven consecutive hours in every 24 (Directive 2003/88/EC, Article 3). */
export const DAILY_REST_MINUTES = 11 * 60;

/** One turn of work: start included, end excluded. */
export type Turn = { readonly start: number; readonly end: number };

/** A person's turns of work in order. Idle minutes inside a turn belong to it; a gap of a daily rest or more ends it. */
export function turnsOf(person: Person, tasks: readonly Task[]): readonly Turn[] {
  const work = tasks
    .flatMap((task) => task.handsOn)
    .filter((handsOn) => handsOn.person === person.id && handsOn.end > handsOn.start)
    .sort((a, b) => a.start - b.start || a.end - b.end);
  const turns: { start: number; end: number }[] = [];
  for (const { start, end } of work) {
    const turn = turns.at(-1);
    if (turn === undefined || start - turn.end >= DAILY_REST_MINUTES) turns.push({ start, end });
    else turn.end = Math.max(turn.end, end);
  }
  return turns;
}
