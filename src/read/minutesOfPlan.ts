// Turns the clock texts of a hand-written plan into minutes of the scenario's day.
import { type Clock, clockOf, minuteAt, occurrences } from '../model/clock.ts';
import type { Scenario } from '../model/scenario.ts';
import type { WrittenPlan, WrittenPlanInput } from '../model/writtenPlan.ts';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';

type Time = number | string;
type Span = { readonly start: Time; readonly end: Time };

/** Turns one time into a minute; one that never comes is noted as an error and read as the start of the day. */
function minuteReader(clock: Clock, errors: CodedError[]): (time: Time, at: string) => number {
  return (time, at) => {
    if (typeof time === 'number') return time;
    if (occurrences(clock.date, clock.timeZone, time) > 0) return minuteAt(clock, time);
    const says = `The clock never shows ${time} on that date: the clocks go forward over it.`;
    errors.push(
      inputErrorAt('TIME_SKIPPED', at, says, 'Write a time before or after the missing hour, or the minute of the day.'),
    );
    return 0;
  };
}

/** The plan in minutes, and the times that never come. */
export function minutesOfPlan(
  plan: WrittenPlanInput,
  scenario: Scenario,
): { readonly plan: WrittenPlan; readonly errors: readonly CodedError[] } {
  const errors: CodedError[] = [];
  const minuteOf = minuteReader(clockOf(scenario), errors);
  const spanOf = <T extends Span>(span: T, at: string): Omit<T, 'start' | 'end'> & { start: number; end: number } => ({
    ...span,
    start: minuteOf(span.start, `${at}/start`),
    end: minuteOf(span.end, `${at}/end`),
  });
  const tasks = plan.tasks.map((task, index) => {
    const at = `/tasks/${index}`;
    return { ...spanOf(task, at), handsOn: task.handsOn.map((hands, each) => spanOf(hands, `${at}/handsOn/${each}`)) };
  });
  const decks = plan.decks.map((deck, index) => ({
    ...deck,
    setPoints: deck.setPoints.map((move, each) => spanOf(move, `/decks/${index}/setPoints/${each}`)),
  }));
  return { plan: { ...plan, tasks, decks }, errors };
}
