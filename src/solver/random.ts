// Chance, seeded: the only source of random numbers in the solver.
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export type Random = {
  /** A number in [0, 1). */
  next(): number;
  /** A whole number in [0, below). */
  below(below: number): number;
};

/** Random numbers that depend on the seed alone. */
export function randomOf(seed: number): Random {
  const generator = xoroshiro128plus(seed);
  const next = (): number => (generator.next() >>> 0) / 4294967296;
  return { next, below: (below) => Math.floor(next() * below) };
}
