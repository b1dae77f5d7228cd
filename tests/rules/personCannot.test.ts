// PERSON_CANNOT. A step given to somebody who cannot do it.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, nth, spoiled, workOf } from './spoil.ts';

describe('PERSON_CANNOT', () => {
  it('sees shaping given to somebody who cannot shape', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      workOf(plan, 'field-loaf-1/shape').person = 'bem';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['PERSON_CANNOT']);
    expect(judge(marketMorning.scenario, other).breaches[0]?.says).toBe(
      'bem is given field-loaf-1/shape (shape) at 03:45 and cannot shape.',
    );
  });

  it('takes bake to cover loading and unloading', () => {
    const noOven = edited(marketMorning.scenario, (scenario) => {
      nth(scenario.people, 1).cannot = ['bake'];
    });
    expect(codesSeen(noOven, marketMorning.bare)).toEqual(['PERSON_CANNOT']);
    expect(judge(noOven, marketMorning.bare).breaches).toHaveLength(4);
  });
});
