// STEP_MINUTES. A step too short or too long.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import * as quietHouse from './plans/quietHouse.ts';
import { codesSeen, edited, spoiled, task } from './spoil.ts';

describe('STEP_MINUTES', () => {
  it('sees a minute too much', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      task(plan, 'field-loaf-2/cool').end = 150;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['STEP_MINUTES']);
    expect(judge(marketMorning.scenario, other).breaches[0]).toEqual({
      rule: 'STEP_MINUTES',
      says: 'field-loaf-2/cool from 05:09 lasts 21 minutes, 1 minute too long: the scenario says 20 minutes.',
      doThis: 'Make the step last as long as the scenario allows.',
      taskIds: ['field-loaf-2/cool'],
      minute: 129,
    });
  });

  it('takes both ends of a range and nothing beyond', () => {
    const cooling = (end: number) =>
      edited(quietHouse.plan, (plan) => {
        task(plan, 'roll-1/cool').end = end;
      });
    for (const end of [70, 72, 75]) expect(codesSeen(quietHouse.scenario, cooling(end))).toEqual([]);
    for (const end of [69, 76]) expect(codesSeen(quietHouse.scenario, cooling(end))).toEqual(['STEP_MINUTES']);
  });
});
