// The clock of a plan in words: what the wall clock shows at a minute, which day it is, and where the clocks change.
import { type Clock, clockChanges, clockOfPlan, dayOffsetAt, wallClockAt } from '../model/clock.ts';
import type { Plan } from '../model/plan.ts';

export type ClockChange = { readonly minute: number; readonly movesBy: number };

export type DayClock = {
  /** Length of the day, excluded. */
  readonly minutes: number;
  readonly changes: readonly ClockChange[];
  /** As the wall clock shows it: 05:31. */
  readonly shows: (minute: number) => string;
  /** As shows, and where the clocks go back and an hour comes twice, which of the two: "02:10 (first)". */
  readonly says: (minute: number) => string;
  /** Minutes since local midnight of the scenario's date, by the wall clock. */
  readonly localMinute: (minute: number) => number;
  /** Days from the scenario's date: -1 the evening before. */
  readonly dayOffset: (minute: number) => number;
  /** "Saturday 16 May 2026" of the day at a minute. */
  readonly dateWords: (minute: number) => string;
  /** Minute of an instant such as 2026-05-16T06:32:00+01:00. */
  readonly minuteOf: (instant: string) => number;
};

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

function dateInWords(date: string, offset: number): string {
  const [year = 0, month = 1, day = 1] = date.split('-').map(Number);
  const at = new Date(Date.UTC(year, month - 1, day + offset));
  return `${WEEKDAYS[at.getUTCDay()]} ${at.getUTCDate()} ${MONTHS[at.getUTCMonth()]} ${at.getUTCFullYear()}`;
}

/** Which of two equal clock times a minute is, when the clocks go back: "first", "second" or neither. */
function pass(changes: readonly ClockChange[], minute: number): string | undefined {
  for (const change of changes) {
    const back = -change.movesBy;
    if (back > 0 && minute >= change.minute - back && minute < change.minute) return 'first';
    if (back > 0 && minute >= change.minute && minute < change.minute + back) return 'second';
  }
  return undefined;
}

/** The clock of a plan. */
export function dayClockOf(plan: Plan): DayClock {
  const clock: Clock = clockOfPlan(plan);
  const changes = clockChanges(clock);
  const [hours = 0, minutes = 0] = wallClockAt(clock, 0).split(':').map(Number);
  const first = hours * 60 + minutes + dayOffsetAt(clock, 0) * 1440;
  const shows = (minute: number) => wallClockAt(clock, minute);
  return {
    minutes: clock.minutes,
    changes,
    shows,
    says: (minute) => {
      const which = pass(changes, minute);
      return which === undefined ? shows(minute) : `${shows(minute)} (${which})`;
    },
    localMinute: (minute) =>
      changes.reduce((local, change) => (change.minute <= minute ? local + change.movesBy : local), first + minute),
    dayOffset: (minute) => dayOffsetAt(clock, minute),
    dateWords: (minute) => dateInWords(plan.scenario.date, dayOffsetAt(clock, minute)),
    minuteOf: (instant) => Math.round((Date.parse(instant) - clock.startEpochMs) / 60000),
  };
}
