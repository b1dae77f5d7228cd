// Bakes as moments: loading begins, the tray is on the deck, it is ready to come out, unloading begins. Trays of one load of an
// oven loaded together share them.
import type { StepRun } from '../../check/judgedDay.ts';
import type { OvenLoad } from '../../check/ovenLoads.ts';
import type { Spread } from '../../model/spread.ts';
import { type Range, rangeOf } from '../../model/units.ts';
import type { Lag, Watch } from './course.ts';
import { at, type CourseDraft } from './courseDraft.ts';
import { moreMinutes, pastMinutes } from './stepMinutes.ts';
import { type Before, beginAfter } from './stepMoments.ts';

export type LoadMoments = {
  readonly load: OvenLoad;
  readonly deck: string;
  readonly loading: number;
  readonly unloading: number;
  /** Minutes of loading. */
  readonly lead: { readonly minutes: number; readonly draw: number };
  readonly done: Lag;
  readonly bakesTooLong: Watch;
};

export type Oven = { readonly spread: Spread; readonly roomOf: (deck: string) => number };

type Hands = { readonly minutes: number; readonly draw: number };

/** Loading or unloading: its minutes, and the person who does it in the plan. */
function handsFor(
  draft: CourseDraft,
  spread: Spread,
  run: StepRun,
  load: OvenLoad,
  work: 'load' | 'unload',
): (moment: number) => Hands {
  const of = load.carrier.task.product ?? run.named.task.product ?? '';
  const stated = work === 'load' ? load.loadMinutes : load.unloadMinutes;
  const draw = stated === 0 ? -1 : draft.addDraw(draft.addChance(), spread[work], work, of);
  return (moment) => {
    for (const hands of load.carrier.task.handsOn)
      if (hands.for === work) draft.addPiece(hands.person, hands.start, { moment, minutes: stated, draw, isBreak: false });
    return { minutes: stated, draw };
  };
}

/** Minutes every tray of the load needs at least, and takes at most. */
function bakeMinutes(draft: CourseDraft, run: StepRun, load: OvenLoad): Range {
  if (draft.now > 0 && run.named.task.end <= draft.now) return pastMinutes(run);
  const ranges = load.bakes.map(({ step }) => rangeOf(step.minutes));
  const min = Math.max(...ranges.map((range) => range.min));
  const max = Math.max(min, Math.min(...ranges.map((range) => range.max)));
  const more = moreMinutes(run);
  return { min: min + more.min, max: max + more.max };
}

/** The moments of a load, from the first of its trays that is met. */
export function loadMoments(draft: CourseDraft, run: StepRun, load: OvenLoad, oven: Oven): LoadMoments {
  const { task } = run.named;
  const deck = task.place?.id ?? '';
  const isPast = draft.now > 0 && task.end <= draft.now;
  const bakeOf = task.product ?? '';
  const ownSpread = load.bakes.map(({ step }) => step.spreadPercent ?? oven.spread.bake);
  const draw = isPast ? -1 : draft.addDraw(draft.addChance(), Math.max(...ownSpread), 'bake', bakeOf);
  const { min, max } = bakeMinutes(draft, run, load);
  const loading = draft.addMoment(run.begins, 'sheet');
  const lead = handsFor(draft, oven.spread, run, load, 'load')(loading);
  const onDeck = draft.addMoment(task.start, 'follows');
  draft.comesAfter(onDeck, { from: loading, ...lead, plus: 0 });
  const baked = draft.addMoment(task.end, 'sheet');
  draft.comesAfter(baked, { from: onDeck, minutes: min, draw, plus: 0 });
  const tooLong = { from: onDeck, minutes: max, draw, plus: 0 };
  draft.cannotWaitBeyond(baked, tooLong);
  const unloading = draft.addMoment(task.end, 'follows');
  draft.comesAfter(unloading, at(baked));
  const out = handsFor(draft, oven.spread, run, load, 'unload')(unloading);
  const pool = draft.poolFor(`deck ${deck}`, oven.roomOf(deck));
  draft.addUse({ pool, takenAt: loading, lead, freed: at(unloading), couldBeFreed: baked });
  const bakesTooLong = { moment: unloading, limit: tooLong };
  return { load, deck, loading, unloading, lead, done: { from: unloading, ...out, plus: 0 }, bakesTooLong };
}

/** Puts a tray into a load and tells what it brings to its next step. */
export function bakeAfter(draft: CourseDraft, moments: LoadMoments, before: Before | null, waitUpTo: number): Before {
  beginAfter(draft, moments.loading, before);
  const { done } = moments;
  return { ready: done, limit: { ...done, plus: waitUpTo }, isDough: false, leave: () => undefined, endsAlone: null };
}
