// CLOCK_TIMES. A clock time that is not the minute beside it.
import { describe, expect, it } from 'vitest';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, spoiled, task } from './spoil.ts';

describe('CLOCK_TIMES', () => {
  it('sees a start that is stated a minute off', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      task(plan, 'field-loaf-1/bake').startsAt = '2026-05-16T04:33:00+01:00';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['CLOCK_TIMES']);
  });

  it('sees an end in another time zone, though the moment is the same', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      task(plan, 'field-loaf-1/bake').endsAt = '2026-05-16T06:02:00+02:00';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['CLOCK_TIMES']);
  });

  it('sees a text that is no time', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      task(plan, 'field-loaf-1/bake').endsAt = 'soon';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['CLOCK_TIMES']);
  });

  it('sees a day stated longer than it is', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      if (plan.day !== undefined) plan.day.minutes = 420;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['CLOCK_TIMES']);
  });
});
