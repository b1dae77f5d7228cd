// Positions: none held twice at once, and never more of them than are needed at the fullest moment.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { positionsOf } from '../../src/compile/positions.ts';

it('no two holds that overlap share a position, and as few positions as overlap at once', () => {
  const holds = fc.array(fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 1, max: 12 })), {
    minLength: 1,
    maxLength: 20,
  });
  fc.assert(
    fc.property(holds, (spans) => {
      const list = spans.map(([start, length], i) => ({ key: String(i), start, end: start + length, rank: 0 }));
      const position = positionsOf(list);
      for (const a of list) {
        for (const b of list) {
          if (a.key < b.key && a.start < b.end && b.start < a.end) expect(position.get(a.key)).not.toBe(position.get(b.key));
        }
      }
      const fullest = Math.max(...list.map((a) => list.filter((b) => b.start <= a.start && a.start < b.end).length));
      expect(Math.max(...position.values())).toBe(fullest);
    }),
  );
});

it('of holds with the same times the lower rank stands first', () => {
  const position = positionsOf([
    { key: 'a', start: 0, end: 5, rank: 1 },
    { key: 'b', start: 0, end: 5, rank: 0 },
  ]);
  expect([position.get('b'), position.get('a')]).toEqual([1, 2]);
});
