// A day with an addition: which of its orders are new, and trials of it that accept what the day fails at already. Used by fit.

import { type Clock, minuteAt } from '../../model/clock.ts';
import type { Plan } from '../../model/plan.ts';
import type { Order, Scenario } from '../../model/scenario.ts';
import type { Asking } from '../asking.ts';
import { acceptanceOf } from '../whatWouldFit/accepted.ts';
import { type Pace, type Patching, Trial } from '../whatWouldFit/trial.ts';
import { troubledOrders, type Wanted } from '../whatWouldFit/trouble.ts';

/** The day without the addition and with it; the orders added stand behind the others. */
export type AddedTo = { readonly before: Scenario; readonly after: Scenario };

/** An order with its index in the day with the addition. */
export type AddedOrder = Order & { readonly index: number };

export function addedOrders({ before, after }: AddedTo): readonly AddedOrder[] {
  return after.orders.flatMap((order, index) => (index < before.orders.length ? [] : [{ ...order, index }]));
}

/** What is to fit: the orders added; what is in trouble without them may stay so. */
export function wantedOf(day: AddedTo, base: Plan): Wanted {
  const orders = addedOrders(day).map(({ index }) => index);
  return { orders, changeable: orders, mayFail: new Set(troubledOrders(base)) };
}

export type FitTrial = {
  readonly day: AddedTo;
  readonly base: Plan;
  readonly patch: Patching;
  readonly rounds: number;
  readonly pace: Pace;
};

/** Asks whether the addition, or another amount or time of it, can fit. `startFrom`: a plan of the day with or without it. */
export function trialOf({ day, base, patch, rounds, pace }: FitTrial, startFrom: Plan, asking: Asking): Trial {
  const wanted = wantedOf(day, base);
  const acceptance = acceptanceOf(day.before, base, wanted.mayFail);
  return new Trial({ scenario: day.after, wanted, acceptance, startFrom, patch, rounds, pace }, asking);
}

/** When an order of a plan of the day is ready, counted from the last order: what is accepted may be missing before it. */
export function readyMinuteOf(plan: Plan, day: AddedTo, index: number, clock: Clock): number | null {
  const readyAt = plan.orders[plan.orders.length - (day.after.orders.length - index)]?.readyAt ?? null;
  return readyAt === null ? null : Math.round((Date.parse(readyAt) - clock.startEpochMs) / 60_000);
}

export function dueMinuteOf(clock: Clock, { readyBy }: Pick<Order, 'readyBy'>): number {
  return minuteAt(clock, readyBy);
}
