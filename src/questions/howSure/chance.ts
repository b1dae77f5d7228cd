// Chance for simulated mornings: normally distributed numbers from a seed. Used by howSure.ts and its tests.
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Fills a list with numbers of the standard normal distribution, the next ones of their row. */
export type Normals = (into: Float64Array) => void;

const WHOLE = 4294967296;

/** Two at a time from two even numbers (Box and Muller 1958, Annals of Mathematical Statistics 29); the same for the same seed. */
export function normalsFrom(seed: number): Normals {
  const generator = xoroshiro128plus(seed);
  // Half a step above 0, so that the logarithm is finite.
  const even = (): number => ((generator.next() >>> 0) + 0.5) / WHOLE;
  return (into) => {
    for (let i = 0; i < into.length; i += 2) {
      const length = Math.sqrt(-2 * Math.log(even()));
      const angle = 2 * Math.PI * even();
      into[i] = length * Math.cos(angle);
      if (i + 1 < into.length) into[i + 1] = length * Math.sin(angle);
    }
  };
}
