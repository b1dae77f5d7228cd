// NOBODY_CAN, NO_STRETCH_LONG_ENOUGH: every hands-on step has somebody who does it and works long enough without a break.
import type { Person } from '../../model/scenario.ts';
import type { BatchStep, StepKind, TrayStep } from '../../model/steps.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Entry, Parts } from '../parts.ts';
import { amount, shown } from '../shown.ts';
import { longestStretch } from './workStretches.ts';

type Need = { readonly at: string; readonly step: StepKind; readonly minutes: number; readonly what: string };

/** Longest unbroken hands-on minutes of a step; 0 when it needs nobody. */
function handsOnMinutes(step: BatchStep | TrayStep): number {
  switch (step.do) {
    case 'mix':
      return step.handsOn ?? step.minutes;
    case 'fold':
      return step.minutes;
    case 'divide':
    case 'shape':
    case 'finish':
      return step.minutesPerTray;
    case 'bake':
      return Math.max(step.load, step.unload);
    default:
      return 0;
  }
}

function needsOf(
  entry: Entry<{ readonly id: string; readonly steps: readonly (BatchStep | TrayStep)[] }>,
  kind: string,
): readonly Need[] {
  return entry.value.steps
    .map((step, index) => ({
      at: `${entry.at}/steps/${index}`,
      step: step.do,
      minutes: handsOnMinutes(step),
      what: `Step ${index + 1} (${step.do}) of ${kind} ${shown(entry.value.id)}`,
    }))
    .filter(({ minutes }) => minutes > 0);
}

function needError(need: Need, able: readonly Person[], longest: ReadonlyMap<string, number> | undefined): readonly CodedError[] {
  const { at, step, minutes, what } = need;
  if (able.length === 0) {
    const doThis = `Take "${step}" out of somebody's cannot, or add a person; without the key people, hands never limit the day.`;
    return [inputErrorAt('NOBODY_CAN', at, `${what} needs hands, and nobody does it.`, doThis)];
  }
  if (longest === undefined) return [];
  // Nobody able works at all: the check of people's hours has said so.
  const most = Math.max(...able.map(({ id }) => longest.get(id) ?? 0));
  if (minutes <= most || most === 0) return [];
  const says = `${what} needs a person for ${amount(minutes, 'minute')}; the longest anybody who does it works without a break is ${most}.`;
  return [inputErrorAt('NO_STRETCH_LONG_ENOUGH', at, says, 'Shorten the step, or change hours and breaks.')];
}

export function handsFor({ people, clock, doughs, products }: Parts): readonly CodedError[] {
  if (people === undefined || !people.isWhole) return [];
  const persons = people.sound.map(({ value }) => value);
  const isDay = clock !== undefined && clock.minutes > 0;
  const longest = isDay ? new Map(persons.map((person) => [person.id, longestStretch(person, clock)])) : undefined;
  const needs = [
    ...doughs.sound.flatMap((entry) => needsOf(entry, 'dough')),
    ...products.sound.flatMap((entry) => needsOf(entry, 'product')),
  ];
  return needs.flatMap((need) =>
    needError(
      need,
      persons.filter(({ cannot }) => !cannot.includes(need.step)),
      longest,
    ),
  );
}
