// What a day under way allows beyond the scenario's minutes: exactly what it says, and not a minute more.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import type { UnderwayTask } from '../../src/model/underway.ts';
import type { WrittenPlan } from '../../src/model/writtenPlan.ts';
import { dayUnderway, recordOf, type ScenarioUnderway } from '../rules/plans/dayUnderway.ts';
import * as marketMorning from '../rules/plans/marketMorning.ts';
import * as quietHouse from '../rules/plans/quietHouse.ts';
import { codesSeen, edited, task, workOf } from '../rules/spoil.ts';

type Allowance = Pick<UnderwayTask, 'moreMinutes' | 'overrunMinutes'>;

function allowing(scenario: ScenarioUnderway, id: string, allowance: Partial<Allowance>): ScenarioUnderway {
  return edited(scenario, (copy) => {
    Object.assign(recordOf(copy, id), allowance);
  });
}

function quietAt(now: number, scenario: Scenario = quietHouse.scenario): ScenarioUnderway {
  return dayUnderway(scenario, quietHouse.plan, now);
}

describe('moreMinutes', () => {
  it('shift the least and the most of a step', () => {
    // The flatbread bakes 15 to 18 minutes from 56 on; with 5 more, 20 to 23.
    const slow = allowing(quietAt(60), 'flatbread-1/bake', { moreMinutes: 5 });
    const until = (end: number) =>
      edited(quietHouse.plan, (plan) => {
        task(plan, 'flatbread-1/bake').end = end;
      });
    for (const end of [76, 79]) expect(codesSeen(slow, until(end))).toEqual([]);
    for (const end of [75, 80]) expect(codesSeen(slow, until(end))).toEqual(['STEP_MINUTES']);
    expect(judge(slow, until(75)).breaches[0]?.says).toBe(
      'flatbread-1/bake from 06:56 lasts 19 minutes, 1 minute too short: the scenario and the day so far say 20 to 23 minutes.',
    );
  });

  it('keep whoever is at the step for the whole of it', () => {
    const slow = allowing(dayUnderway(marketMorning.scenario, marketMorning.bare, 175), 'milk-bun-1/finish', { moreMinutes: 3 });
    const longer = (end: number) =>
      edited(marketMorning.bare, (plan) => {
        task(plan, 'milk-bun-1/finish').end = 180;
        workOf(plan, 'milk-bun-1/finish').end = end;
        Object.assign(task(plan, 'milk-bun-2/cool'), { end: 180 });
        Object.assign(task(plan, 'milk-bun-2/finish'), { start: 180, end: 184 });
        Object.assign(workOf(plan, 'milk-bun-2/finish'), { start: 180, end: 184 });
      });
    expect(codesSeen(slow, longer(180))).toEqual([]);
    expect(codesSeen(slow, longer(177))).toEqual(['HANDS_ON']);
  });

  it('leave a mix its hands-on minutes', () => {
    const slow = allowing(dayUnderway(marketMorning.scenario, marketMorning.bare, 2), 'country-1/mix', { moreMinutes: 5 });
    const longer = edited(marketMorning.bare, (plan) => {
      task(plan, 'country-1/mix').end = 15;
      Object.assign(task(plan, 'country-1/bulk'), { start: 15, end: 45 });
    });
    // Hands stay at 0 to 4; what follows is now too soon for its batch, and nothing else is wrong.
    const wrong = judge(slow, longer).breaches;
    expect(wrong.map(({ rule, taskIds }) => [rule, taskIds[1]])).toEqual([['STEP_ORDER', 'country-1/fold']]);
  });
});

describe('overrunMinutes', () => {
  it('extend the most of a step, not the least', () => {
    const overrun = allowing(quietAt(60), 'flatbread-1/bake', { overrunMinutes: 4 });
    const until = (end: number) =>
      edited(quietHouse.plan, (plan) => {
        task(plan, 'flatbread-1/bake').end = end;
      });
    for (const end of [71, 78]) expect(codesSeen(overrun, until(end))).toEqual([]);
    for (const end of [70, 79]) expect(codesSeen(overrun, until(end))).toEqual(['STEP_MINUTES']);
  });

  it('extend the wait after it', () => {
    // roll-2 is proofed at 50 and may wait 10; it is baked from 56 on.
    const strict = edited(quietHouse.scenario, (scenario) => {
      for (const { steps } of scenario.products) for (const step of steps) if (step.do === 'proof') step.waitUpTo = 4;
    });
    const overrun = (minutes: number) => allowing(quietAt(52, strict), 'roll-2/proof', { overrunMinutes: minutes });
    expect(codesSeen(overrun(2), quietHouse.plan)).toEqual([]);
    expect(codesSeen(overrun(1), quietHouse.plan)).toEqual(['STEP_ORDER']);
    expect(judge(overrun(1), quietHouse.plan).breaches[0]?.says).toBe(
      'roll-2/bake begins at 06:56, 1 minute too late: roll-2/proof is done at 06:50 and may wait 5 minutes.',
    );
  });

  it('of a first step let a tray begin later after the first of its batch', () => {
    const strict = edited(marketMorning.scenario, (scenario) => {
      for (const dough of scenario.doughs) if (dough.id === 'milk') dough.shapeWithin = 3;
    });
    const overrun = (id: string, minutes: number) =>
      allowing(dayUnderway(strict, marketMorning.bare, 97), id, { overrunMinutes: minutes });
    // The buns begin at 95 and 100.
    expect(codesSeen(overrun('milk-bun-2/shape', 2), marketMorning.bare)).toEqual([]);
    expect(codesSeen(overrun('milk-bun-2/shape', 1), marketMorning.bare)).toEqual(['SHAPE_WITHIN']);
    expect(codesSeen(overrun('milk-bun-1/shape', 2), marketMorning.bare)).toEqual(['SHAPE_WITHIN']);
    expect(codesSeen(overrun('milk-bun-2/rest', 2), marketMorning.bare)).toEqual(['SHAPE_WITHIN']);
  });

  it('of a first step let the first tray begin later after its batch', () => {
    const strict = edited(quietHouse.scenario, (scenario) => {
      for (const dough of scenario.doughs) if (dough.id === 'flat-dough') for (const step of dough.steps) step.waitUpTo = 1;
    });
    const overrun = (id: string, minutes: number) => allowing(quietAt(16, strict), id, { overrunMinutes: minutes });
    // Mixed at 15, in the proofer at 18.
    expect(codesSeen(overrun('flatbread-1/proof', 2), quietHouse.plan)).toEqual([]);
    expect(codesSeen(overrun('flatbread-1/proof', 1), quietHouse.plan)).toEqual(['STEP_ORDER']);
    expect(codesSeen(overrun('flat-dough-1/mix', 2), quietHouse.plan)).toEqual([]);
    const both = allowing(overrun('flatbread-1/proof', 1), 'flat-dough-1/mix', { overrunMinutes: 1 });
    expect(codesSeen(both, quietHouse.plan)).toEqual([]);
  });
});

describe('the step that is meant', () => {
  it('is found by its ordinal', () => {
    const scenario = edited(quietHouse.scenario, (copy) => {
      copy.orders = [{ product: 'flatbread', pieces: 5, readyBy: '07:30' }];
      const flat = copy.products.find(({ id }) => id === 'flatbread');
      if (flat !== undefined) flat.steps = [1, 2].map(() => ({ do: 'rest' as const, minutes: 10, waitUpTo: 0 }));
    });
    const flat = { product: 'flatbread', batch: 'flat-dough-1', tray: 'flat', step: 'rest' as const, handsOn: [] };
    const mix = quietHouse.plan.tasks.filter(({ id }) => id === 'flat-dough-1/mix');
    const resting = (first: number, second: number): WrittenPlan => ({
      tasks: [...mix, { ...flat, start: 15, end: 15 + first }, { ...flat, start: 15 + first, end: 15 + first + second }],
      decks: [],
    });
    const more = (ordinal: number) =>
      edited(dayUnderway(scenario, resting(10, 10), 20), (copy) => {
        for (const record of copy.underway.tasks)
          if (record.step === 'rest' && record.ordinal === ordinal) record.moreMinutes = 2;
      });
    expect(codesSeen(more(1), resting(12, 10))).toEqual([]);
    expect(codesSeen(more(2), resting(10, 12))).toEqual([]);
    expect(codesSeen(more(1), resting(10, 12))).toEqual(['STEP_MINUTES']);
    expect(codesSeen(more(2), resting(12, 10))).toEqual(['STEP_MINUTES']);
  });
});
