// Our CP-SAT model as data, without the solver: whole, within its own variables, refusing what it does not hold; and its log.
import { describe, expect, it } from 'vitest';
import { momentAt, momentsOf } from '../../benchmarks/cpsat/searchLog.ts';
import { shopModel } from '../../benchmarks/cpsat/shopModel.ts';
import { generateScenario } from '../../benchmarks/scenarios/generateScenario.ts';
import { KINDS } from '../../benchmarks/scenarios/kinds.ts';
import { compileScenario } from '../../src/compile/shopProblem.ts';
import type { ShopProblem } from '../../src/solver/problem.ts';

function problemOf(kind: (typeof KINDS)[number]): ShopProblem {
  return compileScenario(generateScenario({ kind, trays: 12, seed: 1 })).problem;
}

describe.each(KINDS)('%s', (kind) => {
  it.each([false, true])('names only variables and intervals it has (trays may be left out: %s)', (mayOmit) => {
    const { model } = shopModel(problemOf(kind), mayOmit);
    const count = model.variables.length;
    const isKnown = (v: number): boolean => v < count && v >= -count;
    for (const { enforcementLiteral = [], linear, boolOr, exactlyOne, interval, noOverlap, cumulative } of model.constraints) {
      const parts = [interval?.start, interval?.size, interval?.end].flatMap((part) => part?.vars ?? []);
      const literals = [...enforcementLiteral, ...(boolOr?.literals ?? []), ...(exactlyOne?.literals ?? [])];
      expect([...literals, ...parts, ...(linear?.vars ?? [])].every(isKnown)).toBe(true);
      const used = [...(noOverlap?.intervals ?? []), ...(cumulative?.intervals ?? [])];
      expect(used.every((at) => model.constraints[at]?.interval !== undefined)).toBe(true);
    }
    expect(model.objective.vars.length).toBeGreaterThan(0);
  });

  it('has a price for every tray when trays may be left out, and none when all are planned', () => {
    const problem = problemOf(kind);
    const priced = (mayOmit: boolean): number =>
      shopModel(problem, mayOmit).model.objective.coeffs.filter((c) => c === -5000).length;
    expect(priced(true)).toBe(12);
    expect(priced(false)).toBe(0);
  });
});

it('separates only bakes that share no temperature', () => {
  const problem = problemOf('plain');
  const alike = problem.tasks.map((task) =>
    task.stay === undefined ? task : { ...task, stay: { ...task.stay, low: 190, high: 200 } },
  );
  const size = (each: ShopProblem): number => shopModel(each, false).model.constraints.length;
  expect(size({ ...problem, tasks: alike })).toBeLessThan(size(problem));
});

it('refuses what it does not hold', () => {
  const problem = problemOf('plain');
  const together = problem.chambers.map((chamber) => ({ ...chamber, together: true }));
  expect(() => shopModel({ ...problem, chambers: together }, false)).toThrow(/together/);
  expect(() => shopModel({ ...problem, prices: { ...problem.prices, stateChange: 10 } }, false)).toThrow(/changes of state/);
  expect(() => shopModel({ ...problem, prices: { ...problem.prices, makespan: 0.5 } }, false)).toThrow(/whole numbers/);
});

describe('the search log', () => {
  // Lines as the solver printed them.
  const log = [
    'Starting search at 1.67s with 2 workers.',
    '#Bound   1.67s best:inf   next:[247,780]  initial_domain',
    '#1       2.95s best:428   next:[247,427]  main (fixed_bools=0/334)',
    '#Bound   2.96s best:428   next:[301,427]  main',
    "#2       3.25s best:1'422 next:[301,1'421]  main (fixed_bools=4/373)",
    '#23     11.71s best:301   next:[]         main (fixed_bools=379/1663)',
    '#Done   11.71s main',
  ].join('\n');

  it('tells what was held when', () => {
    const moments = momentsOf(log);
    expect(moments.length).toBe(5);
    expect(momentAt(moments, 1)).toMatchObject({ best: Number.POSITIVE_INFINITY, floor: Number.NEGATIVE_INFINITY });
    expect(momentAt(moments, 2)).toMatchObject({ best: Number.POSITIVE_INFINITY, floor: 247 });
    expect(momentAt(moments, 3)).toMatchObject({ best: 428, floor: 301 });
    expect(momentAt(moments, 10).best).toBe(1422);
    expect(momentAt(moments, 60)).toMatchObject({ best: 301, floor: 301 });
  });

  it('is an error where it cannot be read', () => {
    expect(() => momentsOf('#1  2.95s best:four next:[1,2] main')).toThrow(/cannot read/);
  });
});
