// How sure a plan is, for people: the chance of every order, the trays at risk, what hurts most. Part of the terminal summary.
import { type DayClock, dayClockOf } from '../draw/dayClock.ts';
import type { HowSure, OrderSure, Risk, TrayAtRisk } from '../model/howSure.ts';
import type { Plan } from '../model/plan.ts';
import type { Spread } from '../model/spread.ts';
import { columns } from './columns.ts';
import type { Ink } from './ink.ts';
import { sayTime } from './sayTime.ts';

/** Most orders and trays listed one by one; a screen holds no more beside the rest. */
const MAX_ORDERS = 16;
const MAX_TRAYS = 8;

/** Trouble rarer than this is not told of beside worse trouble of the same tray. */
const RARE = 0.05;

/** The work whose minutes stray, as people call it. */
const WORK: Readonly<Record<keyof Spread, string>> = {
  mix: 'mixing',
  fold: 'folding',
  bulk: 'bulk fermentation',
  divide: 'dividing',
  shape: 'shaping',
  rest: 'resting',
  retard: 'retarding',
  proof: 'proofing',
  bake: 'baking',
  load: 'loading',
  unload: 'unloading',
  cool: 'cooling',
  finish: 'finishing',
};

/** 0.873 as 87; never 0 or 100 where it is not quite. */
function outOf100(chance: number): string {
  const percent = chance * 100;
  if (percent > 0 && percent < 0.5) return 'under 1';
  if (percent < 100 && percent >= 99.5) return 'over 99';
  return String(Math.round(percent));
}

function sayAll({ allOnTime, mornings, seed }: HowSure): string {
  const { chance, low, high } = allOnTime;
  const [least, most] = [outOf100(low), outOf100(high)];
  const between = least === most ? '' : `between ${least} and ${most}, `;
  const mostly = `going by ${mornings.toLocaleString('en')} simulated (seed ${seed})`;
  return `Everything is ready on time in ${outOf100(chance)} of 100 mornings: ${between}${mostly}.`;
}

function sayOrderRows(orders: readonly OrderSure[], plan: Plan, clock: DayClock): readonly string[] {
  const nameOf = new Map(plan.bakehouse.products.map(({ id, name }) => [id, name]));
  const time = (instant: string | null): string => (instant === null ? '-' : sayTime(clock, clock.minuteOf(instant)));
  const rows = orders.map((order) => [
    `${outOf100(order.onTime.chance)} of 100`,
    time(order.readyBy),
    time(order.usuallyReadyAt),
    time(order.mostlyReadyAt),
    `${order.pieces} ${nameOf.get(order.product) ?? order.product}`,
  ]);
  return columns([['On time', 'Due', 'Half of mornings by', '9 in 10 by', 'Order'], ...rows]);
}

function sayOrderChances({ orders }: HowSure, plan: Plan, ink: Ink): readonly string[] {
  const ranked = [...orders].sort((a, b) => a.onTime.chance - b.onTime.chance);
  const shown = new Set(ranked.slice(0, MAX_ORDERS));
  const inOrder = orders.filter((order) => shown.has(order)).sort((a, b) => Date.parse(a.readyBy) - Date.parse(b.readyBy));
  const [head, ...lines] = sayOrderRows(inOrder, plan, dayClockOf(plan));
  const rest = ranked.slice(MAX_ORDERS);
  const least = rest[0];
  const orderWord = rest.length === 1 ? 'order' : 'orders';
  return [
    ink.quiet(head ?? ''),
    ...lines,
    ...(least === undefined
      ? []
      : [`and ${rest.length} more ${orderWord}, on time in ${outOf100(least.onTime.chance)} of 100 or more`]),
  ];
}

function sayRisk(risk: Risk, what: string): readonly string[] {
  if (risk.chance < RARE) return [];
  return [`${what} in ${outOf100(risk.chance)} of 100, by ${Math.max(1, Math.round(risk.minutes))} min on average`];
}

function sayTray({ tray, late, standsTooLong, bakesTooLong }: TrayAtRisk): string {
  const risks = [
    ...sayRisk(late, 'late'),
    ...sayRisk(standsTooLong, 'its dough stands too long'),
    ...sayRisk(bakesTooLong, 'too long in the oven'),
  ];
  return `  ${tray}: ${risks.join('; ')}`;
}

function sayTrays({ traysAtRisk }: HowSure): readonly string[] {
  if (traysAtRisk.length === 0)
    return ['No tray is at risk: none is late, or stands or bakes too long, in more than 5 of 100 mornings.'];
  const more = traysAtRisk.length - MAX_TRAYS;
  return [
    'Trays at risk, in mornings out of 100:',
    ...traysAtRisk.slice(0, MAX_TRAYS).map(sayTray),
    ...(more > 0 ? [`  and ${more} more`] : []),
  ];
}

function sayPastHours({ pastHours }: HowSure, plan: Plan): readonly string[] {
  const nameOf = new Map(plan.bakehouse.people.map(({ id, name }) => [id, name]));
  return pastHours.map(
    ({ person, works }) => `${nameOf.get(person) ?? person}: ${sayRisk(works, 'at work after hours').join('')}.`,
  );
}

function upper(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

function sayMost(howSure: HowSure, plan: Plan): readonly string[] {
  const { hurts, hurtsMost, lateTrayMinutes } = howSure;
  const [first] = hurts;
  const planned = howSure.plannedLateTrayMinutes;
  const late =
    lateTrayMinutes === 0
      ? 'Lateness on an average morning: less than 0.1 min over all trays.'
      : `Trays are late by ${lateTrayMinutes} min in all on an average morning, ${planned} min when every step keeps its minutes.`;
  if (first === undefined || first.lateTrayMinutes <= 0) return [late];
  const all = [...plan.bakehouse.doughs, ...plan.bakehouse.products];
  const of = hurtsMost === null ? '' : `, above all that of ${all.find(({ id }) => id === hurtsMost.of)?.name ?? hurtsMost.of}`;
  const work = WORK[first.step];
  return [
    late,
    `${upper(work)} hurts most${of}: if it always kept its minutes, lateness would be ${first.lateTrayMinutes} min less.`,
  ];
}

/** The spreads it rests on, in words; they are assumptions unless the baker has measured them. */
function saySpread({ spread }: HowSure, plan: Plan): string {
  const used = new Set<string>(plan.tasks.map(({ step }) => step));
  if (used.has('bake')) for (const work of ['load', 'unload']) used.add(work);
  const steps = Object.entries(spread).flatMap(([step, percent]) => (used.has(step) ? [`${step} ${percent} %`] : []));
  return `Assumed: in two mornings of three real minutes lie within so much of those stated: ${steps.join(', ')}. Time a few mornings and state your own.`;
}

export function sayHowSure(howSure: HowSure, plan: Plan, ink: Ink): readonly string[] {
  return [
    sayAll(howSure),
    ...sayOrderChances(howSure, plan, ink),
    ...sayTrays(howSure),
    ...sayPastHours(howSure, plan),
    ...sayMost(howSure, plan),
    saySpread(howSure, plan),
  ];
}
