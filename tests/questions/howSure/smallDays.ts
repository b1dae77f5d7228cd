// Small days for the tests of simulated mornings: one chain of steps, and plans of them.
import { type Scenario, type ScenarioInput, scenarioSchema } from '../../../src/model/scenario.ts';
import type { USUAL_SPREAD } from '../../../src/model/spread.ts';
import { planned } from '../../laws/planned.ts';

type Steps = ScenarioInput['products'][number]['steps'];
type BatchSteps = ScenarioInput['doughs'][number]['steps'];

export const NO_SPREAD: Scenario['spread'] = {
  mix: 0,
  fold: 0,
  bulk: 0,
  divide: 0,
  shape: 0,
  rest: 0,
  retard: 0,
  proof: 0,
  bake: 0,
  load: 0,
  unload: 0,
  cool: 0,
  finish: 0,
};

export type SmallDay = {
  readonly batchSteps: BatchSteps;
  readonly steps: Steps;
  readonly readyBy: string;
  readonly trays?: number;
  readonly people?: ScenarioInput['people'];
  readonly spread?: Partial<typeof USUAL_SPREAD>;
  readonly shelves?: number;
  readonly goals?: ScenarioInput['goals'];
  readonly until?: string;
};

/** One dough, one product of 10 pieces a tray, a hot deck with room for all; nothing strays but what is said. */
export function smallDay(day: SmallDay): Scenario {
  return scenarioSchema.parse({
    scenario: 1,
    name: 'A small day',
    date: '2026-05-16',
    timeZone: 'UTC',
    day: { from: '00:00', until: day.until ?? '23:00' },
    equipment: {
      ovens: [{ id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks: [{ id: 'deck', trays: 50, startsAtC: 200 }] }],
      proofers: [{ id: 'proofer', shelves: day.shelves ?? 50, temperatureC: 30 }],
    },
    people: day.people,
    doughs: [{ id: 'dough', steps: day.batchSteps, shapeWithin: 600 }],
    products: [{ id: 'bread', dough: 'dough', pieceG: 100, piecesPerTray: 10, steps: day.steps }],
    orders: [{ product: 'bread', pieces: 10 * (day.trays ?? 1), readyBy: day.readyBy }],
    spread: { ...NO_SPREAD, ...day.spread },
    goals: day.goals,
  });
}

export function planOfSmallDay(scenario: Scenario): ReturnType<typeof planned> {
  return planned(scenario, 30);
}

/** The standard normal distribution function, by its series (Abramowitz and Stegun 1964, 26.2.11). */
export function normalShare(z: number): number {
  let term = z;
  let sum = z;
  for (let n = 3; Math.abs(term) > 1e-16; n += 2) {
    term *= (z * z) / n;
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}

export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}
