// Minutes of a plan as people say them. Used by the terminal summary.
import type { DayClock } from '../draw/dayClock.ts';

/** 05:31; "-1d 22:00" the evening before; 01:30 (second) in a night when the clocks go back. */
export function sayTime(clock: DayClock, minute: number): string {
  const days = clock.dayOffset(minute);
  return `${days === 0 ? '' : `${days > 0 ? '+' : ''}${days}d `}${clock.says(minute)}`;
}

/** 45 min; 1 h 05 min. */
export function sayMinutes(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  return hours === 0 ? `${minutes} min` : `${hours} h ${String(minutes % 60).padStart(2, '0')} min`;
}
