// SHAPE_WITHIN. A tray of a batch that begins too long after the first.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, nth } from './spoil.ts';

describe('SHAPE_WITHIN', () => {
  it('lets a tray begin at the last allowed minute, and no later', () => {
    const within = (minutes: number) =>
      edited(marketMorning.scenario, (scenario) => {
        nth(scenario.doughs, 0).shapeWithin = minutes;
      });
    // The loaves begin at 45 and 51.
    expect(codesSeen(within(6), marketMorning.bare)).toEqual([]);
    expect(codesSeen(within(5), marketMorning.bare)).toEqual(['SHAPE_WITHIN']);
    expect(judge(within(5), marketMorning.bare).breaches[0]?.taskIds).toEqual(['field-loaf-2/shape']);
  });
});
