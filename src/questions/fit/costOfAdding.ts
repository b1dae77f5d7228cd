// What an addition costs the rest of the day: the plan with it beside the plan without. Used by fit.
import { sayMinute, sayMinutes } from '../../check/sayMinute.ts';
import { listed } from '../../explain/why/words.ts';
import { type Clock, clockOf } from '../../model/clock.ts';
import type { FitCost, LaterOrder } from '../../model/fitAnswer.ts';
import type { Plan, PlanOrder } from '../../model/plan.ts';
import { orderWords } from '../whatWouldFit/orderWords.ts';
import type { AddedTo } from './addedTo.ts';

/** Orders named one by one in a sentence; the rest are counted. */
const MOST_NAMED = 6;

const round = (price: number): number => Math.round(price * 1e6) / 1e6;

function laterOrder(day: AddedTo, index: number, before: PlanOrder, after: PlanOrder): LaterOrder | null {
  const order = day.before.orders[index];
  if (order === undefined || (before.readyAt === after.readyAt && before.lateMinutes === after.lateMinutes)) return null;
  const { readyAt: readyBefore, lateMinutes: lateBefore } = before;
  const { readyAt: readyWith, lateMinutes: lateWith } = after;
  const laterMinutes =
    readyBefore === null || readyWith === null ? null : Math.round((Date.parse(readyWith) - Date.parse(readyBefore)) / 60_000);
  return { number: index + 1, ...order, readyBefore, readyWith, laterMinutes, lateBefore, lateWith };
}

/** Minutes and which way: "12 minutes later". */
function byMinutes(minutes: number, more: string, fewer: string): string {
  return `${sayMinutes(Math.abs(minutes))} ${minutes > 0 ? more : fewer}`;
}

const lateWords = (minutes: number): string => (minutes === 0 ? 'on time' : `${sayMinutes(minutes)} late`);

function sayOrder(day: AddedTo, order: LaterOrder): string | null {
  const { lateBefore, lateWith, readyWith, readyBefore, laterMinutes } = order;
  const name = `${orderWords(day.before, order)} for ${order.readyBy}`;
  if (readyWith === null) return readyBefore === null ? null : `${name} is left out, in whole or in part.`;
  if (readyBefore === null) return `${name} is all there now.`;
  if (lateWith !== lateBefore) return `${name} is ${lateWords(lateWith ?? 0)}, without it ${lateWords(lateBefore ?? 0)}.`;
  return (laterMinutes ?? 0) > 0 ? `${name} ${byMinutes(laterMinutes ?? 0, 'later', 'earlier')}` : null;
}

function sayRest(day: AddedTo, orders: readonly LaterOrder[]): readonly string[] {
  const isMoved = ({ readyBefore, readyWith, lateBefore, lateWith }: LaterOrder): boolean =>
    readyBefore !== null && readyWith !== null && lateBefore === lateWith;
  const said = (list: readonly LaterOrder[]): readonly string[] => list.flatMap((order) => sayOrder(day, order) ?? []);
  const moved = said(orders.filter(isMoved));
  const more = moved.length - MOST_NAMED;
  const shown = moved.slice(0, MOST_NAMED);
  const later =
    moved.length === 0 ? [] : [`Ready later, but still in time: ${listed(more > 0 ? [...shown, `${more} more`] : shown)}.`];
  return [...said(orders.filter((order) => !isMoved(order))), ...later];
}

function sayDay(clock: Clock, base: Plan, changed: Plan): string {
  const [before, after] = [base.score.finishMinute, changed.score.finishMinute];
  if (before === after) return `The last tray is ready at ${sayMinute(clock, after)}, as without it.`;
  return `The last tray is ready at ${sayMinute(clock, after)} instead of ${sayMinute(clock, before)}, ${byMinutes(after - before, 'later', 'earlier')}.`;
}

/** When work begins matters where the day is to start late. */
function sayStart({ before }: AddedTo, clock: Clock, base: Plan, changed: Plan): readonly string[] {
  const [was, is] = [base.score.firstHandsOnMinute, changed.score.firstHandsOnMinute];
  if (before.goals.aim !== 'start-late' || was === is) return [];
  return [
    `Work begins at ${sayMinute(clock, is)} instead of ${sayMinute(clock, was)}, ${byMinutes(is - was, 'later', 'earlier')}.`,
  ];
}

function sayChanges(changes: number): readonly string[] {
  if (changes === 0) return [];
  const count = Math.abs(changes) === 1 ? 'One' : String(Math.abs(changes));
  return [`${count} ${changes > 0 ? 'more' : 'fewer'} temperature ${Math.abs(changes) === 1 ? 'change' : 'changes'}.`];
}

export function costOfAdding(day: AddedTo, base: Plan, changed: Plan): FitCost {
  const clock = clockOf(day.before);
  const orders = base.orders.flatMap((before, index) => {
    const after = changed.orders[index];
    return after === undefined ? [] : (laterOrder(day, index, before, after) ?? []);
  });
  const temperatureChanges = changed.score.temperatureChanges - base.score.temperatureChanges;
  return {
    price: round(changed.score.cost - base.score.cost),
    startMinutes: changed.score.firstHandsOnMinute - base.score.firstHandsOnMinute,
    makespanMinutes: changed.score.finishMinute - base.score.finishMinute,
    temperatureChanges,
    lateTrayMinutes: changed.score.lateTrayMinutes - base.score.lateTrayMinutes,
    leftOutTrays: changed.score.leftOutTrays - base.score.leftOutTrays,
    orders,
    says: [
      ...sayStart(day, clock, base, changed),
      sayDay(clock, base, changed),
      ...sayChanges(temperatureChanges),
      ...sayRest(day, orders),
    ],
  };
}
