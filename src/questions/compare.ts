// What changes to a day would bring: each planned from the plan of the day as it is, how many trays it would take, and in a sentence
// what that comes to and what of it is proved. Used by the command line and the service.
import { clockOf, instantAt } from '../model/clock.ts';
import type { ComparedDay, Comparison } from '../model/comparison.ts';
import type { Plan } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import { type Asking, ask, secondsLeft } from './asking.ts';
import { type CapacityFound, capacity } from './capacity.ts';
import { capacityAnswer } from './compare/capacityAnswer.ts';
import { carriedPlan } from './compare/carriedPlan.ts';
import { dayFiguresOf } from './compare/dayFigures.ts';
import { capacityDifference, type Judged, priceDifference } from './compare/differences.ts';
import { type Entry, entryOf } from './compare/entry.ts';
import { Relations } from './compare/relations.ts';
import { sweepVerdict } from './compare/sweepVerdict.ts';
import { verdict } from './compare/verdict.ts';

/** Share of the time for plans; what is left is for capacities. */
const PLANS_SHARE = 0.5;

/** The day as it is gets so many times what another gets: the others start from what it found. */
const BASE_WEIGHT = 2;

/** Seconds a capacity gets at least when there is time at all. */
const LEAST_CAPACITY_SECONDS = 0.2;

/** Prices are stated to six decimals. */
const ROUNDING = 1e-6;

export type CompareQuestion = {
  readonly base: Scenario;
  /** The changed days; `value` is what a sweep set, null for a change. */
  readonly days: readonly { readonly title: string; readonly value: number | null; readonly scenario: Scenario }[];
  readonly sweep: { readonly pointer: string; readonly place: string; readonly now: number } | null;
  /** Rounds of search for each plan and each question of a capacity. */
  readonly effort?: number;
  /** Product whose trays a capacity adds; absent: the day's mix. */
  readonly of?: string;
};

/** Called before each piece of work: what it is, and how many are done of how many. */
export type CompareProgress = (says: string, done: number, all: number) => void;

type Work = {
  readonly question: CompareQuestion;
  readonly asking: Asking;
  readonly entries: readonly Entry[];
  readonly relations: Relations;
  readonly onProgress: CompareProgress;
};

function share(left: number, parts: number): { readonly seconds?: number } {
  return left === Number.POSITIVE_INFINITY ? {} : { seconds: Math.max(0, left) / parts };
}

/** Into how many parts the time left is divided for a piece of work. */
function partsFor(index: number, order: readonly Entry[]): number {
  return index === 0 ? (order.length - 1 + BASE_WEIGHT) / BASE_WEIGHT : order.length - index;
}

/** The best plan to start from: of a stricter day, else of the day before in a sweep, else of the day as it is. */
function startFor(entry: Entry, before: Entry, { relations, entries, question }: Work): Plan | undefined {
  const [best] = [...relations.stricter(entry)].sort((a, b) => a.plan.score.cost - b.plan.score.cost);
  const other = question.sweep === null ? entries[0] : before;
  return best?.plan ?? other?.plan ?? undefined;
}

async function planOne(entry: Entry, before: Entry, seconds: { readonly seconds?: number }, work: Work): Promise<void> {
  const { asking, question, relations } = work;
  const startFrom = entry === work.entries[0] ? undefined : startFor(entry, before, work);
  const twin = relations.stricter(entry).find(({ fingerprint }) => fingerprint === entry.fingerprint);
  if (twin !== undefined) {
    entry.plan = twin.plan;
    return;
  }
  entry.plan = await ask(entry.scenario, asking, {
    ...seconds,
    ...(question.effort === undefined ? {} : { effort: question.effort }),
    ...(startFrom === undefined ? {} : { startFrom }),
  });
}

/** A plan that stands on another day too, and is cheaper than that day's own, is that day's. */
function carryOver({ entries }: Work): void {
  for (const entry of entries) {
    for (const other of entries) {
      if (other === entry || entry.plan === null || other.plan === null) continue;
      entry.plan = carriedPlan(entry.scenario, entry.plan, other.plan, other.title) ?? entry.plan;
    }
  }
}

/** A price nothing on a roomier day can beat, nothing on a stricter one can. */
function shareBounds({ entries, relations }: Work): void {
  for (const entry of entries) {
    for (const other of relations.roomier(entry)) {
      if (entry.plan === null || !relations.mayProve(entry, other)) continue;
      const lowerBound = Math.min(entry.plan.score.cost, other.plan.score.lowerBound);
      if (lowerBound > entry.plan.score.lowerBound + ROUNDING) entry.plan = withBound(entry.plan, lowerBound, other);
    }
  }
}

function withBound(plan: Plan, lowerBound: number, other: { readonly title: string; readonly plan: Plan }): Plan {
  const { cost } = plan.score;
  const isBest = lowerBound >= cost;
  return {
    ...plan,
    score: { ...plan.score, lowerBound, gap: cost === 0 ? 0 : Math.round(((cost - lowerBound) / cost) * 1e6) / 1e6 },
    bound: {
      argument: other.plan.bound.argument,
      says: `not even in "${other.title}", which has more room: ${other.plan.bound.says}`,
    },
    ...(isBest ? { holds: 'optimal', stopped: 'proved' } : {}),
  };
}

async function planAll(work: Work, order: readonly Entry[]): Promise<void> {
  const { asking, onProgress } = work;
  const all = secondsLeft(asking);
  const kept = all === Number.POSITIVE_INFINITY ? 0 : all * (1 - PLANS_SHARE);
  let before = order[0];
  for (const [index, entry] of order.entries()) {
    if (index > 0 && asking.cancelled()) break;
    onProgress(entry.title, index, 2 * order.length);
    await planOne(entry, before ?? entry, share(secondsLeft(asking) - kept, partsFor(index, order)), work);
    before = entry;
  }
  carryOver(work);
  shareBounds(work);
}

function isOnTime({ score }: Plan): boolean {
  return score.lateTrayMinutes === 0 && score.leftOutTrays === 0;
}

/** What is known to work: the day itself when its plan is on time, and what works on stricter days. */
function knownFor(entry: Entry, { relations, entries }: Work): { readonly extra: number; readonly plan: Plan } | undefined {
  const own = entry.plan !== null && isOnTime(entry.plan) ? [{ extra: 0, plan: entry.plan }] : [];
  const others = entries.flatMap((other) => {
    const found = other.capacity;
    if (other === entry || found === null || found.plan === null || !relations.hasSameTrays(other, entry)) return [];
    return [{ extra: found.extra, plan: found.plan }];
  });
  return [...own, ...others].sort((a, b) => b.extra - a.extra)[0];
}

/** Time may end before anything was found; then there is nothing to say, unless it is proved that nothing can be. */
function isAnswer({ plan, extra, limit }: CapacityFound): boolean {
  return plan !== null || limit === extra;
}

async function fillAll(work: Work, order: readonly Entry[]): Promise<void> {
  const { asking, question, onProgress } = work;
  for (const [index, entry] of order.entries()) {
    const left = secondsLeft(asking);
    const known = knownFor(entry, work);
    if (entry.plan === null || (known === undefined && left < LEAST_CAPACITY_SECONDS)) continue;
    onProgress(`${entry.title}: trays it takes`, order.length + index, 2 * order.length);
    const found = await capacity(
      {
        scenario: entry.scenario,
        ...share(left, partsFor(index, order)),
        ...(question.of === undefined ? {} : { of: question.of }),
        ...(question.effort === undefined ? {} : { effort: question.effort }),
        ...(known === undefined ? { start: entry.plan } : { known }),
      },
      asking,
    );
    entry.capacity = isAnswer(found) ? found : null;
  }
  raiseFound(work);
  shareLimits(work);
}

/** What was found for a stricter day works on a roomier one. */
function raiseFound({ entries, relations }: Work): void {
  for (const entry of entries) {
    for (const other of entries) {
      const [own, its] = [entry.capacity, other.capacity];
      if (entry === other || own === null || its === null || its.extra <= own.extra || !relations.hasSameTrays(other, entry))
        continue;
      entry.capacity = {
        ...own,
        extra: its.extra,
        plan: its.plan,
        limit: own.limit === null ? null : Math.max(own.limit, its.extra),
      };
    }
  }
}

/** What a roomier day cannot take, a stricter one cannot either. */
function shareLimits({ entries, relations }: Work): void {
  for (const entry of entries) {
    for (const other of entries) {
      const [own, its] = [entry.capacity, other.capacity];
      if (entry === other || own === null || its === null || its.limit === null) continue;
      if (!relations.hasSameTrays(entry, other) || !relations.mayProve(entry, other)) continue;
      if (own.limit === null || its.limit < own.limit) entry.capacity = withLimit(own, its);
    }
  }
}

function withLimit(own: CapacityFound, its: CapacityFound): CapacityFound {
  return { ...own, limit: Math.max(own.extra, its.limit ?? own.extra), proof: its.proof, overfull: its.overfull };
}

function judgedOf(entry: Entry, of: string | undefined): Judged | null {
  if (entry.plan === null) return null;
  const found = entry.capacity === null ? null : capacityAnswer(entry.scenario, of, entry.capacity);
  return { scenario: entry.scenario, figures: dayFiguresOf(entry.scenario, entry.plan, found) };
}

function comparedDay(entry: Entry, base: Judged, of: string | undefined): readonly ComparedDay[] {
  const other = judgedOf(entry, of);
  if (other === null) return [];
  const differences = { price: priceDifference(base, other), capacity: capacityDifference(base, other) };
  const { title, value } = entry;
  return [
    { title, value, figures: other.figures, difference: { ...differences, says: verdict(title, base, other, differences) } },
  ];
}

/** Compares. The plan of the day as it is comes first; when stopped, the days that have a plan are in the answer. */
export async function compare(
  question: CompareQuestion,
  asking: Asking,
  onProgress: CompareProgress = () => {},
): Promise<Comparison> {
  const startedAtMs = asking.now();
  const base = entryOf('The day as it is', null, question.base);
  const entries = [base, ...question.days.map(({ title, value, scenario }) => entryOf(title, value, scenario))];
  const work: Work = { question, asking, entries, relations: new Relations(entries), onProgress };
  const order = [base, ...work.relations.inOrder()];
  await planAll(work, order);
  await fillAll(work, order);
  const judged = judgedOf(base, question.of);
  if (judged === null) throw new RangeError('the day as it is has no plan');
  const compared = (list: readonly Entry[]): readonly ComparedDay[] =>
    list.flatMap((entry) => comparedDay(entry, judged, question.of));
  const clock = clockOf(question.base);
  const { name, date, timeZone } = question.base;
  const inOrder = order.slice(1);
  return {
    comparison: 1,
    scenario: { name, date, timeZone },
    day: { startsAt: instantAt(clock, 0), minutes: clock.minutes },
    base: judged.figures,
    sweep:
      question.sweep === null
        ? null
        : { ...question.sweep, says: sweepVerdict(question.sweep.place, compared(inOrder), question.base) },
    days: [...compared(entries.slice(1))],
    notReached: entries.filter(({ plan }) => plan === null).map(({ title }) => title),
    solver: { seed: asking.seed, seconds: Math.round((asking.now() - startedAtMs) / 10) / 100, version: asking.version },
  };
}
