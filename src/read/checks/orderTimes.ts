// ORDER_OUTSIDE_DAY: 0 < readyBy <= minutes of the day.
import { minuteAt } from '../../model/clock.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';

export function orderTimes({ clock, day, orders }: Parts): readonly CodedError[] {
  if (clock === undefined || day === undefined || clock.minutes <= 0) return [];
  const minuteOf = new Map(
    [...new Set(orders.sound.map(({ value }) => value.readyBy))].map((text) => [text, minuteAt(clock, text)]),
  );
  return orders.sound.flatMap(({ at, value }) => {
    const minute = minuteOf.get(value.readyBy) ?? 0;
    if (minute > 0 && minute <= clock.minutes) return [];
    const where = minute > 0 ? `after the day ends at ${day.until}` : `not after the day begins at ${day.from}`;
    const says = `Order ${Number(at.split('/').at(-1)) + 1} is wanted at ${value.readyBy}, ${where}.`;
    return [inputErrorAt('ORDER_OUTSIDE_DAY', `${at}/readyBy`, says, 'Correct the time, or make the day longer.')];
  });
}
