// Generates mornings of invented bakeries: the same kind, number of trays and seed give the same scenario. Used by every benchmark.
import type { Scenario, ScenarioInput } from '../../src/model/scenario.ts';
import { readScenarioValue } from '../../src/read/readScenario.ts';
import { capacityFor, dayHours, equipmentOf, likelyMinutes } from './bakehouse.ts';
import { breadsOf } from './breads.ts';
import { diceOf } from './chance.ts';
import { KINDS, type Kind, TRAITS } from './kinds.ts';
import { ordersAtEnd, ordersWithDueTimes } from './orders.ts';

/** What to generate. Trays: 2 to 500; seed: a whole number. */
export type Recipe = { readonly kind: Kind; readonly trays: number; readonly seed: number };

const START_HOUR = 2;
const LATE_TRAY_MINUTE = 20;

function clockAt(minutesFromStart: number): string {
  const minute = START_HOUR * 60 + minutesFromStart;
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}

/** One person alone takes a break in the middle of the day. */
function peopleOf(count: number, dayMinutes: number): NonNullable<ScenarioInput['people']> {
  const hours = { from: clockAt(0), until: clockAt(dayMinutes) };
  const middle = 30 * Math.round(dayMinutes / 90);
  const breaks = count === 1 ? [{ from: clockAt(middle), until: clockAt(middle + 20) }] : [];
  return Array.from({ length: count }, (_, p) => ({ id: `person-${p + 1}`, ...hours, breaks }));
}

export function recipeName({ kind, trays, seed }: Recipe): string {
  return `${kind}-${trays}-${seed}`;
}

/** Reads a name such as `due-times-24-1` back; null when it is none. */
export function recipeOf(name: string): Recipe | null {
  const match = /^([a-z-]+)-(\d+)-(\d+)$/.exec(name);
  const kind = KINDS.find((known) => known === match?.[1]);
  if (match === null || kind === undefined) return null;
  return { kind, trays: Number(match[2]), seed: Number(match[3]) };
}

/** The scenario as it would be written. */
export function generateInput(recipe: Recipe): ScenarioInput {
  const traits = TRAITS[recipe.kind];
  const dice = diceOf(recipe.seed * 100_003 + recipe.trays * 11 + KINDS.indexOf(recipe.kind));
  const breads = breadsOf(dice, traits, recipe.trays);
  const capacity = capacityFor(recipe.trays, traits);
  const likely = likelyMinutes(breads, capacity);
  const dayMinutes = 60 * dayHours(likely);
  return {
    scenario: 1,
    name: `Benchmark morning ${recipeName(recipe)}`,
    date: '2026-04-18',
    timeZone: 'Europe/Madrid',
    day: { from: clockAt(0), until: clockAt(dayMinutes) },
    equipment: equipmentOf(capacity),
    people: peopleOf(capacity.people, dayMinutes),
    doughs: breads.map((bread) => bread.dough),
    products: breads.map((bread) => bread.product),
    orders: traits.hasDueTimes
      ? ordersWithDueTimes(dice, breads, likely, clockAt)
      : ordersAtEnd(dice, breads, clockAt(dayMinutes)),
    goals: {
      lateTrayMinute: traits.hasDueTimes ? LATE_TRAY_MINUTE : 0,
      leftOutTray: 5000,
      finishMinute: 1,
      temperatureChange: 0,
      aim: 'finish-early',
    },
  };
}

/** The scenario, read by the program's own reader. */
export function generateScenario(recipe: Recipe): Scenario {
  const reading = readScenarioValue(generateInput(recipe));
  if (reading.ok) return reading.value;
  throw new Error(`${recipeName(recipe)}: ${reading.errors.map((error) => error.says).join(' ')}`);
}
