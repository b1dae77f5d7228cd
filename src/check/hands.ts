// The hands-on work each step needs: from when until when, and for what. The scenario's steps alone decide it.
import type { HandsOn } from '../model/plan.ts';
import type { JudgedDay, StepRun } from './judgedDay.ts';

/** Work for one person, `end` excluded. */
export type NeededHands = { readonly for: HandsOn['for']; readonly start: number; readonly end: number };

function wholeStep(run: StepRun, work: HandsOn['for']): NeededHands {
  return { for: work, start: run.named.task.start, end: run.named.task.end };
}

/** A load's hands-on, only on the bake that carries it. */
function bakeHands(run: StepRun): readonly NeededHands[] {
  const { start, end } = run.named.task;
  if (run.load?.carrier !== run.named) return [];
  return [
    { for: 'load', start: run.begins, end: start },
    { for: 'unload', start: end, end: run.done },
  ];
}

function handsAt(run: StepRun): readonly NeededHands[] {
  const { step } = run;
  switch (step.do) {
    case 'mix': {
      const { start } = run.named.task;
      return [{ for: 'mix', start, end: start + Math.min(step.handsOn ?? step.minutes, step.minutes) }];
    }
    case 'fold':
    case 'divide':
    case 'shape':
    case 'finish':
      return [wholeStep(run, step.do)];
    case 'bake':
      return bakeHands(run);
    default:
      return [];
  }
}

/** Work a step needs, in the order of its minutes; nothing where it would take no minute. */
export function neededHands(run: StepRun): readonly NeededHands[] {
  return handsAt(run).filter(({ start, end }) => end > start);
}

/** Every step of the day that a task does, batches first. */
export function allRuns(day: JudgedDay): readonly StepRun[] {
  return [...day.batches, ...day.trays].flatMap(({ runs }) => runs.filter((run) => run !== undefined));
}

/** First minute of hands-on work, whether or not the scenario names people; 0 when there is none. */
export function firstHandsOnMinute(day: JudgedDay): number {
  const starts = allRuns(day).flatMap((run) => neededHands(run).map(({ start }) => start));
  return starts.length === 0 ? 0 : starts.reduce((earliest, start) => Math.min(earliest, start));
}
