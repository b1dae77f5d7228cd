// NOT_BEFORE_NOW. Something that has not begun, planned in the past. The buns are shaped from 95 and from 100 on.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import { dayUnderway } from './plans/dayUnderway.ts';
import * as marketMorning from './plans/marketMorning.ts';
import * as rackMorning from './plans/rackMorning.ts';
import { codesSeen, edited, spoiled, workOf } from './spoil.ts';

const cutAt = (minute: number) => dayUnderway(marketMorning.scenario, marketMorning.bare, minute);

describe('NOT_BEFORE_NOW', () => {
  it('lets a step begin now, and no minute sooner', () => {
    expect(codesSeen(cutAt(95), marketMorning.bare)).toEqual([]);
    const later = spoiled(cutAt(95), (scenario) => {
      scenario.underway.now = 96;
    });
    expect(codesSeen(later, marketMorning.bare)).toEqual(['NOT_BEFORE_NOW']);
    expect(judge(later, marketMorning.bare).breaches).toEqual([
      {
        rule: 'NOT_BEFORE_NOW',
        says: 'milk-bun-1/shape has not begun, and begins at 04:35, 1 minute before now.',
        doThis: 'Begin it now or later.',
        taskIds: ['milk-bun-1/shape'],
        minute: 95,
      },
    ]);
  });

  it('counts a bake from its loading', () => {
    const later = spoiled(cutAt(149), (scenario) => {
      scenario.underway.now = 150;
    });
    expect(codesSeen(later, marketMorning.bare)).toEqual(['NOT_BEFORE_NOW']);
    expect(judge(later, marketMorning.bare).breaches.map(({ minute }) => minute)).toEqual([149]);
  });

  it('counts the loading of a whole load, the longest of its trays', () => {
    const later = spoiled(dayUnderway(rackMorning.scenario, rackMorning.plan, 37), (scenario) => {
      scenario.underway.now = 38;
    });
    expect(codesSeen(later, rackMorning.plan)).toEqual(['NOT_BEFORE_NOW']);
    expect(judge(later, rackMorning.plan).breaches).toHaveLength(3);
  });

  it('sees work that begins sooner than its step', () => {
    const early = spoiled(marketMorning.bare, (plan) => {
      workOf(plan, 'milk-bun-1/shape').start = 94;
    });
    const found = judge(cutAt(95), early).breaches.filter(({ rule }) => rule === 'NOT_BEFORE_NOW');
    expect(found.map(({ says }) => says)).toEqual([
      'milk-bun-1/shape has not begun, and ana is at it (shape) from 04:34, 1 minute before now.',
    ]);
  });

  it('holds for trays that nobody knew of before', () => {
    const unknown = edited(cutAt(96), (scenario) => {
      scenario.underway.tasks = scenario.underway.tasks.filter(({ batch }) => batch !== 'milk-1');
      scenario.underway.batches = scenario.underway.batches.filter(({ id }) => id !== 'milk-1');
    });
    const found = judge(unknown, marketMorning.bare).breaches;
    expect(found.map(({ rule, minute }) => [rule, minute])).toEqual([
      ['NOT_BEFORE_NOW', 67],
      ['NOT_BEFORE_NOW', 75],
      ['NOT_BEFORE_NOW', 95],
    ]);
  });
});
