// Whether a step is a bake on a deck whose trays are loaded together.
import type { JudgedDay, StepRun } from './judgedDay.ts';

export function isOfTogetherOven(day: JudgedDay, { step, named }: StepRun): boolean {
  const { place } = named.task;
  return step.do === 'bake' && place?.kind === 'deck' && day.decks.get(place.id)?.oven.loading === 'together';
}
