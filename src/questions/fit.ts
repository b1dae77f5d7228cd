// Does it fit: a day planned without an addition and with it; what it costs the rest, how much would fit at most and by when, and
// what would make it fit. Used by the command `fit`.
import { busiestOf } from '../explain/busiest.ts';
import { listed } from '../explain/why/words.ts';
import type { FitAnswer, Most, ReadyTimes } from '../model/fitAnswer.ts';
import type { Plan } from '../model/plan.ts';
import { type Asking, type AskLimits, ask, secondsLeft } from './asking.ts';
import { type AddedTo, addedOrders, type FitTrial, trialOf, wantedOf } from './fit/addedTo.ts';
import { costOfAdding } from './fit/costOfAdding.ts';
import { MostPieces } from './fit/mostPieces.ts';
import { EarliestReady } from './fit/readyTimes.ts';
import { reasonsFor } from './fit/reasons.ts';
import { restatedPlan } from './fit/restatedPlan.ts';
import { AS_IT_IS } from './whatWouldFit/ladder.ts';
import { orderWords } from './whatWouldFit/orderWords.ts';
import { Pace, type Patching, type Trial, workersFor } from './whatWouldFit/trial.ts';
import { doFit, troubledOrders, type Wanted } from './whatWouldFit/trouble.ts';
import { QUESTION_ROUNDS, whatWouldFit } from './whatWouldFit.ts';

/** Shares of the time that is left: for the plan without the addition, for that with it, for whether it can fit where it did not. */
const BASE_SHARE = 1 / 4;
const VERDICT_SHARE = 1 / 3;
const WITH_SHARE = 1 / 3;

/** What would make it fit takes as much as so many of the questions about amounts and times. */
const CHANGES_WEIGHT = 2;

export type FitQuestion = {
  readonly day: AddedTo;
  /** A plan of the day without the addition. Default: it is planned first. */
  readonly base?: Plan;
  readonly patch: Patching;
  /** Rounds for each of the two plans. Default: as many as `plan` takes; with a time limit, as many as there is time for. */
  readonly effort?: number;
  /** Rounds for each question whether an amount, a time or a change can do. Default 600. */
  readonly rounds?: number;
  /** Told what is being looked for. */
  readonly onStep?: (says: string) => void;
};

/** The same asking with a share of the time that is left. */
function share(asking: Asking, part: number): Asking {
  const seconds = part * secondsLeft(asking);
  return { ...asking, untilMs: asking.now() + 1000 * seconds, workers: workersFor(asking, seconds) };
}

function limitsFor({ effort }: FitQuestion): AskLimits {
  return effort === undefined ? { stopsWhenFlat: true } : { effort };
}

type Found = {
  readonly plan: Plan;
  readonly wanted: Wanted;
  readonly fits: boolean;
  /** The argument, when it is proved that it does not fit. */
  readonly bound: Plan['bound'] | null;
  /** The latest plan of what is wanted, to go on from. */
  readonly start: Plan;
};

/**
 * The plan with the addition: the cheapest found from the plan without. When it does not fit there, whether it can at all is asked,
 * and the plan is sought from the answer.
 */
async function planWith(question: FitQuestion, trial: FitTrial, asking: Asking): Promise<Found> {
  const { day, base } = trial;
  const wanted = wantedOf(day, base);
  const limits = limitsFor(question);
  const cheapest = await ask(day.after, share(asking, WITH_SHARE), { ...limits, startFrom: base });
  const found = { plan: cheapest, wanted, fits: doFit(cheapest, wanted), bound: null, start: base };
  if (found.fits) return { ...found, start: cheapest };
  const asked = trialOf(trial, base, asking);
  if (!asked.hasTime()) return found;
  const { is, plan: shown } = await asked.decide(AS_IT_IS, VERDICT_SHARE);
  if (is === 'impossible' && asked.isWhole) return { ...found, bound: shown?.bound ?? null };
  if (is !== 'possible' || shown === null) return found;
  const fitting = restatedPlan(day.after, cheapest, shown);
  const again = await ask(day.after, share(asking, WITH_SHARE), { ...limits, startFrom: fitting ?? shown });
  // Where lateness costs little, or another order is as dear, the cheapest plan may be one in which it does not fit.
  const plan = doFit(again, wanted) ? again : fitting;
  return plan === null || !doFit(plan, wanted) ? found : { ...found, plan, fits: true, start: plan };
}

type Amounts = {
  readonly most: readonly Most[];
  readonly readyTimes: readonly ReadyTimes[];
  readonly notReached: readonly string[];
};

/** How much at most, and by when, for every order added. */
async function amounts(trial: FitTrial, found: Found, asking: Asking, onStep: (says: string) => void): Promise<Amounts> {
  const { day } = trial;
  const most: Most[] = [];
  const readyTimes: ReadyTimes[] = [];
  const notReached: string[] = [];
  const orders = addedOrders(day);
  let waiting = 2 * orders.length + (found.fits ? 0 : CHANGES_WEIGHT);
  // A share too small for two questions would be of no use.
  const timed = (): Trial => {
    const part = Math.max(1 / waiting--, (2 * trial.pace.leastSeconds) / secondsLeft(asking));
    return trialOf(trial, found.start, share(asking, Math.min(1, part)));
  };
  const hasTime = (): boolean => trialOf(trial, found.start, asking).hasTime();
  for (const order of orders) {
    const name = `${orderWords(day.after, order)} for ${order.readyBy}`;
    const known = { fits: found.fits, isImpossible: found.bound !== null };
    onStep(`how much of it fits: ${name}`);
    if (hasTime()) most.push(await new MostPieces(day.after, order, timed(), known).search());
    else notReached.push(`how many pieces would fit at most: ${name}`);
    onStep(`by when it can be ready: ${name}`);
    if (secondsLeft(asking) > 0)
      readyTimes.push(await new EarliestReady(day, order, timed(), found.fits ? found.plan : null).search());
    else notReached.push(`by when it could be ready: ${name}`);
  }
  return { most, readyTimes, notReached };
}

function verdictWords(day: AddedTo, { plan, fits, bound, wanted }: Found): string {
  const orders = addedOrders(day).map((order) => `${orderWords(day.after, order)} for ${order.readyBy}`);
  if (fits) {
    const readyAt = addedOrders(day).map(({ index }) => plan.orders[index]?.readyAt?.slice(11, 16) ?? '');
    const stays = wanted.mayFail.size === 0 ? '' : ' What is late or left out without it stays so.';
    return `It fits: ${listed(orders.map((order, at) => `${order}, ready at ${readyAt[at]}`))}.${stays}`;
  }
  if (bound !== null) return `It does not fit: no plan has ${listed(orders)} and the rest ready on time, proved.`;
  const areOwn = troubledOrders(plan).some((index) => wanted.orders.includes(index));
  const how = areOwn ? 'no plan was found that has it whole and on time' : 'with it others would be late or left out';
  return `It is not known to fit: ${listed(orders)}; ${how}, but it is not proved that there is no other way.`;
}

/** What would make it fit: the orders added, and those it pushes out, on time. */
async function changesFor(question: FitQuestion, found: Found, asking: Asking): Promise<FitAnswer['wouldFitIf']> {
  const { plan, wanted, fits } = found;
  if (fits) return null;
  const pushed = troubledOrders(plan).filter((index) => !wanted.mayFail.has(index));
  const orders = [...new Set([...wanted.orders, ...pushed])].sort((a, b) => a - b);
  const [answer] = await whatWouldFit(
    {
      scenario: question.day.after,
      plan,
      patch: question.patch,
      wanted: [{ ...wanted, orders }],
      effort: question.rounds ?? QUESTION_ROUNDS,
    },
    asking,
  );
  return answer ?? null;
}

/** Answers within the time of the asking; what there was no time for is said. Each plan in it has passed the judge. */
export async function fit(question: FitQuestion, asking: Asking): Promise<FitAnswer> {
  const { day, patch, onStep = () => {}, rounds = QUESTION_ROUNDS } = question;
  onStep('the day without it');
  const base = question.base ?? (await ask(day.before, share(asking, BASE_SHARE), limitsFor(question)));
  const trial: FitTrial = { day, base, patch, rounds, pace: new Pace() };
  onStep('the day with it');
  const found = await planWith(question, trial, asking);
  const { most, readyTimes, notReached } = await amounts(trial, found, asking, onStep);
  if (!found.fits) onStep('what would make it fit');
  const wouldFitIf = await changesFor(question, found, asking);
  const { plan, fits, bound, wanted } = found;
  return {
    fits,
    isProved: fits || bound !== null,
    says: verdictWords(day, found),
    added: addedOrders(day).map(({ index, ...order }) => ({
      number: index + 1,
      ...order,
      readyAt: plan.orders[index]?.readyAt ?? null,
      lateMinutes: plan.orders[index]?.lateMinutes ?? null,
    })),
    base,
    with: plan,
    cost: costOfAdding(day, base, plan),
    busiest: busiestOf(day.after, plan),
    most: [...most],
    readyTimes: [...readyTimes],
    reasons: fits ? [] : [...reasonsFor(day, plan, wanted, bound)],
    wouldFitIf,
    notReached: [...notReached],
  };
}
