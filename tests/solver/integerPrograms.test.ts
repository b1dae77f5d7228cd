// The same integer programs to javascript-lp-solver, as the planner asks it, and to highs, a library that shares nothing with it.
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileScenario } from '../../src/compile/shopProblem.ts';
import { programOf, stayClasses } from '../../src/solver/bounds/chamberLoads.ts';
import { Paths } from '../../src/solver/bounds/headsAndTails.ts';
import { type LinearProgram, primalModel } from '../../src/solver/bounds/linearProgram.ts';
import { solveLinear } from '../../src/solver/bounds/linearSolver.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { scenarioFrom } from '../laws/anyScenario.ts';

/** Whole-number variables the planner asks for at most. */
const MOST_INTEGERS = 20;
const LIMIT_MS = 5000;

/** What is used of highs; its own types say CommonJS of an ES module. */
type Highs = {
  readonly solve: (
    text: string,
    options: { readonly output_flag: boolean; readonly mip_rel_gap: number; readonly mip_abs_gap: number },
  ) => { readonly Status: string; readonly ObjectiveValue: number };
};
const loadHighs: () => Promise<Highs> = createRequire(import.meta.url)('highs');
const highs = await loadHighs();

const SIGNS = { min: '>=', max: '<=', equal: '=' } as const;

const sumOf = (terms: readonly (readonly [name: string, coefficient: number])[]): string =>
  terms.map(([name, coefficient]) => `${coefficient < 0 ? '-' : '+'} ${Math.abs(coefficient)} ${name}`).join(' ');

/** The program in the LP format, which highs reads. Variables are at least 0 there too unless it says otherwise. */
function lpText({ rows, columns }: LinearProgram): string {
  const prices = sumOf(columns.map(({ name, price }) => [name, price] as const));
  const limits = rows.map(({ name, kind, bound }) => {
    const terms = columns.flatMap(({ name: column, terms }) =>
      terms.has(name) ? [[column, terms.get(name) ?? 0] as const] : [],
    );
    return ` ${name}: ${sumOf(terms)} ${SIGNS[kind]} ${bound}`;
  });
  const whole = columns.filter(({ isInteger }) => isInteger).map(({ name }) => name);
  return ['Minimize', ` price: ${prices}`, 'Subject To', ...limits, 'General', ` ${whole.join(' ')}`, 'End'].join('\n');
}

async function bothSolve(program: LinearProgram): Promise<{ ours: number | 'none' | 'too slow'; theirs: number | 'none' }> {
  const answer = await solveLinear(primalModel(program, true), LIMIT_MS);
  const solved = highs.solve(lpText(program), { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 });
  const theirs = solved.Status === 'Optimal' ? solved.ObjectiveValue : 'none';
  if (answer === null) return { ours: 'too slow', theirs };
  return { ours: answer.feasible ? answer.result : 'none', theirs };
}

/** The packing of loads that the planner would ask for whole numbers of, or null. */
function packingFrom(seed: number): LinearProgram | null {
  const { problem } = compileScenario(scenarioFrom(seed));
  const shop = shopOf(problem);
  const classes = stayClasses(shop, new Paths(shop, problem));
  // Where neither time nor changes have a price, every packing costs nothing.
  if (classes.length === 0 || problem.prices.makespan + problem.prices.stateChange === 0) return null;
  const program = programOf(problem, classes);
  const integers = program.columns.filter(({ isInteger }) => isInteger).length;
  return integers > 0 && integers <= MOST_INTEGERS ? program : null;
}

/** Cheapest choice of whole numbers of columns that meets needs, keeps within room, and takes so many in all: sometimes none. */
const anyProgram: fc.Arbitrary<LinearProgram> = fc
  .record({
    needs: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 3 }),
    rooms: fc.array(fc.integer({ min: 3, max: 30 }), { minLength: 1, maxLength: 2 }),
    prices: fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 2, maxLength: 6 }),
    amounts: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 30, maxLength: 30 }),
    inAll: fc.integer({ min: 1, max: 8 }),
  })
  .map(({ needs, rooms, prices, amounts, inAll }) => ({
    rows: [
      ...needs.map((bound, r) => ({ name: `need${r}`, kind: 'min' as const, bound })),
      ...rooms.map((bound, r) => ({ name: `room${r}`, kind: 'max' as const, bound })),
      { name: 'inAll', kind: 'equal' as const, bound: inAll },
    ],
    columns: prices.map((price, c) => ({
      name: `c${c}`,
      price,
      terms: new Map([
        ...needs.map((_, r) => [`need${r}`, amounts[5 * c + r] as number] as const),
        ...rooms.map((_, r) => [`room${r}`, amounts[5 * c + 3 + r] as number] as const),
        ['inAll', 1] as const,
      ]),
      atMost: inAll,
      isInteger: true,
    })),
  }));

describe('the same integer program, the same value', () => {
  it('50 packings of loads from scenarios drawn at random', { timeout: 120_000 }, async () => {
    let count = 0;
    for (let seed = 1; count < 50; seed++) {
      const program = packingFrom(seed);
      if (program === null) continue;
      const { ours, theirs } = await bothSolve(program);
      expect([seed, ours]).toEqual([seed, theirs === 'none' ? 'none' : expect.closeTo(theirs, 4)]);
      count++;
    }
  });

  it('50 small programs of other kinds, some of them impossible', { timeout: 120_000 }, async () => {
    let impossible = 0;
    await fc.assert(
      fc.asyncProperty(anyProgram, async (program) => {
        const { ours, theirs } = await bothSolve(program);
        if (theirs === 'none') impossible++;
        expect(ours).toEqual(theirs === 'none' ? 'none' : expect.closeTo(theirs, 4));
      }),
      { numRuns: 50, seed: 50 },
    );
    expect(impossible).toBeGreaterThan(5);
    expect(impossible).toBeLessThan(45);
  });
});
