// The day so far: from a scenario, its plan, the minute it is and what has happened, the scenario of the rest of the day. A table of
// contents; every step is a file beside this one.

import { changedOrders } from '../../dough/changedOrders.ts';
import { type Clock, clockOf, dayOffsetAt, wallClockAt } from '../../model/clock.ts';
import type { Happened } from '../../model/happened.ts';
import type { HappenedCode } from '../../model/happenedCodes.ts';
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { OutOfUse, Underway, UnderwayTask } from '../../model/underway.ts';
import { absencesOf, peopleLeft } from './absences.ts';
import { actsOf } from './actsOf.ts';
import { type Decided, decidedOf } from './decided.ts';
import { Diary, type Span } from './diary.ts';
import { factsOf } from './facts.ts';
import { outagesOf } from './outages.ts';
import { overrunsOf } from './overruns.ts';
import { Rooms } from './rooms.ts';
import { type BatchRuns, type Job, jobsOf, runsOf } from './runs.ts';
import { slowDoughs } from './slowDoughs.ts';
import { SoFar } from './soFar.ts';
import { toldOf } from './told.ts';
import { type Standing, standingsOf } from './trayStates.ts';
import { traysGone } from './traysGone.ts';

/** An input error of the file of what has happened; it has no line yet. */
export type HappenedError = {
  readonly code: HappenedCode;
  readonly path: string;
  readonly says: string;
  readonly doThis: string;
};

export type DayAt =
  | {
      readonly ok: true;
      readonly scenario: Scenario & { readonly underway: Underway };
      /** What was taken for granted, in sentences. */
      readonly told: readonly string[];
      /** Trays of the plan that are lost, and those no longer wanted. */
      readonly lost: readonly string[];
      readonly unwanted: readonly string[];
    }
  | { readonly ok: false; readonly errors: readonly HappenedError[] };

const DEFAULT_MOVE_PRICE = 2;

function sayer(clock: Clock): (minute: number) => string {
  return (minute) => {
    const days = dayOffsetAt(clock, minute);
    return `${days === 0 ? '' : `${days > 0 ? '+' : ''}${days}d `}${wallClockAt(clock, minute)}`;
  };
}

/** Trays on a deck now that cannot be out before it goes out of use. */
function lostLater(
  standings: ReadonlyMap<string, Standing>,
  out: readonly OutOfUse[],
  now: number,
): ReadonlyMap<string, OutOfUse> {
  const lost = new Map<string, OutOfUse>();
  for (const { job, state, start } of standings.values()) {
    if (job.step.do !== 'bake' || state !== 'begun') continue;
    const least = Math.max(now, start + job.minutes.min);
    const hit = out.find(
      ({ kind, id, from, until }) => kind === 'deck' && id === job.task.place?.id && from < least && until > Math.max(now, start),
    );
    if (hit !== undefined) lost.set(job.task.tray ?? '', hit);
  }
  return lost;
}

/** Absences that begin while the person is at work begin when that work is over. */
function afterWork(
  absences: ReadonlyMap<string, readonly Span[]>,
  standings: ReadonlyMap<string, Standing>,
  now: number,
): {
  readonly absences: ReadonlyMap<string, readonly Span[]>;
  readonly cutShort: { person: string; taskId: string; until: number }[];
} {
  const cutShort: { person: string; taskId: string; until: number }[] = [];
  const later = [...absences].map(([person, spans]) => {
    const work = [...standings.values()]
      .filter(({ state }) => state !== 'planned')
      .flatMap(({ job, handsOn }) => handsOn.map((hands) => ({ ...hands, taskId: job.task.id })))
      .filter((hands) => hands.person === person && hands.start < now && hands.end > now);
    const moved = spans.map((span) => {
      const busy = work.find(({ end }) => span.from < end && span.until > now);
      if (busy === undefined) return span;
      cutShort.push({ person, taskId: busy.taskId, until: busy.end });
      return { from: Math.min(span.until, busy.end), until: span.until };
    });
    return [person, moved] as const;
  });
  return { absences: new Map(later), cutShort };
}

function underwayTask(
  standing: Standing,
  more: number,
  overrun: number,
  keeps: readonly UnderwayTask['keeps'][number][],
): UnderwayTask {
  const { job, state, start, end, handsOn, course } = standing;
  const { batch, tray } = job.task;
  const place = course?.stay?.place ?? job.task.place;
  return {
    step: job.step.do,
    ordinal: job.ordinal,
    batch,
    ...(tray === undefined ? {} : { tray }),
    state,
    start,
    end,
    ...(place === undefined ? {} : { place }),
    handsOn: [...handsOn],
    moreMinutes: (job.known?.moreMinutes ?? 0) + more,
    overrunMinutes: Math.max(job.known?.overrunMinutes ?? 0, overrun),
    keeps: [...keeps],
  };
}

/** Steps that are not over and may run over by more than was known before. */
function longerNow({ standings }: Stands, { tasks }: Underway): readonly UnderwayTask[] {
  const known = new Map([...standings.values()].map(({ job }) => [job.task.id, job.known?.overrunMinutes ?? 0]));
  const ids = [...standings.keys()];
  return tasks.filter((task, index) => task.state !== 'ended' && task.overrunMinutes > (known.get(ids[index] ?? '') ?? 0));
}

function without(batches: readonly BatchRuns[], gone: ReadonlySet<string>): readonly BatchRuns[] {
  return batches
    .map((batch) => ({ ...batch, trays: batch.trays.filter(({ id }) => !gone.has(id)) }))
    .filter(({ trays }) => trays.length > 0);
}

/** What is told that cannot be, as errors of the file. */
function contradictions(soFar: SoFar): readonly HappenedError[] {
  return soFar.contradictions.map(({ code, fact, says, doThis }) => ({ code, path: fact.at, says, doThis }));
}

/** What is read off the files before anything is gone through. */
function readOff(scenario: Scenario, plan: Plan, now: number, happened: Happened) {
  const clock = clockOf(scenario);
  const batches = runsOf(scenario, plan);
  const jobs = jobsOf(batches);
  const out = outagesOf(scenario.underway?.out ?? [], happened, clock);
  const away = absencesOf(happened, clock);
  const lost = new Set(happened.happened.flatMap((event) => (event.what === 'lost' ? [event.tray] : [])));
  const { orders } = changedOrders(scenario.orders, happened.happened, clock);
  const [diary, rooms] = [new Diary(scenario, clock, away), new Rooms(scenario, out)];
  const facts = factsOf(happened, jobs, clock);
  const acts = actsOf(jobs, plan);
  const settledUntil = scenario.underway?.now ?? 0;
  return {
    scenario,
    plan,
    now,
    happened,
    clock,
    says: sayer(clock),
    batches,
    jobs,
    acts,
    facts,
    out,
    away,
    lost,
    orders,
    diary,
    rooms,
    settledUntil,
    decks: plan.decks,
  };
}

type Read = ReturnType<typeof readOff>;

/** Which trays and steps are left, and how each stands. */
function standNow(read: Read, soFar: SoFar) {
  const { scenario, batches: all, out, now, orders, lost: told } = read;
  const inOven = new Set([...told, ...soFar.lostInOven.keys()]);
  const later = lostLater(standingsOf(without(all, inOven), soFar, now), out, now);
  const lost = new Set([...inOven, ...later.keys()]);
  const gone = traysGone(scenario, orders, all, soFar, lost);
  const batches = without(all, new Set([...lost, ...gone.map(({ id }) => id)]));
  return { later, lost, gone, batches, standings: standingsOf(batches, soFar, now) };
}

type Stands = ReturnType<typeof standNow>;

function underwayOf(read: Read, soFar: SoFar, stands: Stands, moreById: ReadonlyMap<string, number>, decided: Decided): Underway {
  const { scenario, now, happened, clock, diary, rooms, out } = read;
  const { batches, standings } = stands;
  const decks = soFar.heat.until(now);
  const baking = [...standings.values()].filter(({ job, state }) => job.step.do === 'bake' && state === 'begun');
  const outAt = new Map(baking.map(({ job, end }) => [job.task.id, end]));
  const deckC = soFar.heat.temperaturesC(now);
  const moreOf = (job: Job): number => moreById.get(job.task.id) ?? 0;
  const since = { scenario, now, dayMinutes: clock.minutes, diary, rooms, out, deckC, outAt };
  const overruns = overrunsOf(batches, standings, moreOf, since);
  return {
    now,
    movePrice: happened.movePrice ?? scenario.underway?.movePrice ?? DEFAULT_MOVE_PRICE,
    batches: batches.map(({ id, dough, trays }) => ({
      id,
      dough,
      trays: trays.map((tray) => ({ id: tray.id, product: tray.product })),
    })),
    tasks: [...standings.values()].map((one) => {
      const { id } = one.job.task;
      return underwayTask(one, moreOf(one.job), overruns.get(id) ?? 0, decided.keepsById.get(id) ?? []);
    }),
    decks: [...decks],
    out: [...out],
  };
}

/**
 * The scenario of the rest of the day. `plan` keeps the rules of `scenario`, `happened` was read for both, and `now` is a minute of
 * the day, not before that of a day under way.
 */
export function dayAt(scenario: Scenario, plan: Plan, now: number, happened: Happened): DayAt {
  const read = readOff(scenario, plan, now, happened);
  const soFar = new SoFar(read);
  if (soFar.contradictions.length > 0) return { ok: false, errors: contradictions(soFar) };
  const slow = slowDoughs(happened, read.batches, standingsOf(read.batches, soFar, now));
  if (slow.tooLate.length > 0) return { ok: false, errors: tooLate(slow.tooLate, read.says) };
  const stands = standNow(read, soFar);
  const { absences, cutShort } = afterWork(read.away, stands.standings, now);
  const decided = decidedOf(happened, stands.standings, now);
  const people = peopleLeft(scenario.people, absences, read.clock);
  const underway = underwayOf(read, soFar, stands, slow.moreById, decided);
  return {
    ok: true,
    scenario: { ...scenario, orders: [...read.orders], ...(people === undefined ? {} : { people: [...people] }), underway },
    told: toldOf({ ...read, ...stands, soFar, cutShort, timePast: decided.timePast, longer: longerNow(stands, underway) }),
    lost: [...stands.lost],
    unwanted: stands.gone.map(({ id }) => id),
  };
}

type TooLate = ReturnType<typeof slowDoughs>['tooLate'];

function tooLate(events: TooLate, says: (minute: number) => string): readonly HappenedError[] {
  return events.map(({ index, over, next }) => {
    const path = `/happened/${index}`;
    if (over === undefined)
      return {
        code: 'NOTHING_TO_WAIT_FOR',
        path,
        says: 'None of its steps is a bulk, a rest, a retard or a proof.',
        doThis: 'Take the event out.',
      };
    const ended = `${over.job.task.id} ended at ${says(over.end)}`;
    if (next === undefined)
      return { code: 'NOTHING_TO_WAIT_FOR', path, says: `By the plan ${ended}.`, doThis: 'Take the event out.' };
    const nextId = next.job.task.id;
    return {
      code: 'NOTHING_TO_WAIT_FOR',
      path,
      says: `By the plan ${ended}, and ${nextId} began at ${says(next.start)}.`,
      doThis: `If it has not begun, add { what: not-yet, task: ${nextId} }.`,
    };
  });
}
