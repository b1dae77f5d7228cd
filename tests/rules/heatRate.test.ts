// HEAT_RATE. A set point that moves too fast, or from somewhere else.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, moveOf, spoiled } from './spoil.ts';

describe('HEAT_RATE', () => {
  it('lets a deck heat up as fast as the oven does, and no faster', () => {
    // 215 C at 5 C a minute are 43 minutes, 45 to 88.
    expect(codesSeen(marketMorning.scenario, marketMorning.bare)).toEqual([]);
    const other = spoiled(marketMorning.bare, (plan) => {
      moveOf(plan, 'hearth/upper').end = 87;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['HEAT_RATE']);
    expect(judge(marketMorning.scenario, other).breaches[0]?.says).toBe(
      'Deck hearth/upper is to go from 20 C to 235 C in 42 minutes from 03:45; the oven heats up 5 C a minute and needs ' +
        '43 minutes.',
    );
  });

  it('lets a deck cool down as fast as the oven does, and no faster', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      moveOf(plan, 'hearth/lower', 1).end = 147;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['HEAT_RATE']);
  });

  it('sees a move that starts from another temperature', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      moveOf(plan, 'hearth/upper').fromC = 21;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['HEAT_RATE']);
  });

  it('sees a move that starts before the last one ends', () => {
    const moves = (start: number) =>
      edited(marketMorning.bare, (plan) => {
        const setPoints = [
          { start: 200, end: 210, fromC: 235, toC: 240 },
          { start, end: 220, fromC: 240, toC: 245 },
        ];
        plan.decks.push({ id: 'hatch/only', setPoints });
      });
    expect(codesSeen(marketMorning.scenario, moves(210))).toEqual([]);
    expect(codesSeen(marketMorning.scenario, moves(209))).toEqual(['HEAT_RATE']);
  });
});
