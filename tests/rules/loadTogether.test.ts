// LOAD_TOGETHER. A tray that leaves a load before the others. The bake is given a range so that it may.
import { describe, expect, it } from 'vitest';
import * as rackMorning from './plans/rackMorning.ts';
import { codesSeen, edited, spoiled, task, workOf } from './spoil.ts';

describe('LOAD_TOGETHER', () => {
  it('sees a tray that comes out a minute before its load', () => {
    const range = edited(rackMorning.scenario, (scenario) => {
      for (const product of scenario.products) {
        for (const step of product.steps) if (step.do === 'bake') step.minutes = [17, 18];
      }
    });
    expect(codesSeen(range, rackMorning.plan)).toEqual([]);
    const other = spoiled(rackMorning.plan, (plan) => {
      task(plan, 'plain-roll-2/bake').end = 57;
    });
    expect(codesSeen(range, other)).toEqual(['LOAD_TOGETHER']);
  });

  it('lets the next load go in the minute the last bake ends', () => {
    const touching = edited(rackMorning.plan, (plan) => {
      Object.assign(task(plan, 'seeded-roll-2/proof'), { end: 55 });
      Object.assign(task(plan, 'seeded-roll-2/bake'), { start: 58, end: 76 });
      Object.assign(workOf(plan, 'seeded-roll-2/bake', 0), { start: 55, end: 58 });
      Object.assign(workOf(plan, 'seeded-roll-2/bake', 1), { start: 76, end: 77 });
    });
    expect(codesSeen(rackMorning.scenario, touching)).toEqual([]);
  });
});
