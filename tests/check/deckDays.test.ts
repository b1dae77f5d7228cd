// A deck's temperature minute by minute, for random moves at the oven's pace: never faster than the oven, and where it should be.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deckDays } from '../../src/check/deckDays.ts';
import type { SetPoint } from '../../src/model/plan.ts';
import { scenarioSchema } from '../../src/model/scenario.ts';
import { codesSeen } from '../rules/spoil.ts';

const HEAT_UP = 4;
const COOL_DOWN = 1.5;

const scenario = scenarioSchema.parse({
  scenario: 1,
  name: 'One deck',
  date: '2026-01-20',
  timeZone: 'UTC',
  day: { from: '00:00', until: '20:00' },
  equipment: {
    ovens: [
      {
        id: 'oven',
        heatUpCPerMinute: HEAT_UP,
        coolDownCPerMinute: COOL_DOWN,
        decks: [{ id: 'deck', trays: 1, minC: 50, maxC: 280, startsAtC: 20 }],
      },
    ],
  },
  doughs: [{ id: 'dough', steps: [{ do: 'bulk', minutes: 0 }] }],
  products: [{ id: 'roll', dough: 'dough', pieceG: 50, piecesPerTray: 10, steps: [{ do: 'shape', minutesPerTray: 5 }] }],
  orders: [{ product: 'roll', pieces: 10, readyBy: '20:00' }],
});

/** Moves to the given temperatures, each at the oven's pace after a pause, slower by some minutes. */
function movesTo(targets: readonly { readonly toC: number; readonly pause: number; readonly slower: number }[]): SetPoint[] {
  let at = 0;
  let fromC = 20;
  return targets.map(({ toC, pause, slower }) => {
    const start = at + pause;
    const end = start + Math.ceil(Math.abs(toC - fromC) / (toC > fromC ? HEAT_UP : COOL_DOWN)) + slower;
    const move = { start, end, fromC, toC };
    at = end;
    fromC = toC;
    return move;
  });
}

const target = fc.record({
  toC: fc.integer({ min: 50, max: 280 }),
  pause: fc.integer({ min: 0, max: 20 }),
  slower: fc.integer({ min: 0, max: 10 }),
});
const legalMoves = fc.array(target, { minLength: 1, maxLength: 6 }).map(movesTo);

function plan(setPoints: SetPoint[]) {
  return { tasks: [], decks: [{ id: 'oven/deck', setPoints }] };
}

describe('a deck through the day', () => {
  it('keeps to the pace of the oven, holds between moves, and arrives', () => {
    fc.assert(
      fc.property(legalMoves, (moves) => {
        expect(codesSeen(scenario, plan(moves))).toEqual([]);
        const path = deckDays(scenario, plan(moves), 1200).get('oven/deck')?.temperatureC ?? [];
        expect(path).toHaveLength(1201);
        expect(path[0]).toBe(20);
        for (let minute = 1; minute <= 1200; minute++) {
          const change = (path[minute] ?? Number.NaN) - (path[minute - 1] ?? Number.NaN);
          const isMoving = moves.some(({ start, end }) => minute > start && minute <= end);
          expect(change).toBeLessThanOrEqual(isMoving ? HEAT_UP + 1e-9 : 0);
          expect(change).toBeGreaterThanOrEqual(isMoving ? -COOL_DOWN - 1e-9 : 0);
        }
        for (const { end, toC } of moves) expect(path[end]).toBe(toC);
      }),
    );
  });

  it('is seen to move too fast when a move at full pace is given a minute less', () => {
    const atFullPace = fc.array(target, { minLength: 1, maxLength: 6 }).map((all) => all.map((one) => ({ ...one, slower: 0 })));
    fc.assert(
      fc.property(atFullPace, fc.nat(), (targets, pick) => {
        const moves = movesTo(targets);
        const index = pick % moves.length;
        fc.pre(moves[index]?.fromC !== moves[index]?.toC);
        const hurried = moves.map((move, at) => (at === index ? { ...move, end: move.end - 1 } : move));
        expect(codesSeen(scenario, plan(hurried))).toEqual(['HEAT_RATE']);
      }),
    );
  });

  it('is followed in the order of time, and moves listed in another order are seen', () => {
    const moves = movesTo([
      { toC: 220, pause: 5, slower: 0 },
      { toC: 180, pause: 30, slower: 0 },
      { toC: 240, pause: 0, slower: 3 },
    ]);
    const turned = plan([...moves].reverse());
    const path = (of: typeof turned) => deckDays(scenario, of, 1200).get('oven/deck')?.temperatureC;
    expect(path(turned)).toEqual(path(plan(moves)));
    expect(codesSeen(scenario, turned)).toEqual(['HEAT_RATE']);
  });
});
