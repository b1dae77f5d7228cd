// KNOWN_NAMES. Names the scenario does not have.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, placeOf, spoiled, task, workOf } from './spoil.ts';

describe('KNOWN_NAMES', () => {
  it('sees a person nobody knows', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      workOf(plan, 'milk-bun-1/shape').person = 'eva';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['KNOWN_NAMES']);
  });

  it('sees a place nobody knows', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      placeOf(plan, 'milk-bun-1/proof').id = 'warm-bx';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['KNOWN_NAMES']);
  });

  it('sees two tasks with one id', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      task(plan, 'milk-bun-1/shape').id = 'milk-bun-2/shape';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['KNOWN_NAMES']);
  });

  it('sees a listed deck nobody knows, and one listed twice', () => {
    const with2 = (id: string) =>
      edited(marketMorning.plan, (plan) => {
        plan.decks.push({ id, setPoints: [] });
      });
    expect(codesSeen(marketMorning.scenario, with2('hatch/only'))).toEqual([]);
    expect(codesSeen(marketMorning.scenario, with2('hatch/other'))).toEqual(['KNOWN_NAMES']);
    const twice = edited(with2('hatch/only'), (plan) => {
      plan.decks.push({ id: 'hatch/only', setPoints: [] });
    });
    expect(codesSeen(marketMorning.scenario, twice)).toEqual(['KNOWN_NAMES']);
  });

  it('sees a tray of an unknown product, which is then no tray of the orders', () => {
    const other = edited(marketMorning.bare, (plan) => {
      for (const one of plan.tasks) if (one.tray === 'milk-bun-2') one.product = 'milk-bum';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['KNOWN_NAMES']);
    expect(judge(marketMorning.scenario, other).figures.leftOutTrays).toBe(1);
  });

  it('sees a tray of which nothing says the product', () => {
    const other = edited(marketMorning.bare, (plan) => {
      for (const one of plan.tasks) if (one.tray === 'milk-bun-2') delete one.product;
    });
    expect(judge(marketMorning.scenario, other).breaches.map(({ rule, says }) => [rule, says])).toEqual([
      ['KNOWN_NAMES', 'Nothing says which product tray milk-bun-2 is.'],
    ]);
  });

  it('does not say of a tray of an unknown product that nothing says its product', () => {
    const other = edited(marketMorning.bare, (plan) => {
      for (const one of plan.tasks) if (one.tray === 'milk-bun-2') one.product = 'milk-bum';
    });
    const says = judge(marketMorning.scenario, other).breaches.map((breach) => breach.says);
    expect(says.filter((sentence) => sentence.startsWith('Nothing says'))).toEqual([]);
  });
});
