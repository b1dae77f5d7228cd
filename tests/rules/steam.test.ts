// STEAM. A bake that needs steam on a deck without.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, placeOf, spoiled } from './spoil.ts';

describe('STEAM', () => {
  it('sees a loaf on a deck that gives no steam', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      placeOf(plan, 'field-loaf-2/bake').id = 'hatch/only';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['STEAM']);
    expect(judge(marketMorning.scenario, other).breaches[0]?.says).toBe(
      'field-loaf-2/bake needs steam and bakes at 04:38 on deck hatch/only, which gives none.',
    );
  });
});
