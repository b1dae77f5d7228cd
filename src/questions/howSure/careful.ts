// A scenario to plan carefully by: every step given the minutes that are enough in four mornings of five. Used by the command.
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import { type Spread, USUAL_SPREAD } from '../../model/spread.ts';
import type { BatchStep, TrayStep } from '../../model/steps.ts';
import { MAX_DAY_MINUTES, type MinutesOrRange } from '../../model/units.ts';
import { handsOnOfMix, spreadOf } from './stepMinutes.ts';

/** Four fifths of the standard normal distribution lie below it. */
const Z80 = 0.8416212335729143;

/** Told with every careful plan. */
export const CAREFUL_NOTE =
  'Planned carefully: each step has about the minutes that are enough in four mornings of five. The plan is one of the careful scenario and is checked against that.';

/**
 * Minutes that are enough in four mornings of five, to the nearest whole one and never fewer than stated. Rounded up, the
 * loading of a tray that takes a minute would take two.
 */
function enough(minutes: number, spreadPercent: number): number {
  return Math.max(minutes, Math.min(MAX_DAY_MINUTES, Math.round(minutes * (1 + (Z80 * spreadPercent) / 100))));
}

/** The least rises; the most stays where the baker put it, unless the least has passed it. */
function enoughOfRange(minutes: MinutesOrRange, spreadPercent: number): MinutesOrRange {
  if (typeof minutes === 'number') return enough(minutes, spreadPercent);
  const least = enough(minutes[0], spreadPercent);
  return [least, Math.max(least, minutes[1])];
}

function carefulBatchStep(step: BatchStep, spread: Spread): BatchStep {
  const percent = spreadOf(step, spread);
  switch (step.do) {
    case 'mix': {
      const minutes = enough(step.minutes, percent);
      const handsOn = Math.min(minutes, enough(handsOnOfMix(step), percent));
      return step.handsOn === undefined ? { ...step, minutes } : { ...step, minutes, handsOn };
    }
    case 'fold':
      return { ...step, minutes: enough(step.minutes, percent) };
    case 'bulk':
      return { ...step, minutes: enoughOfRange(step.minutes, percent) };
  }
}

function carefulTrayStep(step: TrayStep, spread: Spread): TrayStep {
  const percent = spreadOf(step, spread);
  switch (step.do) {
    case 'divide':
    case 'shape':
    case 'finish':
      return { ...step, minutesPerTray: enough(step.minutesPerTray, percent) };
    case 'bake': {
      const load = enough(step.load, spread.load);
      const unload = enough(step.unload, spread.unload);
      return { ...step, minutes: enoughOfRange(step.minutes, percent), load, unload };
    }
    case 'rest':
    case 'retard':
    case 'proof':
    case 'cool':
      return { ...step, minutes: enoughOfRange(step.minutes, percent) };
  }
}

/** How much longer work at the bench takes when a tray of a dough begins: its trays must still begin one after the other in time. */
function shapeWithin(dough: Scenario['doughs'][number], scenario: Scenario, spread: Spread): number {
  const percents = scenario.products
    .filter((product) => product.dough === dough.id)
    .flatMap(({ steps: [first] }) => (first === undefined || !('minutesPerTray' in first) ? [] : [spreadOf(first, spread)]));
  return Math.max(dough.shapeWithin, ...percents.map((percent) => enough(dough.shapeWithin, percent)));
}

/** The scenario with the minutes of a slow morning. Everything else is as it was, so that prices can be compared. */
export function carefulScenario(scenario: Scenario): Scenario {
  const spread = scenario.spread ?? USUAL_SPREAD;
  return {
    ...scenario,
    doughs: scenario.doughs.map((dough) => ({
      ...dough,
      shapeWithin: shapeWithin(dough, scenario, spread),
      steps: dough.steps.map((step) => carefulBatchStep(step, spread)),
    })),
    products: scenario.products.map((product) => ({
      ...product,
      steps: product.steps.map((step) => carefulTrayStep(step, spread)),
    })),
  };
}

/** A plan of a careful scenario, saying so. */
export function withCarefulNote(plan: Plan): Plan {
  return { ...plan, solver: { ...plan.solver, notes: [CAREFUL_NOTE, ...plan.solver.notes] } };
}
