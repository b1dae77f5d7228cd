// The proving side of the learning solver, against every order tried.
import { describe, expect, it } from 'vitest';
import { Prover } from '../../src/solver/learning/prover.ts';
import { ShopModel } from '../../src/solver/learning/shopModel.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { flowShopMakespan, jobShop, permutations } from './shops.ts';

describe('prover', () => {
  const jobs = [
    [3, 6],
    [7, 2],
    [4, 4],
    [5, 3],
    [2, 5],
  ] as const;
  const best = Math.min(...permutations(jobs.length).map((order) => flowShopMakespan(jobs, order)));

  const proverFrom = (floor: number, ceiling: number): Prover => {
    const problem = jobShop(
      jobs.map(([a, b]) => [
        [0, a],
        [1, b],
      ]),
    );
    return new Prover(new ShopModel(shopOf(problem), 1, () => true, true), floor, ceiling);
  };

  it('raises the floor to the best price and finds a schedule of it, with none at hand to begin with', () => {
    const prover = proverFrom(0, Number.POSITIVE_INFINITY);
    const floors: number[] = [];
    for (let i = 0; i < 1000 && !prover.isDone; i++) {
      prover.prove(50, () => true);
      floors.push(prover.floor);
    }
    expect(prover.floor).toBe(best);
    expect(prover.found).not.toBeNull();
    expect(floors).toEqual([...floors].sort((a, b) => a - b));
  });

  it('stops at the price of a schedule at hand, and never above it', () => {
    const prover = proverFrom(best - 3, best);
    for (let i = 0; i < 1000 && !prover.isDone; i++) prover.prove(50, () => true);
    expect(prover.floor).toBe(best);
  });
});
