// Cuts a stretch of minutes in two at now, so that a breach that has happened and one that goes on are told apart.
import type { JudgedDay } from './judgedDay.ts';

/** Minutes from the start of the day, `until` excluded. */
export type Stretch = { readonly from: number; readonly until: number };

/** The stretch itself, or its part before now and its part from now on. */
export function cutAtNow(day: JudgedDay, from: number, until: number): readonly Stretch[] {
  const now = day.scenario.underway?.now;
  if (now === undefined || now <= from || now >= until) return [{ from, until }];
  return [
    { from, until: now },
    { from: now, until },
  ];
}
