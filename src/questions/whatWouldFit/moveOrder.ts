// The change "this order later": one of the orders that are to fit is wanted so many minutes later. Used by whatWouldFit.
import { sayMinute, sayMinutes } from '../../check/sayMinute.ts';
import { minuteAt } from '../../model/clock.ts';
import type { Ground, LadderOf, Variant } from './ladder.ts';
import { orderWords } from './orderWords.ts';

const FIRST_MINUTES = 16;

function variantFor({ scenario, clock }: Ground, index: number, minutes: number): Variant[] {
  const order = scenario.orders[index];
  if (order === undefined) return [];
  const minute = minuteAt(clock, order.readyBy) + minutes;
  if (minute > clock.minutes) return [];
  const readyBy = sayMinute(clock, minute);
  // In a night when the clocks change, a time can come twice or never.
  if (minuteAt(clock, readyBy) !== minute) return [];
  return [
    {
      amount: minutes,
      operations: [{ op: 'replace', path: `/orders/${index}/readyBy`, value: readyBy }],
      does: `Let ${orderWords(scenario, order)} be ready by ${readyBy} instead of ${order.readyBy}, ${sayMinutes(minutes)} later`,
      earlierBy: 0,
    },
  ];
}

export const moveOrder: LadderOf = (ground) => {
  const { scenario, clock, wanted } = ground;
  const room = wanted.changeable.map((index) => clock.minutes - minuteAt(clock, scenario.orders[index]?.readyBy ?? '00:00'));
  const top = Math.max(0, ...room);
  if (top < 1) return 'It is wanted at the end of the day and cannot be wanted later.';
  return {
    kind: 'move-order',
    top,
    first: Math.min(FIRST_MINUTES, top),
    at: (minutes) => wanted.changeable.flatMap((index) => variantFor(ground, index, minutes)),
    topWords: 'Wanting it at the end of the day',
    // With several orders, the higher rungs leave some of them out.
    isRising: wanted.changeable.length === 1,
  };
};
