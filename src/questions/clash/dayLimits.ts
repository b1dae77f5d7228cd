// Start and end of the day as limits that can be lifted: a day earlier, a day later. Used by clash.
import { clockOf } from '../../model/clock.ts';
import type { Scenario } from '../../model/scenario.ts';
import { CLOCK_PATTERN, MAX_DAY_MINUTES } from '../../model/units.ts';
import type { Limit } from './limit.ts';

/** A clock time so many days later, or earlier below 0. */
export function daysLater(text: string, days: number): string {
  const [, offset, time] = /^(?:([+-]\d)d )?(.+)$/.exec(text) ?? [];
  const day = Number(offset ?? 0) + days;
  return `${day === 0 ? '' : `${day > 0 ? '+' : ''}${day}d `}${time}`;
}

function isDay(scenario: Scenario, day: Scenario['day']): boolean {
  if (!CLOCK_PATTERN.test(day.from) || !CLOCK_PATTERN.test(day.until)) return false;
  return clockOf({ ...scenario, day }).minutes <= MAX_DAY_MINUTES;
}

/** Both, or neither when the day is too long to be made longer at both ends. */
export function dayLimits(scenario: Scenario): readonly Limit[] {
  const { from, until } = scenario.day;
  const earlier = daysLater(from, -1);
  const later = daysLater(until, 1);
  if (!isDay(scenario, { from: earlier, until: later })) return [];
  return [
    {
      kind: 'day-start',
      rule: 'DAY_WINDOW',
      of: 'day',
      says: `the day begins at ${from}`,
      lifted: 'it begins a day earlier',
      lift: (day) => ({ ...day, day: { ...day.day, from: earlier } }),
    },
    {
      kind: 'day-end',
      rule: 'DAY_WINDOW',
      of: 'day',
      says: `the day ends at ${until}`,
      lifted: 'it ends a day later',
      lift: (day) => ({ ...day, day: { ...day.day, until: later } }),
    },
  ];
}
