// DAY_WINDOW. Something outside the day. A move of a deck nothing bakes on has room to be moved.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import * as quietHouse from './plans/quietHouse.ts';
import { codesSeen, edited, moveOf, spoiled, task } from './spoil.ts';

describe('DAY_WINDOW', () => {
  it('lets a move end as the day ends, and no minute later', () => {
    const touching = edited(marketMorning.bare, (plan) => {
      plan.decks.push({ id: 'hatch/only', setPoints: [{ start: 350, end: 360, fromC: 235, toC: 240 }] });
    });
    expect(codesSeen(marketMorning.scenario, touching)).toEqual([]);
    const over = spoiled(touching, (plan) => {
      moveOf(plan, 'hatch/only').end = 361;
    });
    expect(codesSeen(marketMorning.scenario, over)).toEqual(['DAY_WINDOW']);
  });

  it('lets the last step end as the day ends, and no minute later', () => {
    const until = (time: string) =>
      spoiled(marketMorning.scenario, (scenario) => {
        scenario.day.until = time;
      });
    expect(codesSeen(until('06:01'), marketMorning.bare)).toEqual([]);
    expect(codesSeen(until('06:00'), marketMorning.bare)).toEqual(['DAY_WINDOW']);
  });

  it('sees a move that ends before it starts', () => {
    const other = edited(marketMorning.bare, (plan) => {
      plan.decks.push({ id: 'hatch/only', setPoints: [{ start: 300, end: 299, fromC: 235, toC: 235 }] });
    });
    const { breaches } = judge(marketMorning.scenario, other);
    expect(breaches.map(({ rule }) => rule)).toContain('DAY_WINDOW');
    expect(breaches[0]?.says).toBe('A move of deck hatch/only, 08:00 to 07:59, ends 1 minute before it starts.');
  });

  it('sees a step that starts before the day does', () => {
    const before = spoiled(quietHouse.plan, (plan) => {
      task(plan, 'roll-dough-1/mix').start = -1;
    });
    expect(codesSeen(quietHouse.scenario, before)).toEqual(['DAY_WINDOW', 'STEP_MINUTES']);
  });

  it('says by how much', () => {
    const { breaches } = judge(
      spoiled(marketMorning.scenario, (scenario) => {
        scenario.day.until = '05:59';
      }),
      marketMorning.bare,
    );
    expect(breaches[0]?.says).toBe('Task milk-bun-2/finish, 05:57 to 06:01, ends 2 minutes after the day does.');
  });
});
