// Which kind of work comes next: what gains has the most of the rounds, and nothing is forgotten.
import { describe, expect, it } from 'vitest';
import { Operators } from '../../src/solver/operators.ts';
import { randomOf } from '../../src/solver/random.ts';

type Kind = 'quick' | 'slow';

/** Rounds each kind has had after so many turns, where a turn takes and gains what is said. */
function played(turns: number, gain: (kind: Kind, turn: number) => number, rounds: Record<Kind, number>): Record<Kind, number> {
  const operators = new Operators<Kind>(randomOf(1));
  const had = { quick: 0, slow: 0 };
  for (let turn = 0; turn < turns; turn++) {
    const kind = operators.draw(['quick', 'slow']);
    had[kind] += rounds[kind];
    operators.remember(kind, 1000, 1000 - gain(kind, turn), rounds[kind]);
  }
  return had;
}

describe('operators', () => {
  it('shares rounds evenly, not turns, while nothing gains', () => {
    const had = played(4000, () => 0, { quick: 10, slow: 50 });
    expect(had.quick / (had.quick + had.slow)).toBeGreaterThan(0.4);
    expect(had.quick / (had.quick + had.slow)).toBeLessThan(0.6);
  });

  it('gives most to what gains, and some to what does not', () => {
    const had = played(1000, (kind) => (kind === 'slow' ? 10 : 0), { quick: 10, slow: 50 });
    expect(had.slow / (had.quick + had.slow)).toBeGreaterThan(0.7);
    expect(had.quick).toBeGreaterThan(0);
  });

  it('gives a kind its least share', () => {
    const operators = new Operators<Kind>(randomOf(1));
    const had = { quick: 0, slow: 0 };
    for (let turn = 0; turn < 1000; turn++) {
      const kind = operators.draw(['quick', 'slow'], { slow: 0.5 });
      had[kind] += 10;
      operators.remember(kind, 1000, kind === 'quick' ? 990 : 1000, 10);
    }
    expect(had.slow / (had.quick + had.slow)).toBeGreaterThan(0.45);
  });

  it('follows when another begins to gain', () => {
    const rounds = { quick: 10, slow: 10 };
    const half = played(500, (kind) => (kind === 'quick' ? 10 : 0), rounds);
    const both = played(1000, (kind, turn) => (kind === (turn < 500 ? 'quick' : 'slow') ? 10 : 0), rounds);
    expect(half.quick).toBeGreaterThan(2 * half.slow);
    expect(both.slow - half.slow).toBeGreaterThan(2 * (both.quick - half.quick));
  });
});
