// Plans written by hand say less and say it in any order: the verdict stays.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import type { WrittenPlan } from '../../src/model/writtenPlan.ts';
import * as coldNight from '../rules/plans/coldNight.ts';
import * as fourJobs from '../rules/plans/fourJobs.ts';
import * as marketMorning from '../rules/plans/marketMorning.ts';
import * as quietHouse from '../rules/plans/quietHouse.ts';
import * as rackMorning from '../rules/plans/rackMorning.ts';
import { edited, nth } from '../rules/spoil.ts';

const GOOD = [{ scenario: marketMorning.scenario, plan: marketMorning.bare }, quietHouse, rackMorning, coldNight, fourJobs];

/** Product and batch only on the first task of each tray, and no ids. */
function terse(plan: WrittenPlan): WrittenPlan {
  const seen = new Set<string>();
  const tasks = plan.tasks.map(({ id: _id, product, batch, ...task }) => {
    const isNext = task.tray !== undefined && seen.has(task.tray);
    if (task.tray !== undefined) seen.add(task.tray);
    return isNext ? task : { ...task, product, batch };
  });
  return { ...plan, tasks };
}

describe('a plan written by hand', () => {
  it('may leave away ids, and product and batch where the tray has said them', () => {
    for (const { scenario, plan } of GOOD) expect(judge(scenario, terse(plan))).toEqual(judge(scenario, plan));
  });

  it('may list tasks and decks in any order', () => {
    const order = fc.array(fc.nat(), { minLength: 40, maxLength: 40 });
    fc.assert(
      fc.property(fc.constantFrom(...GOOD), order, ({ scenario, plan }, keys) => {
        const rank = new Map(plan.tasks.map((task, index) => [task, keys[index] ?? 0]));
        const tasks = [...plan.tasks].sort((a, b) => (rank.get(a) ?? 0) - (rank.get(b) ?? 0));
        expect(judge(scenario, { ...plan, tasks, decks: [...plan.decks].reverse() })).toEqual(judge(scenario, plan));
      }),
    );
  });

  it('may call trays and batches what it likes', () => {
    for (const { scenario, plan } of GOOD) {
      const renamed = {
        ...plan,
        tasks: plan.tasks.map(({ id: _id, batch, tray, ...task }) => ({
          ...task,
          ...(batch === undefined ? {} : { batch: `bowl of ${batch}` }),
          ...(tray === undefined ? {} : { tray: `Blech ${tray}` }),
        })),
      };
      expect(judge(scenario, renamed)).toEqual(judge(scenario, plan));
    }
  });

  it('is told what a nameless task is called', () => {
    const plan = terse(quietHouse.plan);
    const { breaches } = judge(quietHouse.scenario, {
      ...plan,
      tasks: plan.tasks.map((task) => (task.tray === 'roll-1' && task.step === 'cool' ? { ...task, end: 90 } : task)),
    });
    expect(breaches.map(({ rule, taskIds }) => [rule, taskIds])).toEqual([['STEP_MINUTES', ['roll-1/cool']]]);
  });

  it('knows the product and batch of a tray from the batches it lists', () => {
    const tasks = marketMorning.plan.tasks.map(({ product: _product, batch, ...task }) =>
      task.tray === undefined ? { ...task, batch } : task,
    );
    expect(judge(marketMorning.scenario, { ...marketMorning.plan, tasks })).toEqual(
      judge(marketMorning.scenario, marketMorning.plan),
    );
  });

  it('may do a step twice, and list the second first', () => {
    // Rested, shaped, rested again and shaped again: which rest is which is told by the minute.
    const scenario = edited(quietHouse.scenario, (copy) => {
      copy.orders = [{ product: 'flatbread', pieces: 5, readyBy: '07:30' }];
      nth(copy.products, 1).steps = [
        { do: 'rest', minutes: 10, waitUpTo: 0 },
        { do: 'shape', minutesPerTray: 4, waitUpTo: 0 },
        { do: 'rest', minutes: 20, waitUpTo: 0 },
        { do: 'shape', minutesPerTray: 6, waitUpTo: 0 },
      ];
    });
    const flat = { product: 'flatbread', batch: 'flat-1', tray: 'flat', handsOn: [] };
    const place = { kind: 'bench' as const, id: 'bench', position: 1 };
    const mix = nth(
      quietHouse.plan.tasks.filter(({ id }) => id === 'flat-dough-1/mix'),
      0,
    );
    const tasks = [
      { ...mix, batch: 'flat-1' },
      { ...flat, step: 'rest' as const, start: 29, end: 49 },
      { ...flat, step: 'shape' as const, start: 49, end: 55, place },
      { ...flat, step: 'rest' as const, start: 15, end: 25 },
      { ...flat, step: 'shape' as const, start: 25, end: 29, place },
    ];
    const { breaches, figures } = judge(scenario, { tasks, decks: [] });
    expect(breaches).toEqual([]);
    expect(figures.finishMinute).toBe(55);
  });
});
