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

  it('wants nobody where loading takes no minute', () => {
    const quick = edited(rackMorning.scenario, (scenario) => {
      for (const product of scenario.products) {
        for (const step of product.steps) if (step.do === 'bake') Object.assign(step, { load: 0, unload: 0 });
      }
    });
    const plan = edited(rackMorning.plan, (copy) => {
      for (const one of copy.tasks) {
        if (one.step === 'bake') one.handsOn = [];
        if (one.step === 'proof') one.end = one.tray === 'seeded-roll-2' ? 60 : 40;
      }
      Object.assign(task(copy, 'seeded-roll-2/bake'), { start: 60, end: 78 });
    });
    expect(codesSeen(quick, plan)).toEqual([]);
  });
});
