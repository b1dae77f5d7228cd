// Dice for the generator: the same seed gives the same throws on every machine.
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export type Dice = {
  /** A whole number from `least` to `most`, both included. */
  between(least: number, most: number): number;
  oneOf<T>(list: readonly T[]): T;
  /** The list in another order. */
  shuffled<T>(list: readonly T[]): T[];
};

export function diceOf(seed: number): Dice {
  const generator = xoroshiro128plus(seed);
  const share = (): number => (generator.next() >>> 0) / 4294967296;
  const between = (least: number, most: number): number => least + Math.floor(share() * (most - least + 1));
  const oneOf = <T>(list: readonly T[]): T => {
    const [found] = list.slice(between(0, list.length - 1));
    if (found === undefined) throw new RangeError('nothing to choose from');
    return found;
  };
  const shuffled = <T>(list: readonly T[]): T[] =>
    list
      .map((item) => ({ item, at: share() }))
      .sort((a, b) => a.at - b.at)
      .map(({ item }) => item);
  return { between, oneOf, shuffled };
}
