// Plans the rest of a day anew, from the plan it had, the minute it is and what has happened: what has begun stays, what is decided
// stays, the rest moves as little as it must.

import { movedSteps } from '../explain/moved/movedSteps.ts';
import { trayNames } from '../explain/moved/trayNames.ts';
import { changesSince } from '../explain/moved.ts';
import type { Happened } from '../model/happened.ts';
import type { InputError } from '../model/inputError.ts';
import type { Plan } from '../model/plan.ts';
import type { ReplanAnswer } from '../model/replanAnswer.ts';
import type { Scenario } from '../model/scenario.ts';
import { KEPT } from '../model/underway.ts';
import type { Progress } from '../planning.ts';
import { type Asking, type AskLimits, ask, secondsLeft } from './asking.ts';
import { type DayAt, dayAt } from './replan/dayAt.ts';
import { type DayUnderway, type Saving, saveBegunTrays, wouldMoreHelp } from './replan/saving.ts';

export type Replanned =
  | { readonly ok: true; readonly answer: ReplanAnswer }
  /** What is told to have happened cannot be. */
  | { readonly ok: false; readonly errors: readonly InputError[] };

/** What there is to plan from: the minute of the day, and what has happened by then. */
export type At = {
  readonly now: number;
  readonly happened: Happened;
  /** What is wrong with the scenario of the rest of the day, read as any scenario is: nobody left who mixes, say. */
  readonly faultsOf: (scenario: Scenario) => readonly InputError[];
};

function unchanged(scenario: Scenario, plan: Plan, now: number): Replanned {
  const movePrice = scenario.underway?.movePrice ?? 0;
  return {
    ok: true,
    answer: { now, isUnchanged: true, plan, scenario, changes: [], movedTasks: 0, movePrice, movesCost: 0, told: [] },
  };
}

/** A fault of the rest of the day stands nowhere in what was told: it follows from it. */
function ofTheRest({ code, says, doThis }: InputError): InputError {
  return { code, path: '', says: `After what has happened: ${says}`, doThis };
}

type RestOfDay = Extract<DayAt, { readonly ok: true }> | { readonly ok: false; readonly errors: readonly InputError[] };

/** The scenario of the rest of the day, with what was taken for granted; or why what is told cannot be. Solves nothing. */
export function restOfDay(scenario: Scenario, plan: Plan, { now, happened, faultsOf }: At): RestOfDay {
  const day = dayAt(scenario, plan, now, happened);
  if (!day.ok) return day;
  const faults = faultsOf(day.scenario);
  return faults.length === 0 ? day : { ok: false, errors: faults.map((fault) => ofTheRest(fault)) };
}

/** `plan` keeps every rule of `scenario`; `happened` was read for both. With nothing told the plan comes back as it is. */
export async function replan(
  scenario: Scenario,
  plan: Plan,
  { now, happened, faultsOf }: At,
  asking: Asking,
  limits: Pick<AskLimits, 'effort'> = {},
): Promise<Replanned> {
  if (happened.happened.length === 0 && happened.keep.length === 0) return unchanged(scenario, plan, now);
  const begunMs = asking.now();
  const day = restOfDay(scenario, plan, { now, happened, faultsOf });
  if (!day.ok) return day;
  // What follows the last plan takes about as long as what came before the first.
  const lastMs = Math.max(LAST_MS, asking.now() - begunMs);
  const within = { ...asking, untilMs: asking.untilMs - lastMs };
  const { scenario: rest, plan: after, saved } = await planRest(day.scenario, plan, within, limits);
  const { movePrice } = rest.underway;
  const steps = movedSteps(rest, after);
  const changes = [...changesSince(plan, after, rest, day)];
  const marks = {
    now,
    moved: steps.map(({ step: { task, from } }) => ({ task, from })),
    changes: changes.map(({ minute, says }) => ({ minute, says })),
  };
  return {
    ok: true,
    answer: {
      now,
      isUnchanged: false,
      plan: { ...after, underway: marks },
      scenario: rest,
      changes,
      movedTasks: steps.length,
      movePrice,
      movesCost: movePrice * steps.length,
      told: [...day.told, ...saved.map(({ tray, minutes }) => overrunSays(plan, tray, minutes))],
    },
  };
}

/** Share of the time kept for giving more minutes to trays that are at work and still have no place; at least so many seconds, at most half. */
const SAVING_SHARE = 0.25;
const SAVING_SECONDS = 0.6;

/** Seconds below which another search is not begun: it would end later than it should. */
const LEAST_SECONDS = 0.3;

/** Milliseconds kept at least for what follows the last plan: what moved, and in which words. */
const LAST_MS = 40;

/** The rest of the day, as good as time allows. Trays at work that find no place are saved by going on longer. */
async function planRest(scenario: DayUnderway, plan: Plan, asking: Asking, limits: Pick<AskLimits, 'effort'>): Promise<Saving> {
  if (isAllDecided(scenario)) return { scenario, plan: await ask(scenario, asking, { effort: 1, startFrom: plan }), saved: [] };
  const { plan: first, wouldHelp } = await askStrictly(scenario, plan, asking, limits);
  const isOver = (): boolean => secondsLeft(asking) < LEAST_SECONDS;
  const mayHelp =
    wouldHelp ?? (first.stopped !== 'proved' && !isOver() && (await wouldMoreHelp(scenario, first, asking, limits)));
  if (!mayHelp || isOver()) return { scenario, plan: first, saved: [] };
  const saving = await saveBegunTrays(scenario, first, asking, limits);
  return isOver() ? saving : { ...saving, plan: await ask(saving.scenario, asking, { ...limits, startFrom: saving.plan }) };
}

type Strict = {
  readonly plan: Plan;
  /** Whether more minutes would give a place to something that is at work and had none; null: not looked into. */
  readonly wouldHelp: boolean | null;
};

/** Without more minutes for anything; cut short where they would help, and only there. */
async function askStrictly(
  scenario: DayUnderway,
  plan: Plan,
  asking: Asking,
  limits: Pick<AskLimits, 'effort'>,
): Promise<Strict> {
  const seconds = secondsLeft(asking);
  const kept = Math.min(seconds / 2, Math.max(SAVING_SECONDS, SAVING_SHARE * seconds));
  // Without a time limit there is none to be kept of it.
  const lookAtMs = seconds === Number.POSITIVE_INFINITY ? seconds : asking.untilMs - 1000 * kept;
  let soFar: (() => Plan) | null = null;
  let wouldHelp: boolean | null = null;
  const onProgress = ({ plannedTrays, trays }: Progress, planSoFar: () => Plan): void => {
    soFar = plannedTrays < trays ? planSoFar : null;
  };
  // The search stands still meanwhile, and goes on where they would not.
  const pause = async (): Promise<void> => {
    await asking.pause();
    if (wouldHelp !== null || soFar === null || asking.now() <= lookAtMs) return;
    wouldHelp = false;
    wouldHelp = await wouldMoreHelp(scenario, soFar(), asking, limits);
  };
  const cancelled = (): boolean => asking.cancelled() || wouldHelp === true;
  const first = await ask(scenario, { ...asking, cancelled, pause }, { ...limits, startFrom: plan, onProgress });
  return { plan: first, wouldHelp };
}

/** Whether nothing is left to choose: every step has begun or keeps its time, its place and its people. */
function isAllDecided({ underway, orders, products }: DayUnderway): boolean {
  const isKept = underway.tasks.every(({ state, keeps }) => state !== 'planned' || keeps.length === KEPT.length);
  const trays = underway.batches.reduce((sum, batch) => sum + batch.trays.length, 0);
  const wanted = products.reduce((sum, { id, piecesPerTray }) => {
    const pieces = orders.filter(({ product }) => product === id).reduce((all, order) => all + order.pieces, 0);
    return sum + Math.ceil(pieces / piecesPerTray);
  }, 0);
  return isKept && wanted <= trays;
}

function overrunSays(plan: Plan, tray: string, minutes: number): string {
  const name = trayNames(plan).tray(tray);
  return `${name} finds no place within its minutes; it is planned to go on up to ${minutes} minutes longer than it should. Look at it before it is baked.`;
}
