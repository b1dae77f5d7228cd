// Minutes and instants of a plan as the wall clock shows them. Used by the terminal summary.
import { type Clock, clockChanges, dayOffsetAt, instantAt, wallClockAt } from '../model/clock.ts';

/** 05:31; "-1d 22:00" the evening before; with the offset, as 01:30+01:00, in a night when the clocks change. */
export function sayTime(clock: Clock, minute: number): string {
  const offset = dayOffsetAt(clock, minute);
  const day = offset === 0 ? '' : `${offset > 0 ? '+' : ''}${offset}d `;
  const zone = clockChanges(clock).length === 0 ? '' : (/(?:Z|[+-]\d\d:\d\d)$/.exec(instantAt(clock, minute))?.[0] ?? '');
  return `${day}${wallClockAt(clock, minute)}${zone}`;
}

/** The minute of an instant written in a plan. */
export function minuteOf(clock: Clock, instant: string): number {
  return Math.round((Date.parse(instant) - clock.startEpochMs) / 60000);
}

/** 45 min; 1 h 05 min. */
export function sayMinutes(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  return hours === 0 ? `${minutes} min` : `${hours} h ${String(minutes % 60).padStart(2, '0')} min`;
}
