// When a person works without a break inside the day, in minutes. Used by the checks about people and hands.
import { type Clock, minuteAt } from '../../model/clock.ts';
import type { Person } from '../../model/scenario.ts';

export type Stretch = { readonly start: number; readonly end: number };

/** Stretches of work, in order: hours within the day, less the breaks. */
export function workStretches(person: Person, clock: Clock): readonly Stretch[] {
  const last = Math.min(clock.minutes, minuteAt(clock, person.until));
  const pauses = person.breaks
    .map((pause) => ({ start: minuteAt(clock, pause.from), end: minuteAt(clock, pause.until) }))
    .sort((a, b) => a.start - b.start);
  const stretches: Stretch[] = [];
  let from = Math.max(0, minuteAt(clock, person.from));
  for (const pause of pauses) {
    stretches.push({ start: from, end: Math.min(last, pause.start) });
    from = Math.max(from, pause.end);
  }
  stretches.push({ start: from, end: last });
  return stretches.filter(({ start, end }) => end > start);
}

/** Minutes of the longest stretch; 0 when there is none. */
export function longestStretch(person: Person, clock: Clock): number {
  return Math.max(0, ...workStretches(person, clock).map(({ start, end }) => end - start));
}
