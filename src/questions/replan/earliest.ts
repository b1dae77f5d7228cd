// When what comes next in a tray can begin at the earliest, by what has begun already: hands, places, decks. Used by overruns.ts.
import type { Place } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { Bake } from '../../model/steps.ts';
import type { OutOfUse } from '../../model/underway.ts';
import { type CelsiusOrRange, rangeOf } from '../../model/units.ts';
import type { Diary, Free } from './diary.ts';
import type { Rooms } from './rooms.ts';
import type { Job } from './runs.ts';

export type Since = {
  readonly scenario: Scenario;
  readonly now: number;
  readonly dayMinutes: number;
  readonly diary: Diary;
  readonly rooms: Rooms;
  readonly out: readonly OutOfUse[];
  /** What each deck stands at now, in C, by oven/deck. */
  readonly deckC: ReadonlyMap<string, number>;
  /** When each bake at work now is to come out, by its task's id. */
  readonly outAt: ReadonlyMap<string, number>;
};

type Deck = { readonly place: Place; readonly readyMinute: number };

function suits(temperatureC: number, wanted: CelsiusOrRange | undefined): boolean {
  if (wanted === undefined) return true;
  const { min, max } = rangeOf(wanted);
  return min <= temperatureC && temperatureC <= max;
}

/** Decks a bake can be on, with the minute from which each can be hot, or cold, enough. */
function decksFor(bake: Bake, { scenario, now, deckC }: Since): readonly Deck[] {
  const { min, max } = rangeOf(bake.temperatureC);
  return scenario.equipment.ovens.flatMap((oven) =>
    oven.decks.flatMap((deck) => {
      const id = `${oven.id}/${deck.id}`;
      const [low, high] = [Math.max(min, deck.minC), Math.min(max, deck.maxC)];
      if (low > high || (bake.steam && !deck.steam)) return [];
      const isC = deckC.get(id) ?? deck.startsAtC;
      const minutes = isC < low ? (low - isC) / oven.heatUpCPerMinute : isC > high ? (isC - high) / oven.coolDownCPerMinute : 0;
      return [{ place: { kind: 'deck' as const, id, position: 1 }, readyMinute: now + Math.ceil(minutes - 1e-9) }];
    }),
  );
}

/** Places a step can be in; undefined where it needs none or there is no end of them. */
function placesFor(job: Job, since: Since): readonly Deck[] | undefined {
  const { step } = job;
  const { equipment } = since.scenario;
  const at = (kind: Place['kind'], id: string): Deck => ({ place: { kind, id, position: 1 }, readyMinute: since.now });
  if (step.do === 'bake') return decksFor(step, since);
  if (step.do === 'proof')
    return equipment.proofers.filter((one) => suits(one.temperatureC, step.temperatureC)).map(({ id }) => at('shelf', id));
  if (step.do === 'retard' || (step.do === 'bulk' && step.where === 'retarder'))
    return equipment.retarders.filter((one) => suits(one.temperatureC, step.temperatureC)).map(({ id }) => at('retarder', id));
  const isOnBench = ['fold', 'divide', 'shape', 'finish'].includes(step.do);
  return isOnBench && equipment.bench !== undefined ? [at('bench', 'bench')] : undefined;
}

/** First minute from `from` on at which a place can take something: it is in use, and what keeps it full has an end. */
function freeFrom({ place, readyMinute }: Deck, from: number, since: Since): number {
  const { rooms, dayMinutes } = since;
  const until = (taskId: string, end: number | null): number => since.outAt.get(taskId) ?? end ?? since.now;
  for (let at = Math.max(from, readyMinute); at < dayMinutes; at++) {
    const there = rooms.staysIn(place).filter((stay) => until(stay.taskId, stay.until) > at);
    if (rooms.isInUse(place, at) && there.length < rooms.roomOf(place)) return at;
  }
  return dayMinutes;
}

/** When a job can begin, with whose hands, and how long it needs them at first. */
export type Beginning = Free & { readonly minutes: number };

/** First minute from `from` on at which a job can begin, loading included, as far as what has begun already says. */
export function earliestBegin(job: Job, from: number, since: Since): Beginning {
  const minutes = job.task.handsOn.filter((one) => one.for !== 'unload').reduce((sum, one) => sum + one.end - one.start, 0);
  const places = placesFor(job, since);
  const byPlace =
    places === undefined
      ? from
      : Math.min(since.dayMinutes, ...places.map((place) => freeFrom(place, from + job.load, since) - job.load));
  const free = since.diary.firstFree(job.step.do, Math.max(from, byPlace), minutes, since.dayMinutes);
  return { ...(free ?? { at: since.dayMinutes, person: undefined }), minutes };
}
