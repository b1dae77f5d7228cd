// The steps of a day under way that are planned otherwise than before, with how they were and how they are. Used by what tells the
// changes in words, and handed to the sheet.
import { allRuns } from '../../check/hands.ts';
import { type JudgedDay, judgedDayOf, type StepRun } from '../../check/judgedDay.ts';
import { isOfTogetherOven } from '../../check/loadedTogether.ts';
import { isSamePlace, whoDoesWhat } from '../../check/sameWork.ts';
import type { HandsOn, Place, Plan } from '../../model/plan.ts';
import type { ChangeStep } from '../../model/replanAnswer.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { StepKind } from '../../model/steps.ts';

function peopleOf({ handsOn }: { readonly handsOn: readonly HandsOn[] }): ChangeStep['from']['people'] {
  return handsOn
    .map(({ person, for: what }) => ({ person, for: what }))
    .filter((one, index, all) => all.findIndex((other) => other.person === one.person && other.for === one.for) === index);
}

const at = (place: Place | undefined): { place?: Place } => (place === undefined ? {} : { place });

/** A step that has moved, with what the sentences about it need. */
export type MovedStep = {
  readonly step: ChangeStep;
  readonly kind: StepKind;
  /** The tray, or the batch where the step is done to all of it. */
  readonly tray: string | undefined;
  readonly batch: string;
  /** Whether it begins at another minute. */
  readonly shiftMinutes: number;
  readonly isElsewhere: boolean;
  readonly isByOthers: boolean;
  readonly handsBefore: readonly HandsOn[];
  readonly hands: readonly HandsOn[];
};

/** Only what had not begun can move. One pair of hands serves a whole load: on which of its trays it stands says nothing. */
function movedStep(day: JudgedDay, run: StepRun): readonly MovedStep[] {
  const { record: old, named } = run;
  const { id, task } = named;
  if (old === undefined || old.state !== 'planned') return [];
  const isByOthers = !isOfTogetherOven(day, run) && whoDoesWhat(old.handsOn) !== whoDoesWhat(task.handsOn);
  const isElsewhere = !isSamePlace(old.place, task.place);
  const shiftMinutes = task.start - old.start;
  if (shiftMinutes === 0 && !isElsewhere && !isByOthers) return [];
  const step = {
    task: id,
    from: { start: old.start, ...at(old.place), people: peopleOf(old) },
    to: { start: task.start, ...at(task.place), people: peopleOf(task) },
  };
  const { tray, batch } = old;
  return [
    { step, kind: old.step, tray, batch, shiftMinutes, isElsewhere, isByOthers, handsBefore: old.handsOn, hands: task.handsOn },
  ];
}

/** Steps that begin at another minute, in another place or by other people than planned before, by their new start. */
export function movedSteps(scenario: Scenario, plan: Plan): readonly MovedStep[] {
  const day = judgedDayOf(scenario, plan);
  const steps = allRuns(day).flatMap((run) => movedStep(day, run));
  return steps.sort((a, b) => a.step.to.start - b.step.to.start || (a.step.task < b.step.task ? -1 : 1));
}
