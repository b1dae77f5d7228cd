// PERSON_HOURS. Work before hours, after hours, in a break.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, nth, spoiled, workOf } from './spoil.ts';

describe('PERSON_HOURS', () => {
  it('sees work in a break', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      workOf(plan, 'field-loaf-1/bake', 1).person = 'ana';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['PERSON_HOURS']);
    expect(judge(marketMorning.scenario, other).breaches[0]?.says).toBe(
      'ana is at field-loaf-1/bake (unload) 05:02 to 05:03, into their break 05:00 to 05:15.',
    );
  });

  it('lets work begin and end with the hours, and no minute outside', () => {
    const hours = (index: number, from: string, until: string) =>
      edited(marketMorning.scenario, (scenario) => {
        Object.assign(nth(scenario.people, index), { from, until });
      });
    expect(codesSeen(hours(0, '03:00', '06:01'), marketMorning.bare)).toEqual([]);
    expect(codesSeen(hours(0, '03:00', '06:00'), marketMorning.bare)).toEqual(['PERSON_HOURS']);
    expect(codesSeen(hours(1, '04:31', '05:09'), marketMorning.bare)).toEqual([]);
    expect(codesSeen(hours(1, '04:32', '05:09'), marketMorning.bare)).toEqual(['PERSON_HOURS']);
    expect(codesSeen(hours(1, '04:31', '05:08'), marketMorning.bare)).toEqual(['PERSON_HOURS']);
  });

  it('lets a break touch the work on both sides, and no minute more', () => {
    const rest = (from: string, until: string) =>
      edited(marketMorning.scenario, (scenario) => {
        nth(scenario.people, 0).breaks = [{ from, until }];
      });
    // ana shapes until 105 (04:45) and loads from 149 (05:29).
    expect(codesSeen(rest('04:45', '05:29'), marketMorning.bare)).toEqual([]);
    expect(codesSeen(rest('04:44', '05:29'), marketMorning.bare)).toEqual(['PERSON_HOURS']);
    expect(codesSeen(rest('04:45', '05:30'), marketMorning.bare)).toEqual(['PERSON_HOURS']);
  });
});
