// Which scenarios a run measures: the chosen generated ones, and generated mornings kept beside the checkout when they are there.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { z } from 'zod';
import { traysOf } from '../../src/compile/trays.ts';
import { clockOf } from '../../src/model/clock.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import { readScenario } from '../../src/read/readScenario.ts';
import type { Instance } from '../planners/instance.ts';
import { generateInput, generateScenario, type Recipe, recipeName, recipeOf } from '../scenarios/generateScenario.ts';
import type { Kind } from '../scenarios/kinds.ts';

/** Where generated scenarios are written for the children. */
const WRITTEN = resolve(import.meta.dirname, '../dist/scenarios');
const MORNINGS = resolve(import.meta.dirname, '../../../shared/bench/mornings');

export const MORNINGS_ABSENT = `THE MORNINGS ARE ABSENT: nothing in ${MORNINGS}. They are not part of the project; nothing of them is measured.`;

const SIZES: Readonly<Record<Kind, readonly number[]>> = {
  plain: [8, 10, 12, 16, 20, 24, 30, 40, 60, 100, 200, 500],
  'tight-shelves': [16, 30, 48],
  'tight-bench': [16, 30, 48],
  'one-person': [12, 20, 36],
  'many-temperatures': [12, 20, 30, 48],
  'due-times': [10, 18, 24, 30, 48, 64],
};

function sizesOf(kind: Kind): Recipe[] {
  return SIZES[kind].map((trays) => ({ kind, trays, seed: 1 }));
}

/** The recipes of a full run. */
export const CHOSEN: readonly Recipe[] = [
  ...sizesOf('plain'),
  ...sizesOf('tight-shelves'),
  ...sizesOf('tight-bench'),
  ...sizesOf('one-person'),
  ...sizesOf('many-temperatures'),
  ...sizesOf('due-times'),
];

/** A generated scenario, written where children can read it. */
export function generatedInstance(recipe: Recipe): Instance {
  mkdirSync(WRITTEN, { recursive: true });
  const file = join(WRITTEN, `${recipeName(recipe)}.json`);
  writeFileSync(file, JSON.stringify(generateInput(recipe)));
  return {
    set: 'generated',
    name: recipeName(recipe),
    trays: recipe.trays,
    scenario: generateScenario(recipe),
    file,
    reference: null,
  };
}

const referenceSchema = z.object({ mornings: z.record(z.string(), z.object({ cost: z.number(), bound: z.number() })) });

function trayCount(scenario: Scenario): number {
  return traysOf(scenario, clockOf(scenario)).reduce((sum, { trays }) => sum + trays, 0);
}

/** The mornings, smallest first; null when they are not there. */
export function mornings(): Instance[] | null {
  if (!existsSync(MORNINGS)) return null;
  const { mornings: known } = referenceSchema.parse(JSON.parse(readFileSync(join(MORNINGS, 'reference.json'), 'utf8')));
  const files = readdirSync(MORNINGS).filter((file) => file.endsWith('.json') && file !== 'reference.json');
  const instances = files.map((name): Instance => {
    const file = join(MORNINGS, name);
    const reading = readScenario(readFileSync(file, 'utf8'), name);
    if (!reading.ok) throw new Error(`${name}: ${reading.errors.map((error) => error.says).join(' ')}`);
    const scenario = reading.value;
    const id = name.replace(/\.json$/, '');
    return { set: 'mornings', name: id, trays: trayCount(scenario), scenario, file, reference: known[id] ?? null };
  });
  return instances.sort((a, b) => a.trays - b.trays || (a.name < b.name ? -1 : 1));
}

export type Choice = { readonly generated: boolean; readonly mornings: boolean; readonly only: readonly string[] };

/** The instances a choice names: of the sets chosen, those whose name begins with one of `only`; a whole recipe is always one. */
export function chosenInstances(choice: Choice): Instance[] {
  const isWanted = (name: string): boolean => choice.only.length === 0 || choice.only.some((start) => name.startsWith(start));
  const listed = choice.generated ? CHOSEN.filter((recipe) => isWanted(recipeName(recipe))) : [];
  const named = choice.only.flatMap((name) => recipeOf(name) ?? []);
  const recipes = new Map([...listed, ...named].map((recipe) => [recipeName(recipe), recipe]));
  const found = choice.mornings ? mornings() : [];
  if (found === null) console.error(MORNINGS_ABSENT);
  return [...[...recipes.values()].map(generatedInstance), ...(found ?? []).filter(({ name }) => isWanted(name))];
}
