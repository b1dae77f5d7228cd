// Guesses how a clock time that cannot be read should be written: 5:30, 5.30, 24:00, 0530, "-1 21:30".
import { CLOCK_PATTERN } from '../model/units.ts';

const LOOSE = /^(?:([+-])?\s*([0-7])\s*d?\s+)?(\d{1,2})[:.h]?(\d{2})?\s*(am|pm)?$/i;

function hoursOf(hour: number, half: string | undefined): number {
  if (half === undefined || hour > 12) return hour;
  return (hour % 12) + (half.toLowerCase() === 'pm' ? 12 : 0);
}

/** The clock time somebody probably meant, or undefined. */
export function clockHint(value: unknown): string | undefined {
  if (typeof value !== 'string' && typeof value !== 'number') return undefined;
  const text = String(value).trim();
  if (text.length > 20) return undefined;
  const match = LOOSE.exec(/^\d{3}$/.test(text) ? `0${text}` : text);
  if (match === null) return undefined;
  const [, sign, days, hour, minute, half] = match;
  const isMidnight = Number(hour) === 24 && days === undefined && Number(minute ?? 0) === 0;
  const offset = days === undefined || days === '0' ? '' : `${sign ?? '+'}${days}d `;
  const clock = `${String(hoursOf(Number(hour), half)).padStart(2, '0')}:${minute ?? '00'}`;
  const hint = isMidnight ? '+1d 00:00' : `${offset}${clock}`;
  return CLOCK_PATTERN.test(hint) ? hint : undefined;
}
