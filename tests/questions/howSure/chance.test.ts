// Chance for mornings: normally distributed, and the same for the same seed.
import { expect, test } from 'vitest';
import { normalsFrom } from '../../../src/questions/howSure/chance.ts';

function drawn(seed: number, count: number): Float64Array {
  const numbers = new Float64Array(count);
  normalsFrom(seed)(numbers);
  return numbers;
}

test('the same seed gives the same numbers, another seed others', () => {
  expect(drawn(7, 101)).toEqual(drawn(7, 101));
  expect(drawn(7, 101)).not.toEqual(drawn(8, 101));
});

test('a list filled in two goes is the list filled in one', () => {
  const normals = normalsFrom(3);
  const [first, second] = [new Float64Array(10), new Float64Array(10)];
  normals(first);
  normals(second);
  expect([...first, ...second]).toEqual([...drawn(3, 20)]);
});

// The shares of the standard normal distribution beyond 1, 1.96 and 2.576 are 15.87 %, 2.5 % and 0.5 %; four standard errors around them.
test.each([
  [0, 0.5],
  [1, 0.158655],
  [1.959964, 0.025],
  [2.575829, 0.005],
])('of 200,000 numbers the share beyond %s is %s', (limit, share) => {
  const numbers = drawn(1, 200_000);
  const counted = numbers.filter((number) => number > limit).length / numbers.length;
  expect(Math.abs(counted - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / numbers.length));
});

test('neighbours are not alike', () => {
  const numbers = drawn(2, 200_000);
  const products = numbers.reduce((sum, number, index) => sum + number * (numbers[index + 1] ?? 0), 0);
  expect(Math.abs(products / numbers.length)).toBeLessThan(4 / Math.sqrt(numbers.length));
});
