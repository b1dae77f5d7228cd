// STEP_ORDER. A step that begins too soon or too late after the one before it.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as coldNight from './plans/coldNight.ts';
import * as marketMorning from './plans/marketMorning.ts';
import * as quietHouse from './plans/quietHouse.ts';
import { codesSeen, edited, nth, spoiled, task } from './spoil.ts';

describe('STEP_ORDER', () => {
  it('sees a bulk that begins before the mix is done', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      task(plan, 'country-1/bulk').start = 9;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['STEP_ORDER']);
  });

  it('lets the first tray wait as long as the batch may, and no longer', () => {
    const proofFrom = (start: number) =>
      edited(quietHouse.plan, (plan) => {
        task(plan, 'flatbread-1/proof').start = start;
      });
    for (const start of [16, 20]) expect(codesSeen(quietHouse.scenario, proofFrom(start))).toEqual([]);
    for (const start of [21, 26]) expect(codesSeen(quietHouse.scenario, proofFrom(start))).toEqual(['STEP_ORDER']);
    expect(judge(quietHouse.scenario, proofFrom(21)).breaches[0]?.says).toBe(
      'flatbread-1/proof, the first tray of batch flat-dough-1, begins at 06:21, 1 minute too late: flat-dough-1/mix is done at ' +
        '06:15 and may wait 5 minutes.',
    );
  });

  it('counts the wait to the minute loading begins', () => {
    const waiting = (minutes: number) =>
      edited(coldNight.scenario, (scenario) => {
        nth(nth(scenario.products, 0).steps, 1).waitUpTo = minutes;
      });
    // The second loaf is done at 600 and is loaded from 612.
    expect(codesSeen(waiting(12), coldNight.plan)).toEqual([]);
    expect(codesSeen(waiting(11), coldNight.plan)).toEqual(['STEP_ORDER']);
  });
});
