// The day as whole minutes: local clock times, day offsets and clock changes in, minutes and ISO instants out.
// Time zones come from the platform's IANA data through Temporal (TC39), here by a polyfill.
import { Temporal } from 'temporal-polyfill';

/** A day laid out on a real time line. Minute 0 is `from`; `minutes` is the length, excluded. */
export type Clock = {
  readonly timeZone: string;
  readonly date: string;
  /** Milliseconds since the Unix epoch at minute 0. */
  readonly startEpochMs: number;
  readonly minutes: number;
};

type DayText = {
  readonly date: string;
  readonly timeZone: string;
  readonly day: { readonly from: string; readonly until: string };
};

const CLOCK = /^(?:([+-]\d)d )?(\d\d):(\d\d)$/;

function localDateTime(date: string, text: string): Temporal.PlainDateTime {
  const match = CLOCK.exec(text);
  if (match === null) throw new RangeError(`not a clock time: ${text}`);
  const [, days, hour, minute] = match;
  return Temporal.PlainDate.from(date)
    .add({ days: Number(days ?? 0) })
    .toPlainDateTime({ hour: Number(hour), minute: Number(minute) });
}

function epochMs(date: string, timeZone: string, text: string): number {
  return localDateTime(date, text).toZonedDateTime(timeZone).epochMilliseconds;
}

/** Whether the platform knows the time zone. */
export function isTimeZone(timeZone: string): boolean {
  try {
    Temporal.PlainDate.from('2026-01-01').toZonedDateTime(timeZone);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

/**
 * How often a local clock time comes on its date: 1 on ordinary days; 0 when the clocks go forward over it;
 * 2 when they go back over it.
 */
export function occurrences(date: string, timeZone: string, text: string): 0 | 1 | 2 {
  const local = localDateTime(date, text);
  const earlier = local.toZonedDateTime(timeZone, { disambiguation: 'earlier' });
  const later = local.toZonedDateTime(timeZone, { disambiguation: 'later' });
  if (earlier.epochMilliseconds === later.epochMilliseconds) return 1;
  return earlier.toPlainDateTime().equals(local) ? 2 : 0;
}

/** Lays the scenario's day on the time line. A day may hold a clock change and is then 60 minutes longer or shorter. */
export function clockOf(scenario: DayText): Clock {
  const { date, timeZone, day } = scenario;
  const startEpochMs = epochMs(date, timeZone, day.from);
  const endEpochMs = epochMs(date, timeZone, day.until);
  return { timeZone, date, startEpochMs, minutes: Math.round((endEpochMs - startEpochMs) / 60000) };
}

/** Minutes from the start of the day to a local clock time; below 0 or past the end when it lies outside the day. */
export function minuteAt(clock: Clock, text: string): number {
  return Math.round((epochMs(clock.date, clock.timeZone, text) - clock.startEpochMs) / 60000);
}

function zonedAt(clock: Clock, minute: number): Temporal.ZonedDateTime {
  return Temporal.Instant.fromEpochMilliseconds(clock.startEpochMs + minute * 60000).toZonedDateTimeISO(clock.timeZone);
}

/** Instants written before: a plan, its judge and its sheet name the same minutes again and again. */
const written = new Map<string, string>();
const MOST_WRITTEN = 10_000;

/** A minute as local time with offset, as 2026-05-16T06:32:00+01:00. */
export function instantAt(clock: Clock, minute: number): string {
  const key = `${clock.startEpochMs + minute * 60000} ${clock.timeZone}`;
  const known = written.get(key);
  if (known !== undefined) return known;
  const text = zonedAt(clock, minute).toString({ timeZoneName: 'never' });
  if (written.size >= MOST_WRITTEN) written.clear();
  written.set(key, text);
  return text;
}

/** A minute as the wall clock shows it, as 06:32. */
export function wallClockAt(clock: Clock, minute: number): string {
  return instantAt(clock, minute).slice('2026-05-16T'.length, '2026-05-16T06:32'.length);
}

/** Days from the scenario's date to the local date at a minute: -1 the evening before, 0 on the day. */
export function dayOffsetAt(clock: Clock, minute: number): number {
  const date = instantAt(clock, minute).slice(0, '2026-05-16'.length);
  return date === clock.date ? 0 : Temporal.PlainDate.from(clock.date).until(date).days;
}

/** The local date at an instant (RFC 3339), or so many days from it, as 2026-05-16. */
export function dateAt(instant: string, timeZone: string, days = 0): string {
  return Temporal.Instant.from(instant).toZonedDateTimeISO(timeZone).toPlainDate().add({ days }).toString();
}

/** The whole minute of the day that runs at an instant (RFC 3339); below 0 or past the end when it lies outside the day. */
export function minuteOfInstant(clock: Clock, instant: string): number {
  return Math.floor((Temporal.Instant.from(instant).epochMilliseconds - clock.startEpochMs) / 60000);
}

/** The clock of a plan read from a file: its own start instant and length. */
export function clockOfPlan(plan: {
  readonly scenario: { readonly date: string; readonly timeZone: string };
  readonly day: { readonly startsAt: string; readonly minutes: number };
}): Clock {
  return {
    timeZone: plan.scenario.timeZone,
    date: plan.scenario.date,
    startEpochMs: Temporal.Instant.from(plan.day.startsAt).epochMilliseconds,
    minutes: plan.day.minutes,
  };
}

/** Minutes in the day at which the clocks change, with the minutes they move by (60 when the night loses an hour). */
export function clockChanges(clock: Clock): readonly { readonly minute: number; readonly movesBy: number }[] {
  const end = clock.startEpochMs + clock.minutes * 60000;
  const changes: { minute: number; movesBy: number }[] = [];
  let at = zonedAt(clock, 0);
  for (;;) {
    const next = at.getTimeZoneTransition('next');
    if (next === null || next.epochMilliseconds >= end) return changes;
    changes.push({
      minute: Math.round((next.epochMilliseconds - clock.startEpochMs) / 60000),
      movesBy: (next.offsetNanoseconds - next.subtract({ minutes: 1 }).offsetNanoseconds) / 60e9,
    });
    at = next;
  }
}
