// What the progress of a search says has got better.
import { expect, it } from 'vitest';
import { sayChanges } from '../../src/compile/sayChanges.ts';
import type { SolveProgress } from '../../src/solver/solve.ts';

const cost = { total: 0, lateness: 40, omitted: 2, makespan: 400, firstMark: 5, changes: 3, moved: 2, sumReady: 0, missing: 0 };
const before: SolveProgress = { cost, bound: { value: 300, argument: { kind: 'none' } }, rounds: 1 };

it('the first plan', () => {
  expect(sayChanges(null, before)).toBe('a first plan');
});

it('each part that is better, and none that is worse', () => {
  const after = { ...before, cost: { ...cost, omitted: 1, makespan: 412, lateness: 0, changes: 1, moved: 0 } };
  expect(sayChanges(before, after)).toBe('1 tray more planned, less late, 2 temperature changes fewer, 2 steps moved fewer');
  expect(sayChanges(before, { ...before, cost: { ...cost, makespan: 399, firstMark: 15 } })).toBe(
    'the last tray ready 1 minute sooner, hands-on work begins 10 minutes later',
  );
  expect(sayChanges(before, { ...before, bound: { ...before.bound, value: 310 } })).toBe('the floor is higher');
});

it('nothing to point at', () => {
  expect(sayChanges(before, before)).toBe('another plan');
});
