// The slow check of neutral schedules sees each way of spoiling a good one: without that, no test that leans on it means much.
import { describe, expect, it } from 'vitest';
import { checkSchedule } from '../../src/solver/checkSchedule.ts';
import type { Schedule, ShopProblem } from '../../src/solver/problem.ts';
import { EMPTY, mandatory, whole } from './shops.ts';

const task = (id: string, minDuration: number, maxDuration = minDuration) => ({
  id,
  minDuration,
  maxDuration,
  earliestStart: 0,
  latestEnd: 100,
  demands: [whole([0])],
});
const stay = { chambers: [0], low: 190, high: 210, room: 1, before: 0, after: 0 };

/** A worker, a chamber of one place from 20 up to 200 by 10; a task, then a stay of 5 to 7 within 4 of its end. */
const PROBLEM: ShopProblem = {
  ...EMPTY,
  horizon: 100,
  pools: [{ id: 'worker', capacity: 1, open: [[0, 100]] }],
  chambers: [{ id: 'chamber', room: 1, min: 0, max: 300, initial: 20, riseRate: 10, fallRate: 5, together: false }],
  tasks: [task('first', 20), { ...task('second', 5, 7), demands: [], stay }, task('other', 10)],
  links: [{ from: 0, fromEdge: 'end', to: 1, toEdge: 'start', min: 0, max: 4 }],
  units: [mandatory('first', 0), mandatory('second', 1), mandatory('other', 2)],
};

const GOOD: Schedule = {
  start: [0, 22, 20],
  end: [20, 28, 30],
  pools: [[0], [], [0]],
  chamber: [-1, 0, -1],
  moves: [[{ start: 2, end: 20, from: 20, to: 200 }]],
};

const spoiled: readonly (readonly [string, Partial<Schedule>, RegExp])[] = [
  ['a task too short', { end: [19, 28, 30] }, /first: lasts 19/],
  ['a lag too long', { start: [0, 25, 20], end: [20, 31, 30] }, /first to second: lag 5/],
  ['a lag too short', { start: [0, 19, 20], end: [20, 25, 30] }, /lag -1/],
  ['a pool used twice at once', { start: [0, 22, 19], end: [20, 28, 29] }, /worker: over capacity at 19/],
  ['a demand nobody serves', { pools: [[0], [], [-1]] }, /other: demand 0 is not served/],
  ['a stay at the wrong state', { moves: [[{ start: 2, end: 20, from: 20, to: 180 }]] }, /second: outside its range/],
  ['a state that moves too fast', { moves: [[{ start: 3, end: 20, from: 20, to: 200 }]] }, /chamber: moves too fast/],
  ['a state that arrives too late', { moves: [[{ start: 6, end: 24, from: 20, to: 200 }]] }, /second: outside its range at 22/],
  ['no chamber', { chamber: [-1, -1, -1] }, /second: in no chamber/],
  ['a task left away', { start: [0, 22, -1], end: [20, 28, -1] }, /other: omitted/],
  ['outside the day', { start: [0, 22, 91], end: [20, 28, 101] }, /other: outside its window/],
];

describe('checkSchedule', () => {
  it('finds nothing wrong with a good schedule', () => {
    expect(checkSchedule(PROBLEM, GOOD)).toEqual([]);
  });

  it.each(spoiled)('sees %s', (_, change, says) => {
    expect(checkSchedule(PROBLEM, { ...GOOD, ...change }).join('\n')).toMatch(says);
  });
});
