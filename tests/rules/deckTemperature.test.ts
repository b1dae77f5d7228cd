// DECK_TEMPERATURE. A deck too hot or too cold for a bake.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, moveOf } from './spoil.ts';

describe('DECK_TEMPERATURE', () => {
  it('takes the end of the range and nothing beyond', () => {
    const cooledTo = (celsius: number) =>
      edited(marketMorning.bare, (plan) => {
        moveOf(plan, 'hearth/lower', 1).toC = celsius;
      });
    expect(codesSeen(marketMorning.scenario, cooledTo(200))).toEqual([]);
    expect(codesSeen(marketMorning.scenario, cooledTo(200.1))).toEqual(['DECK_TEMPERATURE']);
  });

  it("looks at every minute up to the bake's end", () => {
    const movingFrom = (start: number) =>
      edited(marketMorning.bare, (plan) => {
        moveOf(plan, 'hearth/lower', 1).start = start;
      });
    // 235 to 195 by 148; the loaf, at 230 to 240, comes out at 128. From 125 on: 235 - 40 x 3 / 23 = 229.8 at 128.
    expect(codesSeen(marketMorning.scenario, movingFrom(126))).toEqual([]);
    expect(codesSeen(marketMorning.scenario, movingFrom(125))).toEqual(['DECK_TEMPERATURE']);
    expect(judge(marketMorning.scenario, movingFrom(125)).breaches[0]?.says).toBe(
      'At 05:08 deck hearth/lower is at 229.8 C, 0.2 C too cold for field-loaf-2/bake, which bakes at 230 C to 240 C.',
    );
  });
});
