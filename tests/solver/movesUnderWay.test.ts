// A chamber whose state is on its way at time 0: to go on is no change, to do otherwise is one.
import { expect, it } from 'vitest';
import { countedChanges, movesOf } from '../../src/solver/moves.ts';
import type { Chamber } from '../../src/solver/problem.ts';

const chamber: Chamber = {
  id: 'chamber',
  room: 1,
  min: 100,
  max: 300,
  initial: 50,
  riseRate: 10,
  fallRate: 5,
  together: false,
  isSettled: true,
  underWay: { end: 30, to: 200 },
};
const stay = (start: number, end: number, low: number, high: number) => ({ task: start, start, end, low, high, room: 1 });

it('goes on where that serves', () => {
  const stays = [stay(32, 40, 195, 205)];
  const moves = movesOf(chamber, stays, 100);
  expect(moves).toEqual([{ start: 0, end: 30, from: 50, to: 200 }]);
  expect(countedChanges(chamber, moves, stays)).toBe(0);
  expect(movesOf(chamber, [], 100)).toEqual(moves);
});

it('goes on and moves again, which is one change', () => {
  const stays = [stay(32, 40, 195, 205), stay(60, 70, 240, 250)];
  const moves = movesOf(chamber, stays, 100);
  expect(moves[0]).toEqual({ start: 0, end: 30, from: 50, to: 200 });
  expect(moves.length).toBe(2);
  expect(countedChanges(chamber, moves, stays)).toBe(1);
});

it('does otherwise at once when what it was set for comes too late: one change, and it does not stop short of its limits', () => {
  const stays = [stay(16, 25, 195, 205)];
  const moves = movesOf(chamber, stays, 100);
  expect(moves.length).toBe(1);
  expect(moves[0]?.start).toBe(0);
  expect(moves[0]?.end).toBeLessThanOrEqual(16);
  expect(countedChanges(chamber, moves, stays)).toBe(1);
});

it('a stay that only takes room asks for no state', () => {
  const full = { ...stay(0, 90, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY) };
  expect(movesOf({ ...chamber, initial: 100 }, [full], 100)).toEqual([{ start: 0, end: 30, from: 100, to: 200 }]);
  const { underWay: _, ...still } = chamber;
  expect(movesOf({ ...still, initial: 100 }, [full], 100)).toEqual([]);
});
