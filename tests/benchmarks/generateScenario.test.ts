// The generator of benchmark scenarios: same seed, same scenario; as many trays as asked for; read without errors; true to its kind.
import { describe, expect, it, test } from 'vitest';
import { CHOSEN } from '../../benchmarks/run/instances.ts';
import { generateInput, generateScenario, recipeName, recipeOf } from '../../benchmarks/scenarios/generateScenario.ts';
import { KINDS, type Kind } from '../../benchmarks/scenarios/kinds.ts';
import { compileScenario } from '../../src/compile/shopProblem.ts';
import { readScenarioValue } from '../../src/read/readScenario.ts';

const SIZES = [2, 8, 17, 30, 64, 200, 500];
const ALL = KINDS.flatMap((kind) => SIZES.map((trays) => ({ kind, trays, seed: 3 })));

describe.each(ALL)('$kind, $trays trays', (recipe) => {
  const input = generateInput(recipe);

  it('reads without errors and has the trays asked for', () => {
    const reading = readScenarioValue(input);
    expect(reading.ok ? [] : reading.errors).toEqual([]);
    expect(compileScenario(generateScenario(recipe)).trays.length).toBe(recipe.trays);
  });

  it('is the same again for the same seed and another for another', () => {
    expect(generateInput(recipe)).toEqual(input);
    expect({ ...generateInput({ ...recipe, seed: 4 }), name: input.name }).not.toEqual(input);
  });
});

describe('kinds', () => {
  const of = (kind: Kind) => generateScenario({ kind, trays: 30, seed: 1 });
  const bakes = (kind: Kind): number => {
    const ranges = of(kind).products.flatMap(({ steps }) =>
      steps.flatMap((step) => (step.do === 'bake' ? [step.temperatureC] : [])),
    );
    return new Set(ranges.map(String)).size;
  };

  it('tight shelves are fewer', () => {
    const shelves = (kind: Kind): number => of(kind).equipment.proofers[0]?.shelves ?? 0;
    expect(shelves('tight-shelves')).toBeLessThan(0.7 * shelves('plain'));
  });

  it('a tight bench has fewer places where there are several', () => {
    const places = (kind: Kind): number => generateScenario({ kind, trays: 200, seed: 1 }).equipment.bench?.places ?? 0;
    expect(places('tight-bench')).toBeLessThan(0.7 * places('plain'));
  });

  it('one person has a break, the others are two and more', () => {
    expect(of('one-person').people?.map(({ breaks }) => breaks.length)).toEqual([1]);
    expect(of('plain').people?.length).toBeGreaterThanOrEqual(2);
  });

  it('many temperatures are twice as many', () => {
    expect(bakes('plain')).toBe(4);
    expect(bakes('many-temperatures')).toBe(8);
  });

  it('due times spread and have a price; elsewhere lateness has none', () => {
    expect(new Set(of('due-times').orders.map(({ readyBy }) => readyBy)).size).toBeGreaterThan(4);
    expect(of('due-times').goals.lateTrayMinute).toBe(20);
    expect(of('plain').goals.lateTrayMinute).toBe(0);
  });
});

test('a name says its recipe', () => {
  expect(CHOSEN.map((recipe) => recipeOf(recipeName(recipe)))).toEqual(CHOSEN);
  expect(new Set(CHOSEN.map(recipeName)).size).toBe(CHOSEN.length);
  expect(recipeOf('no-such-kind-30-1')).toBeNull();
  expect(recipeOf('plain-30')).toBeNull();
});
