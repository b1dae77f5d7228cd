// DAY_TOO_SHORT: the steps of an ordered product, each at its shortest, fit into the day.
import type { BatchStep, TrayStep } from '../../model/steps.ts';
import { rangeOf } from '../../model/units.ts';
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';
import { shown } from '../shown.ts';

function shortest(step: BatchStep | TrayStep): number {
  if (step.do === 'divide' || step.do === 'shape' || step.do === 'finish') return step.minutesPerTray;
  const { min } = rangeOf(step.minutes);
  return step.do === 'bake' ? step.load + min + step.unload : min;
}

function sum(steps: readonly (BatchStep | TrayStep)[]): number {
  return steps.reduce((minutes, step) => minutes + shortest(step), 0);
}

export function shortestPath({ clock, doughs, products, orders }: Parts): readonly CodedError[] {
  if (clock === undefined || clock.minutes <= 0) return [];
  const doughById = new Map(doughs.sound.map(({ value }) => [value.id, value]));
  const ordered = new Set(orders.sound.map(({ value }) => value.product));
  return products.sound.flatMap(({ at, value }) => {
    const dough = doughById.get(value.dough);
    if (dough === undefined || !ordered.has(value.id)) return [];
    const minutes = sum(dough.steps) + sum(value.steps);
    if (minutes <= clock.minutes) return [];
    const says = `Product ${shown(value.id)} takes ${minutes} minutes from first to last step at its shortest; the day has ${clock.minutes}.`;
    return [
      inputErrorAt('DAY_TOO_SHORT', at, says, 'Let the day begin earlier, "-1d 21:30" for the evening before, or shorten steps.'),
    ];
  });
}
