// Absences of people: as minutes of the day, and as breaks in the scenario that is planned anew. Used by dayAt.ts.
import { type Clock, dayOffsetAt, minuteAt, wallClockAt } from '../../model/clock.ts';
import type { Happened } from '../../model/happened.ts';
import type { Person } from '../../model/scenario.ts';
import type { Span } from './diary.ts';

/** Absences told, by person. */
export function absencesOf(happened: Happened, clock: Clock): ReadonlyMap<string, readonly Span[]> {
  const absences = new Map<string, Span[]>();
  for (const event of happened.happened) {
    if (event.what !== 'away') continue;
    const own = absences.get(event.person) ?? [];
    const until = event.until === undefined ? clock.minutes : minuteAt(clock, event.until);
    own.push({ from: Math.max(0, minuteAt(clock, event.from)), until: Math.min(clock.minutes, until) });
    absences.set(event.person, own);
  }
  return absences;
}

/** A minute as a clock text of the scenario; the next one that can be written, where the clocks go back and an hour comes twice. */
export function clockTextAt(clock: Clock, minute: number): string {
  for (let at = minute; ; at++) {
    const days = dayOffsetAt(clock, at);
    const text = `${days === 0 ? '' : `${days > 0 ? '+' : ''}${days}d `}${wallClockAt(clock, at)}`;
    if (minuteAt(clock, text) === at) return text;
  }
}

function merged(spans: readonly Span[]): readonly Span[] {
  const whole: Span[] = [];
  for (const span of [...spans].filter(({ from, until }) => until > from).sort((a, b) => a.from - b.from)) {
    const last = whole.at(-1);
    if (last === undefined || span.from > last.until) whole.push(span);
    else whole[whole.length - 1] = { from: last.from, until: Math.max(last.until, span.until) };
  }
  return whole;
}

/** People with their absences as breaks. Whoever has no minute left to work is not on the day any more. */
export function peopleLeft(
  people: readonly Person[] | undefined,
  absences: ReadonlyMap<string, readonly Span[]>,
  clock: Clock,
): readonly Person[] | undefined {
  return people?.flatMap((person) => {
    const away = absences.get(person.id) ?? [];
    if (away.length === 0) return [person];
    const spanOf = ({ from, until }: { readonly from: string; readonly until: string }): Span => ({
      from: minuteAt(clock, from),
      until: minuteAt(clock, until),
    });
    const hours = spanOf(person);
    const off = merged([...person.breaks.map(spanOf), ...away]);
    const works = { from: Math.max(0, hours.from), until: Math.min(clock.minutes, hours.until) };
    const isOffAllDay = off.some(({ from, until }) => from <= works.from && until >= works.until);
    if (isOffAllDay) return [];
    const breaks = off.map(({ from, until }) => ({ from: clockTextAt(clock, from), until: clockTextAt(clock, until) }));
    return [{ ...person, breaks }];
  });
}
