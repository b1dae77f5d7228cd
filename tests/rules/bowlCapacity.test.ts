// BOWL_CAPACITY. Two batches in one bowl.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as quietHouse from './plans/quietHouse.ts';
import { codesSeen, edited, placeOf, spoiled, task } from './spoil.ts';

describe('BOWL_CAPACITY', () => {
  it('sees a second batch in a bowl that is busy', () => {
    const other = spoiled(quietHouse.plan, (plan) => {
      placeOf(plan, 'flat-dough-1/mix').id = 'one';
    });
    expect(codesSeen(quietHouse.scenario, other)).toEqual(['BOWL_CAPACITY']);
    expect(judge(quietHouse.scenario, other).breaches[0]?.says).toBe(
      'one holds 2 batches at once between 06:05 and 06:10, 1 more than its room of 1: batch roll-dough-1, batch flat-dough-1.',
    );
  });

  it('lets one batch follow another in the same minute', () => {
    const following = edited(quietHouse.plan, (plan) => {
      Object.assign(task(plan, 'flat-dough-1/mix'), { start: 10, end: 20 });
      placeOf(plan, 'flat-dough-1/mix').id = 'one';
      task(plan, 'flatbread-1/proof').start = 20;
    });
    expect(codesSeen(quietHouse.scenario, following)).toEqual([]);
  });
});
