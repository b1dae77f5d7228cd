// The proving side of the learning solver, against every order tried.
import { describe, expect, it } from 'vitest';
import { Prover } from '../../src/solver/learning/prover.ts';
import { ShopModel } from '../../src/solver/learning/shopModel.ts';
import { shopOf } from '../../src/solver/shop.ts';
import { jobShop, permutations } from './shops.ts';

/** Makespan of jobs through two machines in one order. */
function throughTwo(jobs: readonly (readonly [number, number])[], order: readonly number[]): number {
  let first = 0;
  let second = 0;
  for (const j of order) {
    const [a, b] = jobs[j] as readonly [number, number];
    first += a;
    second = Math.max(second, first) + b;
  }
  return second;
}

describe('prover', () => {
  const jobs = [
    [3, 6],
    [7, 2],
    [4, 4],
    [5, 3],
    [2, 5],
  ] as const;
  const best = Math.min(...permutations(jobs.length).map((order) => throughTwo(jobs, order)));

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
