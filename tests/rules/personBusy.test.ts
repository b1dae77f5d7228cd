// PERSON_BUSY. One person in two places.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, spoiled, workOf } from './spoil.ts';

describe('PERSON_BUSY', () => {
  it('sees a person loading while shaping', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      workOf(plan, 'field-loaf-2/bake').person = 'ana';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['PERSON_BUSY']);
    expect(judge(marketMorning.scenario, other).breaches[0]?.says).toBe(
      'At 04:37 ana is at milk-bun-1/shape (shape) and at field-loaf-2/bake (load) for 1 minute.',
    );
  });

  it('lets one thing follow another in the same minute', () => {
    // ana shapes 45 to 51 and 51 to 57, loads 149 to 150 and 150 to 151.
    expect(codesSeen(marketMorning.scenario, marketMorning.bare)).toEqual([]);
  });
});
