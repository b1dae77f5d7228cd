// The temporal network: longest paths as a plain closure finds them, rigid points as one variable, contradictions seen.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NO_PATH, networkOf } from '../../src/solver/network.ts';
import type { Link, ShopProblem, ShopTask } from '../../src/solver/problem.ts';
import { shortest } from '../../src/solver/shop.ts';
import { EMPTY, solved } from './shops.ts';

const HORIZON = 1000;

function problemOf(durations: readonly number[], links: readonly Link[]): ShopProblem {
  const tasks: ShopTask[] = durations.map((duration, i) => ({
    id: String(i),
    minDuration: duration,
    maxDuration: duration,
    earliestStart: 0,
    latestEnd: HORIZON,
    demands: [],
  }));
  return { ...EMPTY, horizon: HORIZON, tasks, links };
}

/** Longest paths between starts, by trying every middle (Floyd and Warshall); null when a cycle is positive. */
function closure(count: number, arcs: readonly (readonly [number, number, number])[]): number[][] | null {
  const d = Array.from({ length: count }, (_, i) =>
    Array.from({ length: count }, (_, j) => (i === j ? 0 : Number.NEGATIVE_INFINITY)),
  );
  const at = (i: number, j: number): number => d[i]?.[j] as number;
  for (const [i, j, lag] of arcs) (d[i] as number[])[j] = Math.max(at(i, j), lag);
  for (let k = 0; k < count; k++) {
    for (let i = 0; i < count; i++)
      for (let j = 0; j < count; j++) (d[i] as number[])[j] = Math.max(at(i, j), at(i, k) + at(k, j));
  }
  return d.some((row, i) => (row[i] as number) > 0) ? null : d;
}

const someProblem = fc.record({
  durations: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 2, maxLength: 7 }),
  links: fc.array(fc.tuple(fc.nat(6), fc.nat(6), fc.integer({ min: 0, max: 6 }), fc.option(fc.integer({ min: 0, max: 12 }))), {
    maxLength: 9,
  }),
});

describe('the temporal network', () => {
  it('has the longest paths that trying every middle finds, and sees every contradiction', () => {
    let contradictory = 0;
    fc.assert(
      fc.property(someProblem, ({ durations, links }) => {
        const count = durations.length;
        const mine = links.filter(([a, b]) => a < count && b < count && a !== b);
        const arcs = mine.flatMap(([a, b, min, slack]): [number, number, number][] => {
          const lag = (durations[a] as number) + min;
          return slack === null
            ? [[a, b, lag]]
            : [
                [a, b, lag],
                [b, a, -(lag + slack)],
              ];
        });
        const expected = closure(count, arcs);
        const network = networkOf(
          problemOf(
            durations,
            mine.map(([from, to, min, slack]) => ({
              from,
              fromEdge: 'end',
              to,
              toEdge: 'start',
              min,
              max: slack === null ? Number.POSITIVE_INFINITY : min + slack,
            })),
          ),
        );
        expect(network.isContradictory).toBe(expected === null);
        if (expected === null) {
          contradictory++;
          return;
        }
        for (let a = 0; a < count; a++) {
          for (let b = 0; b < count; b++) {
            const path = shortest(network, network.startVar[a] as number, network.startVar[b] as number);
            const found =
              path === NO_PATH
                ? Number.NEGATIVE_INFINITY
                : path + (network.startOff[b] as number) - (network.startOff[a] as number);
            expect(found).toBe(expected[a]?.[b]);
          }
        }
      }),
      { numRuns: 500 },
    );
    expect(contradictory).toBeGreaterThan(20);
  });

  it('makes one variable of points that move together', () => {
    const rigid: Link = { from: 0, fromEdge: 'end', to: 1, toEdge: 'start', min: 4, max: 4 };
    const network = networkOf(problemOf([3, 5], [rigid]));
    expect(network.variableCount).toBe(1);
    expect((network.startOff[1] as number) - (network.startOff[0] as number)).toBe(7);
  });

  it('a contradiction is refused, not searched', async () => {
    const links: Link[] = [
      { from: 0, fromEdge: 'start', to: 1, toEdge: 'start', min: 5, max: Number.POSITIVE_INFINITY },
      { from: 0, fromEdge: 'start', to: 1, toEdge: 'start', min: 0, max: 4 },
    ];
    await expect(solved(problemOf([1, 1], links), 10)).rejects.toThrow(RangeError);
  });
});
