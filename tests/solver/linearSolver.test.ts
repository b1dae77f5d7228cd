// The thread of the linear programs: the order of answers, time limits one by one, and what comes after one that took too long.
import { expect, test } from 'vitest';
import { solveLinear } from '../../src/solver/bounds/linearSolver.ts';

/** min x + y with x + y >= least: its answer is `least`. */
function small(least: number) {
  return {
    optimize: 'price',
    opType: 'min' as const,
    constraints: { least: { min: least } },
    variables: { x: { price: 1, least: 1 }, y: { price: 1, least: 1 } },
  };
}

/** Knapsacks of near-equal even worths and an odd room: branch and bound looks at a huge number of them. */
function endless() {
  const names = Array.from({ length: 40 }, (_, i) => `x${i}`);
  return {
    optimize: 'worth',
    opType: 'max' as const,
    constraints: { room: { max: 2 * 40 * 20 + 1 }, ...Object.fromEntries(names.map((name) => [name, { max: 1 }])) },
    variables: Object.fromEntries(names.map((name, i) => [name, { worth: 80 + 2 * i, room: 80 + 2 * i, [name]: 1 }])),
    ints: Object.fromEntries(names.map((name) => [name, 1 as const])),
  };
}

test('programs asked for at once are each answered', async () => {
  const answers = await Promise.all([solveLinear(small(3), 5000), solveLinear(small(5), 5000), solveLinear(small(7), 5000)]);
  expect(answers.map((answer) => answer?.result)).toEqual([3, 5, 7]);
});

test('one that takes too long is given up, and those behind it are answered', async () => {
  const [first, second, third] = await Promise.all([
    solveLinear(endless(), 100),
    solveLinear(small(2), 5000),
    solveLinear(small(4), 5000),
  ]);
  expect(first).toBeNull();
  expect([second?.result, third?.result]).toEqual([2, 4]);
});

test('an answer that is there already counts although its time was up while this thread was busy', async () => {
  await solveLinear(small(1), 5000);
  const asked = solveLinear(small(6), 50);
  const until = performance.now() + 300;
  while (performance.now() < until);
  expect((await asked)?.result).toBe(6);
});
