// DECK_CAPACITY. More trays on a deck than it holds.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as fourJobs from './plans/fourJobs.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, placeOf, spoiled, task } from './spoil.ts';

describe('DECK_CAPACITY', () => {
  it('sees two trays on a deck for one', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      placeOf(plan, 'field-loaf-2/bake').id = 'hearth/upper';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['DECK_CAPACITY']);
    expect(judge(marketMorning.scenario, other).breaches[0]).toMatchObject({
      says:
        'hearth/upper holds 2 trays at once between 04:38 and 05:02, 1 more than its room of 1: ' +
        'tray field-loaf-1, tray field-loaf-2.',
      minute: 98,
    });
  });

  it('lets a tray go in the minute another comes out', () => {
    const touching = edited(fourJobs.plan, (plan) => {
      Object.assign(task(plan, 'b-1/bake'), { start: 95, end: 115 });
    });
    expect(codesSeen(fourJobs.scenario, touching)).not.toContain('DECK_CAPACITY');
    const over = spoiled(touching, (plan) => {
      task(plan, 'b-1/bake').start = 94;
    });
    expect(codesSeen(fourJobs.scenario, over)).toContain('DECK_CAPACITY');
  });
});
