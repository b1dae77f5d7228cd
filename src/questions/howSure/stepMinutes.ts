// The minutes of a step as the scenario states them, and how far they stray. Used where a plan becomes the course of a day.
import type { StepRun } from '../../check/judgedDay.ts';
import type { Spread } from '../../model/spread.ts';
import type { BatchStep, TrayStep } from '../../model/steps.ts';
import { type Range, rangeOf } from '../../model/units.ts';

export type Step = BatchStep | TrayStep;

/** Steps that last until the next one begins, in their place. */
export type StayStep = Extract<Step, { do: 'bulk' | 'rest' | 'retard' | 'proof' | 'cool' }>;

export function isStay(step: Step): step is StayStep {
  return step.do === 'bulk' || step.do === 'rest' || step.do === 'retard' || step.do === 'proof' || step.do === 'cool';
}

/** Shortest and longest minutes of a step; at the bench both are the minutes of a tray. */
export function statedMinutes(step: Step): Range {
  if (step.do === 'divide' || step.do === 'shape' || step.do === 'finish') return rangeOf(step.minutesPerTray);
  return rangeOf(step.minutes);
}

export function spreadOf(step: Step, spread: Spread): number {
  return step.spreadPercent ?? spread[step.do];
}

/** Minutes a person is at work from the begin of a mix. */
export function handsOnOfMix(step: Extract<Step, { do: 'mix' }>): number {
  return Math.min(step.handsOn ?? step.minutes, step.minutes);
}

/** Minutes of a step that is over, as they were. */
export function pastMinutes({ named }: StepRun): Range {
  const minutes = named.task.end - named.task.start;
  return { min: minutes, max: minutes };
}

/** Minutes that a step of a day under way needs beyond those stated, on the least and on the most. */
export function moreMinutes({ record }: StepRun): Range {
  const more = record?.moreMinutes ?? 0;
  return { min: more, max: more + (record?.overrunMinutes ?? 0) };
}
