// Who is free when, as the day went so far: hours, breaks, absences, and the work people were at. Used by soFar.ts.
import { type Clock, minuteAt } from '../../model/clock.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { StepKind } from '../../model/steps.ts';

/** Minutes of the day, `until` excluded. */
export type Span = { readonly from: number; readonly until: number };

/** Work of a person: done or under way, or told to have begun then. */
export type Booking = Span & { readonly taskId: string; readonly isTold: boolean };

/** A minute from which somebody is free; nobody in particular where hands do not count. */
export type Free = { readonly at: number; readonly person: string | undefined };

type Hours = { readonly hours: Span; readonly breaks: readonly Span[]; readonly cannot: readonly StepKind[] };

function overlaps(one: Span, from: number, until: number): boolean {
  return one.from < until && one.until > from;
}

export class Diary {
  private readonly hours: ReadonlyMap<string, Hours>;
  private readonly absences: ReadonlyMap<string, readonly Span[]>;
  private readonly bookings = new Map<string, Booking[]>();

  constructor(scenario: Scenario, clock: Clock, absences: ReadonlyMap<string, readonly Span[]>) {
    const spanOf = ({ from, until }: { readonly from: string; readonly until: string }): Span => ({
      from: minuteAt(clock, from),
      until: minuteAt(clock, until),
    });
    this.hours = new Map(
      (scenario.people ?? []).map((person) => [
        person.id,
        { hours: spanOf(person), breaks: person.breaks.map(spanOf), cannot: person.cannot },
      ]),
    );
    this.absences = absences;
  }

  book(person: string, booking: Booking): void {
    const own = this.bookings.get(person) ?? [];
    own.push(booking);
    this.bookings.set(person, own);
  }

  bookingsOf(person: string): readonly Booking[] {
    return this.bookings.get(person) ?? [];
  }

  /** Ends the work at a task at a minute, when it was to last longer. */
  cut(taskId: string, at: number): void {
    for (const [person, own] of this.bookings)
      this.bookings.set(
        person,
        own.map((booking) =>
          booking.taskId === taskId && booking.until > at ? { ...booking, until: Math.max(booking.from, at) } : booking,
        ),
      );
  }

  /** Work of others' in the way of work from `from` to `until`, the first. */
  inTheWay(person: string, from: number, until: number, taskId: string): Booking | undefined {
    const own = this.bookingsOf(person).filter((booking) => booking.taskId !== taskId && overlaps(booking, from, until));
    return own.sort((a, b) => a.from - b.from)[0];
  }

  /** Whether the person is there from `from` to `until`. Nobody knew beforehand of an absence that begins later. */
  isThere(person: string, from: number, until: number): boolean {
    const own = this.hours.get(person);
    if (own === undefined) return true;
    if (from < own.hours.from || until > own.hours.until) return false;
    if (own.breaks.some((pause) => overlaps(pause, from, until))) return false;
    return !(this.absences.get(person) ?? []).some((absence) => absence.from <= from && from < absence.until);
  }

  /** Who of those who do a step has hands free for so long first, and from when on; nobody when there is no such minute. */
  firstFree(step: StepKind, from: number, minutes: number, dayMinutes: number): Free | undefined {
    if (this.hours.size === 0 || minutes === 0) return { at: from, person: undefined };
    const able = [...this.hours].filter(([, own]) => !own.cannot.includes(step)).map(([person]) => person);
    for (let at = from; at + minutes <= dayMinutes; at++) {
      const until = at + minutes;
      const person = able.find((one) => {
        const isAway = (this.absences.get(one) ?? []).some((absence) => overlaps(absence, at, until));
        return !isAway && this.isThere(one, at, until) && this.inTheWay(one, at, until, '') === undefined;
      });
      if (person !== undefined) return { at, person };
    }
    return undefined;
  }
}
