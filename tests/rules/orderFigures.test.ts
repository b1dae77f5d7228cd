// ORDER_FIGURES. Orders stated otherwise than they are served.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, nth, spoiled } from './spoil.ts';

describe('ORDER_FIGURES', () => {
  it('sees late minutes that are not so', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      nth(plan.orders, 2).lateMinutes = 6;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['ORDER_FIGURES']);
    expect(judge(marketMorning.scenario, other).breaches[0]?.says).toBe(
      'The order of 15 milk-bun by 2026-05-16T05:50:00+01:00 is stated as ready at 2026-05-16T05:57:00+01:00, 6 minutes late; ' +
        'it is ready at 2026-05-16T05:57:00+01:00, 7 minutes late.',
    );
  });

  it('sees a ready time that is not so', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      nth(plan.orders, 0).readyAt = null;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['ORDER_FIGURES']);
  });

  it('sees an order that is not there, one missing, and takes any order of the list', () => {
    const other = spoiled(marketMorning.plan, (plan) => {
      nth(plan.orders, 0).pieces = 7;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['ORDER_FIGURES']);
    expect(judge(marketMorning.scenario, other).breaches).toHaveLength(2);
    const missing = edited(marketMorning.plan, (plan) => {
      plan.orders?.pop();
    });
    expect(codesSeen(marketMorning.scenario, missing)).toEqual(['ORDER_FIGURES']);
    const turned = edited(marketMorning.plan, (plan) => {
      plan.orders?.reverse();
    });
    expect(codesSeen(marketMorning.scenario, turned)).toEqual([]);
  });

  it('wants two orders of the same stated twice', () => {
    const twins = edited(marketMorning.scenario, (scenario) => {
      scenario.orders = [0, 1].map(() => ({ product: 'field-loaf', pieces: 4, readyBy: '05:29' }));
    });
    const loaves = (orders: number) => ({
      tasks: marketMorning.bare.tasks.filter(({ batch }) => batch === 'country-1'),
      decks: marketMorning.bare.decks,
      orders: judge(twins, marketMorning.bare)
        .figures.orders.slice(0, 1)
        .flatMap((order) => Array(orders).fill(order)),
    });
    // The first of the two is ready at 05:23, the second at 05:29.
    expect(codesSeen(twins, loaves(2))).toEqual(['ORDER_FIGURES']);
    const both = { ...loaves(0), orders: [...judge(twins, loaves(0)).figures.orders] };
    expect(codesSeen(twins, both)).toEqual([]);
  });
});
