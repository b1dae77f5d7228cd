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
});
