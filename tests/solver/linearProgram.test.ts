// The floor a dual answer proves: right when the answer is right, valid when the answer is nonsense.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileScenario } from '../../src/compile/shopProblem.ts';
import { packLoads } from '../../src/solver/bounds/chamberLoads.ts';
import { Paths } from '../../src/solver/bounds/headsAndTails.ts';
import { dualModel, type LinearProgram, primalModel, provedFloor } from '../../src/solver/bounds/linearProgram.ts';
import { solveLinear } from '../../src/solver/bounds/linearSolver.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { scenarioFrom } from '../laws/anyScenario.ts';

/** Least cost of covering needs with columns that give 0 to 3 of each: always possible, at most 50 of a column. */
const covering: fc.Arbitrary<LinearProgram> = fc
  .record({
    needs: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 4 }),
    prices: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 2, maxLength: 5 }),
    gives: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 20, maxLength: 20 }),
  })
  .map(({ needs, prices, gives }) => ({
    rows: needs.map((bound, r) => ({ name: `r${r}`, kind: 'min' as const, bound })),
    columns: prices.map((price, c) => ({
      name: `c${c}`,
      price,
      terms: new Map(needs.map((_, r) => [`r${r}`, c === 0 ? 1 : (gives[c * 4 + r - 4] as number)])),
      atMost: 50,
      isInteger: true,
    })),
  }));

describe('the proved floor', () => {
  it('is the optimum of the relaxation, and no integer answer is below it', async () => {
    await fc.assert(
      fc.asyncProperty(covering, async (program) => {
        const primal = await solveLinear(primalModel(program, false), 2000);
        const whole = await solveLinear(primalModel(program, true), 2000);
        const dual = await solveLinear(dualModel(program), 2000);
        const floor = provedFloor(program, dual?.values ?? {});
        expect(floor).toBeCloseTo(primal?.result ?? Number.NaN, 5);
        expect(floor).toBeLessThanOrEqual((whole?.result ?? Number.NaN) + 1e-6);
      }),
      { numRuns: 100 },
    );
  });

  it('stays a floor whatever numbers come back', async () => {
    const anyValues = fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 4, maxLength: 4 });
    await fc.assert(
      fc.asyncProperty(covering, anyValues, async (program, numbers) => {
        const primal = await solveLinear(primalModel(program, false), 2000);
        const values = Object.fromEntries(numbers.map((value, r) => [`+r${r}`, value]));
        expect(provedFloor(program, values)).toBeLessThanOrEqual((primal?.result ?? Number.NaN) + 1e-6);
      }),
      { numRuns: 100 },
    );
  });

  it('a program on which the simplex of the library does not end is given up in time', async () => {
    const compiled = compileScenario(scenarioFrom(74671788));
    const shop = shopOf(compiled.problem);
    const outcome = await packLoads(shop, new Paths(shop, compiled.problem), 500);
    expect(outcome.packing !== null || outcome.because === 'too-slow').toBe(true);
  });
});
