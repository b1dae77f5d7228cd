// BOWL_SIZE. A batch too heavy for its bowl.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, nth, placeOf, spoiled } from './spoil.ts';

describe('BOWL_SIZE', () => {
  it('sees a batch in a bowl too small', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      placeOf(plan, 'country-1/mix').id = 'small';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['BOWL_SIZE']);
    expect(judge(marketMorning.scenario, other).breaches[0]?.says).toBe(
      'Batch country-1, 6.400 kg, is mixed at 03:00 in small, whose bowl takes 4 kg: 2.400 kg too much.',
    );
  });

  it('lets a bowl be exactly full', () => {
    const bowl = (kg: number) =>
      edited(marketMorning.scenario, (scenario) => {
        nth(scenario.equipment.mixers, 1).bowlKg = kg;
      });
    expect(codesSeen(bowl(2.4), marketMorning.bare)).toEqual([]);
    expect(codesSeen(bowl(2.39), marketMorning.bare)).toEqual(['BOWL_SIZE']);
  });
});
