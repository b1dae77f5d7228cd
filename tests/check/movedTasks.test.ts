// Steps moved, counted and priced: another minute, another place, other people; not another position.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import type { WrittenPlan } from '../../src/model/writtenPlan.ts';
import { dayUnderway } from '../rules/plans/dayUnderway.ts';
import * as marketMorning from '../rules/plans/marketMorning.ts';
import * as quietHouse from '../rules/plans/quietHouse.ts';
import * as rackMorning from '../rules/plans/rackMorning.ts';
import { codesSeen, edited, placeOf, task, workOf } from '../rules/spoil.ts';

const at100 = dayUnderway(marketMorning.scenario, marketMorning.bare, 100);
const before = judge(marketMorning.scenario, marketMorning.bare).figures;

function figuresWith(edit: (plan: WrittenPlan) => void) {
  return judge(at100, edited(marketMorning.bare, edit)).figures;
}

describe('steps moved', () => {
  it('are not counted of a day that is not under way', () => {
    expect('movedTasks' in before).toBe(false);
    expect(judge(at100, marketMorning.bare).figures).toEqual({ ...before, movedTasks: 0 });
  });

  it('are those at another minute', () => {
    // The finish has another minute and another person, and counts once.
    const { movedTasks, cost } = figuresWith((plan) => {
      Object.assign(task(plan, 'milk-bun-2/cool'), { start: 165 });
      Object.assign(task(plan, 'milk-bun-2/finish'), { start: 178, end: 181 });
      Object.assign(workOf(plan, 'milk-bun-2/finish'), { start: 178, end: 181, person: 'bem' });
    });
    expect(movedTasks).toBe(2);
    expect(cost).toBe(before.cost + 2 * 2);
  });

  it('are those in another place, not in another position', () => {
    expect(figuresWith((plan) => Object.assign(placeOf(plan, 'milk-bun-1/proof'), { id: 'cool-box' })).movedTasks).toBe(1);
    expect(figuresWith((plan) => Object.assign(placeOf(plan, 'milk-bun-1/proof'), { position: 2 })).movedTasks).toBe(0);
  });

  it('are those with other people for a kind of work', () => {
    expect(figuresWith((plan) => Object.assign(workOf(plan, 'milk-bun-1/bake', 1), { person: 'bem' })).movedTasks).toBe(1);
    const swapped = figuresWith((plan) => {
      for (const index of [0, 1]) workOf(plan, 'milk-bun-1/bake', index).person = 'bem';
    });
    expect(swapped.movedTasks).toBe(1);
  });

  it('are none of those that have begun, that are left out, or that end otherwise', () => {
    expect(figuresWith((plan) => Object.assign(task(plan, 'field-loaf-2/bake'), { start: 99 })).movedTasks).toBe(0);
    expect(figuresWith((plan) => Object.assign(task(plan, 'milk-bun-1/proof'), { end: 148 })).movedTasks).toBe(0);
    const tasks = marketMorning.bare.tasks.filter(({ tray }) => tray !== 'milk-bun-2');
    expect(judge(at100, { ...marketMorning.bare, tasks }).figures.movedTasks).toBe(0);
  });

  it('do not count the people of a load', () => {
    const at20 = dayUnderway(rackMorning.scenario, rackMorning.plan, 20);
    const byOther = edited(rackMorning.plan, (plan) => {
      for (const index of [0, 1]) workOf(plan, 'plain-roll-1/bake', index).person = 'ole';
      for (const index of [0, 1]) workOf(plan, 'seeded-roll-2/bake', index).person = 'ida';
    });
    expect(judge(at20, byOther)).toMatchObject({ breaches: [], figures: { movedTasks: 0 } });
  });

  it('take a place that is not stated as the same', () => {
    const stated = edited(quietHouse.plan, (plan) => {
      task(plan, 'roll-1/cool').place = { kind: 'rack', id: 'cooling-rack', position: 3 };
    });
    const at60 = dayUnderway(quietHouse.scenario, quietHouse.plan, 60);
    expect(judge(at60, stated)).toMatchObject({ breaches: [], figures: { movedTasks: 0 } });
  });

  it('cost the price the scenario sets', () => {
    const dear = edited(at100, (scenario) => {
      scenario.underway.movePrice = 7.5;
    });
    const moved = edited(marketMorning.bare, (plan) => {
      workOf(plan, 'milk-bun-2/finish').person = 'bem';
    });
    expect(judge(dear, moved)).toMatchObject({ breaches: [], figures: { cost: before.cost + 7.5, movedTasks: 1 } });
    expect(codesSeen(dear, { ...moved, score: { cost: before.cost + 7.5, movedTasks: 1 } })).toEqual([]);
    expect(codesSeen(dear, { ...moved, score: { cost: before.cost } })).toEqual(['SCORE']);
    expect(codesSeen(dear, { ...moved, score: { movedTasks: 2 } })).toEqual(['SCORE']);
    expect(codesSeen(marketMorning.scenario, { ...moved, score: { movedTasks: 1 } })).toEqual(['SCORE']);
  });
});
