// Any single number of a good plan spoiled at random, where an argument says the plan can no longer be good.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { WrittenPlan } from '../../src/model/writtenPlan.ts';
import * as coldNight from '../rules/plans/coldNight.ts';
import * as fourJobs from '../rules/plans/fourJobs.ts';
import * as marketMorning from '../rules/plans/marketMorning.ts';
import * as quietHouse from '../rules/plans/quietHouse.ts';
import * as rackMorning from '../rules/plans/rackMorning.ts';
import { codesSeen, edited, nth } from '../rules/spoil.ts';

const market = { scenario: marketMorning.scenario, plan: marketMorning.bare };
const GOOD = [market, quietHouse, rackMorning, coldNight, fourJobs];

/** A good plan and one of its tasks by number. */
const anyTask = fc.constantFrom(...GOOD.flatMap((good) => good.plan.tasks.map((_, index) => ({ ...good, index }))));
const someMinutes = fc.integer({ min: -60, max: 60 }).filter((minutes) => minutes !== 0);

function taskEdited(plan: WrittenPlan, index: number, edit: (task: WrittenPlan['tasks'][number]) => void): WrittenPlan {
  return edited(plan, (copy) => edit(nth(copy.tasks, index)));
}

describe('one thing spoiled', () => {
  it('a task of a chain without waits, moved by any minutes, no longer touches its neighbours', () => {
    const index = fc.nat({ max: fourJobs.plan.tasks.length - 1 });
    fc.assert(
      fc.property(index, someMinutes, (at, by) => {
        const moved = taskEdited(fourJobs.plan, at, (task) => {
          task.start += by;
          task.end += by;
        });
        expect(codesSeen(fourJobs.scenario, moved)).toContain('STEP_ORDER');
      }),
    );
  });

  it('a start or an end alone, where the minutes are fixed, makes the step too short or too long', () => {
    const index = fc.nat({ max: fourJobs.plan.tasks.length - 1 });
    fc.assert(
      fc.property(index, someMinutes, fc.constantFrom('start' as const, 'end' as const), (at, by, which) => {
        const other = taskEdited(fourJobs.plan, at, (task) => {
          task[which] += by;
        });
        expect(codesSeen(fourJobs.scenario, other)).toContain('STEP_MINUTES');
      }),
    );
  });

  it('a stated clock time ties both start and end: either alone is seen in any plan', () => {
    const index = fc.nat({ max: marketMorning.plan.tasks.length - 1 });
    fc.assert(
      fc.property(index, someMinutes, fc.constantFrom('start' as const, 'end' as const), (at, by, which) => {
        const other = taskEdited(marketMorning.plan, at, (task) => {
          task[which] += by;
        });
        expect(codesSeen(marketMorning.scenario, other)).toContain('CLOCK_TIMES');
      }),
    );
  });

  it('hands-on work is exact: any other start or end is seen', () => {
    const worked = market.plan.tasks.flatMap(({ handsOn }, at) => handsOn.map((_, work) => ({ at, work })));
    fc.assert(
      fc.property(
        fc.constantFrom(...worked),
        someMinutes,
        fc.constantFrom('start' as const, 'end' as const),
        (one, by, which) => {
          const other = taskEdited(market.plan, one.at, (task) => {
            nth(task.handsOn, one.work)[which] += by;
          });
          expect(codesSeen(market.scenario, other)).toContain('HANDS_ON');
        },
      ),
    );
  });

  it('a step, taken out or written twice, is seen', () => {
    fc.assert(
      fc.property(anyTask, fc.boolean(), ({ scenario, plan, index }, isTakenOut) => {
        const tasks = plan.tasks.flatMap((task, at) => (at !== index ? task : isTakenOut ? [] : [task, task]));
        expect(codesSeen(scenario, { ...plan, tasks })).toContain('STEP_COMPLETE');
      }),
    );
  });

  it('a step written as any other step is seen, because its own is missing', () => {
    const other = fc.constantFrom('mix', 'fold', 'bulk', 'divide', 'shape', 'rest', 'retard', 'proof', 'bake', 'cool', 'finish');
    fc.assert(
      fc.property(anyTask, other, ({ scenario, plan, index }, step) => {
        fc.pre(nth(plan.tasks, index).step !== step);
        const written = taskEdited(plan, index, (task) => {
          task.step = step as typeof task.step;
        });
        expect(codesSeen(scenario, written)).toContain('STEP_COMPLETE');
      }),
    );
  });

  it('a position beyond the room of its place is seen, as position or as crowd', () => {
    const placed = GOOD.flatMap(({ scenario, plan }) =>
      plan.tasks.flatMap(({ place }, index) => (place === undefined ? [] : [{ scenario, plan, index }])),
    );
    fc.assert(
      fc.property(fc.constantFrom(...placed), fc.integer({ min: 5, max: 1000 }), ({ scenario, plan, index }, position) => {
        const other = taskEdited(plan, index, (task) => {
          if (task.place !== undefined) task.place.position = position;
        });
        expect(codesSeen(scenario, other)).toContain('PLACE_POSITION');
      }),
    );
  });

  it('a set point that starts from another temperature is seen', () => {
    const moves = marketMorning.bare.decks.flatMap(({ setPoints }, deck) => setPoints.map((_, move) => ({ deck, move })));
    const byC = fc.double({ min: 0.001, max: 300, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...moves), byC, fc.boolean(), (one, by, isUp) => {
        const other = edited(market.plan, (copy) => {
          nth(nth(copy.decks, one.deck).setPoints, one.move).fromC += isUp ? by : -by;
        });
        expect(codesSeen(market.scenario, other)).toContain('HEAT_RATE');
      }),
    );
  });

  it('a deck heated to a temperature its bake does not allow is seen', () => {
    const tooCold = fc.double({ min: 25, max: 229.99, noNaN: true });
    const tooHot = fc.double({ min: 240.01, max: 400, noNaN: true });
    fc.assert(
      fc.property(fc.oneof(tooCold, tooHot), (celsius) => {
        const other = edited(market.plan, (copy) => {
          nth(nth(copy.decks, 0).setPoints, 0).toC = celsius;
        });
        expect(codesSeen(market.scenario, other)).toContain('DECK_TEMPERATURE');
      }),
    );
  });

  it('a figure stated otherwise is seen, and nothing else is', () => {
    const names = [
      'cost',
      'lateTrayMinutes',
      'leftOutTrays',
      'finishMinute',
      'temperatureChanges',
      'firstHandsOnMinute',
    ] as const;
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.integer({ min: -500, max: 500 }), (name, by) => {
        fc.pre(by !== 0);
        const other = edited(marketMorning.plan, (copy) => {
          if (copy.score !== undefined) copy.score[name] = (copy.score[name] ?? 0) + by;
        });
        expect(codesSeen(marketMorning.scenario, other)).toEqual(['SCORE']);
      }),
    );
  });

  it('a tray that changes its batch in one task is in two', () => {
    const trayed = market.plan.tasks.flatMap(({ tray }, index) => (tray === undefined ? [] : [index]));
    fc.assert(
      fc.property(fc.constantFrom(...trayed), (index) => {
        const other = taskEdited(market.plan, index, (task) => {
          task.batch = task.batch === 'milk-1' ? 'country-1' : 'milk-1';
        });
        expect(codesSeen(market.scenario, other)).toContain('BATCH_MAKEUP');
      }),
    );
  });
});
