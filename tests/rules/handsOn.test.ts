// HANDS_ON. Hands a minute too soon, missing, or not needed.
import { describe, expect, it } from 'vitest';
import * as marketMorning from './plans/marketMorning.ts';
import * as quietHouse from './plans/quietHouse.ts';
import * as rackMorning from './plans/rackMorning.ts';
import { codesSeen, edited, spoiled, task, workOf } from './spoil.ts';

describe('HANDS_ON', () => {
  it('sees a minute of loading too many', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      workOf(plan, 'field-loaf-1/bake').start = 90;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['HANDS_ON']);
  });

  it('sees a mix left a minute too soon', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      workOf(plan, 'country-1/mix').end = 3;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['HANDS_ON']);
  });

  it('sees unloading written as loading', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      workOf(plan, 'field-loaf-1/bake', 1).for = 'load';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['HANDS_ON']);
  });

  it('sees somebody at work where the scenario names nobody', () => {
    const other = edited(quietHouse.plan, (plan) => {
      task(plan, 'roll-1/shape').handsOn.push({ person: 'ana', start: 20, end: 25, for: 'shape' });
    });
    expect(codesSeen(quietHouse.scenario, other)).toEqual(['HANDS_ON']);
  });

  it('wants the hands of a load on the tray in its lowest position, as long as its longest tray needs', () => {
    const moved = edited(rackMorning.plan, (plan) => {
      const work = task(plan, 'plain-roll-1/bake').handsOn.splice(0);
      task(plan, 'plain-roll-2/bake').handsOn.push(...work);
    });
    expect(codesSeen(rackMorning.scenario, moved)).toEqual(['HANDS_ON']);
    const short = spoiled(rackMorning.plan, (plan) => {
      workOf(plan, 'plain-roll-1/bake').start = 38;
    });
    expect(codesSeen(rackMorning.scenario, short)).toEqual(['HANDS_ON']);
  });
});
