// Steps of a batch or a tray as moments: work at mixer and bench, and stays in bowl, room, shelf, retarder and rack.
import type { StepRun } from '../../check/judgedDay.ts';
import type { Spread } from '../../model/spread.ts';
import type { Range } from '../../model/units.ts';
import type { Lag, SpreadStep } from './course.ts';
import { at, type CourseDraft } from './courseDraft.ts';
import { handsOnOfMix, isStay, pastMinutes, type Step, spreadOf, statedMinutes } from './stepMinutes.ts';

/** What a batch or tray brings to its next step. */
export type Before = {
  /** The next step begins no sooner. */
  readonly ready: Lag;
  /** It cannot wait longer. */
  readonly limit: Lag;
  /** Whether a longer wait harms the dough. */
  readonly isDough: boolean;
  /** Tells the place it is still in that it leaves at this moment. */
  readonly leave: (moment: number) => void;
  /** Of a stay that nothing follows: when it is over. */
  readonly endsAlone: (() => number) | null;
};

/** Where a step stands in the day: its run, the chance of its batch's dough, and what its draws are told by. */
export type StepPlace = {
  readonly run: StepRun;
  readonly spread: Spread;
  /** Minutes more than stated, on the least and on the most; not 0 only in a day under way. */
  readonly more: Range;
  /** The chance of the dough's pace: every stay of dough of one batch hangs on it. */
  readonly pace: number;
  readonly of: string;
  /** Room of a place, by kind and id; undefined when it is unlimited. */
  readonly roomOf: (run: StepRun) => { readonly id: string; readonly room: number } | undefined;
};

const NOWHERE = (): void => undefined;

function drawOf(draft: CourseDraft, place: StepPlace, chance: number): number {
  const { step } = place.run;
  const name: SpreadStep = step.do;
  return draft.addDraw(chance, spreadOf(step, place.spread), name, place.of);
}

export function waitAfter(step: Step): number {
  return step.waitUpTo;
}

function isOver(draft: CourseDraft, run: StepRun): boolean {
  return run.named.task.end <= draft.now && draft.now > 0;
}

/** Work at mixer or bench: a person, a place, and over when it is done. */
function workMoment(draft: CourseDraft, place: StepPlace, moment: number): Before {
  const { run } = place;
  const { step } = run;
  const isPast = isOver(draft, run);
  const draw = isPast ? -1 : drawOf(draft, place, draft.addChance());
  const minutes = isPast ? pastMinutes(run).min : statedMinutes(step).min + place.more.min;
  const done = { from: moment, minutes, draw, plus: 0 };
  const room = place.roomOf(run);
  if (room !== undefined)
    draft.addUse({ pool: draft.poolFor(room.id, room.room), takenAt: moment, lead: { minutes: 0, draw: -1 }, freed: done });
  for (const hands of run.named.task.handsOn) {
    const handsOn = step.do === 'mix' ? Math.min(handsOnOfMix(step), minutes) : minutes;
    const ownMinutes = isPast ? hands.end - hands.start : handsOn;
    draft.addPiece(hands.person, hands.start, { moment, minutes: ownMinutes, draw, isBreak: false });
  }
  const limit = { ...done, plus: waitAfter(step) };
  return { ready: done, limit, isDough: true, leave: NOWHERE, endsAlone: null };
}

/** A stay lasts until the next step begins: within its range, as the dough of the morning has it. */
function stayMoment(draft: CourseDraft, place: StepPlace, moment: number): Before {
  const { run } = place;
  const { step } = run;
  const isPast = isOver(draft, run);
  const { min, max } = isPast ? pastMinutes(run) : statedMinutes(step);
  const draw = isPast ? -1 : drawOf(draft, place, step.do === 'cool' ? draft.addChance() : place.pace);
  const ready = { from: moment, minutes: min + (isPast ? 0 : place.more.min), draw, plus: 0 };
  const most = { from: moment, minutes: max + (isPast ? 0 : place.more.max), draw, plus: 0 };
  const room = place.roomOf(run);
  const leave =
    room === undefined
      ? NOWHERE
      : (freedBy: number): void =>
          draft.addUse({
            pool: draft.poolFor(room.id, room.room),
            takenAt: moment,
            lead: { minutes: 0, draw: -1 },
            freed: at(freedBy),
          });
  const endsAlone = (): number => {
    const end = draft.addMoment(run.named.task.end, 'sheet');
    draft.comesAfter(end, ready);
    draft.cannotWaitBeyond(end, most);
    leave(end);
    return end;
  };
  return { ready, limit: { ...most, plus: waitAfter(step) }, isDough: step.do !== 'cool', leave, endsAlone };
}

/** A moment at which a step begins, after what is before it. */
export function beginAfter(draft: CourseDraft, moment: number, before: Before | null): void {
  if (before === null) return;
  draft.comesAfter(moment, before.ready);
  draft.cannotWaitBeyond(moment, before.limit);
  before.leave(moment);
}

/** A step other than a bake; `moment` is its begin. */
export function stepMoment(draft: CourseDraft, place: StepPlace, moment: number): Before {
  return isStay(place.run.step) ? stayMoment(draft, place, moment) : workMoment(draft, place, moment);
}
