// How to tell by itself whether what is kept is what clients.ts wrote, whole. Used by lookAtCopy.ts and overHttp.ts.
import { createHash } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { z } from 'zod';
import { judge } from '../../../src/check/judge.ts';
import { drawPlan } from '../../../src/draw/drawPlan.ts';
import { fingerprint } from '../../../src/model/fingerprint.ts';
import { planSchema } from '../../../src/model/plan.ts';
import type { PostedRecord, WorkRecord } from '../../../src/store/store.ts';
import { PARTS, type Written } from '../../store/killed/wrongIn.ts';
import { DATES, dateOf, dayOf, eventOf, NAMES, nameOf, numberOfDay, textOf } from './days.ts';

/** Judging and drawing thousands of plans anew in every round would take hours: the same bytes are as whole as they were. */
const whole = new Set<string>();

function isOnce(parts: readonly unknown[], isWhole: () => boolean): boolean {
  const digest = createHash('sha256').update(JSON.stringify(parts)).digest('base64');
  if (!whole.has(digest) && isWhole()) whole.add(digest);
  return whole.has(digest);
}

/** Null when the text is no JSON. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

/** The number of the day a plan is for; NaN when it is no plan. */
function numberOfPlan(plan: unknown): number {
  const read = planSchema.safeParse(plan);
  return read.success ? numberOfDay(read.data.scenario) : Number.NaN;
}

/** Whether it is a plan of the day of this number, keeps every rule, and costs what it says. */
export function isPlanOf(number: number, plan: unknown): boolean {
  return isOnce(['plan', number, plan], () => {
    const read = planSchema.safeParse(plan);
    if (!read.success || Number.isNaN(number)) return false;
    const day = dayOf(number);
    const { breaches, figures } = judge(day, read.data);
    const isOfDay = read.data.scenario.fingerprint === fingerprint(day);
    return isOfDay && breaches.length === 0 && figures.cost === read.data.score.cost;
  });
}

/** Whether a value is the scenario of this number, however it was written. */
export function isDayOf(number: number, scenario: unknown): boolean {
  return isOnce(['day', number, scenario], () => isDeepStrictEqual(scenario, JSON.parse(JSON.stringify(dayOf(number)))));
}

export type PostedWhole = Pick<PostedRecord, 'date'> & { readonly scenario: unknown; readonly plan: unknown };

/** The number of a posted plan with its scenario; null when they are not whole. */
export function numberOfPosted({ date, scenario, plan }: PostedWhole): number | null {
  const number = numberOfPlan(plan);
  return isPlanOf(number, plan) && isDayOf(number, scenario) && date === dateOf(number) ? number : null;
}

function hasItsPages({ plan, pages }: PostedRecord): boolean {
  return isOnce(['pages', plan, pages], () => isDeepStrictEqual(pages, drawPlan(planSchema.parse(parsed(plan)))));
}

const askedSchema = z.looseObject({ ask: z.looseObject({ scenario: z.unknown() }) });
const orderedSchema = z.looseObject({ pieces: z.number() });

/** Also what was not acknowledged is there with the whole request, and is done only with its plan. */
function isWork({ asked, answer, state }: WorkRecord, number: number): boolean {
  const read = askedSchema.safeParse(parsed(asked));
  const isOpen = state === 'waiting' || state === 'running';
  if (!read.success || !isDayOf(number, read.data.ask.scenario) || (!isOpen && state !== 'done')) return false;
  return answer === null ? isOpen : isPlanOf(number, parsed(answer));
}

export const WRITTEN: Written = {
  names: NAMES,
  dates: DATES,
  scenario: ({ name, text }) => {
    const number = Number.parseInt(text.slice(2), 10);
    return textOf(number) === text && nameOf(number) === name ? number : null;
  },
  posted: (record) => {
    const { date, scenario, plan } = record;
    const number = numberOfPosted({ date, scenario: parsed(scenario), plan: parsed(plan) });
    return number !== null && hasItsPages(record) ? number : null;
  },
  event: (text) => {
    const event = orderedSchema.safeParse(parsed(text));
    if (!event.success) return null;
    const { pieces } = event.data;
    const number = Math.floor((pieces - 1) / PARTS);
    const part = (pieces - 1) % PARTS;
    return isDeepStrictEqual(event.data, eventOf(number, part)) ? { number, part } : null;
  },
  isWork,
};
