// PLACE_POSITION. Two things in one position, or a position that is not there.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as coldNight from './plans/coldNight.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, placeOf, spoiled, task } from './spoil.ts';

describe('PLACE_POSITION', () => {
  it('sees two trays in one position', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      placeOf(plan, 'field-loaf-2/proof').position = 1;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['PLACE_POSITION']);
    expect(judge(marketMorning.scenario, other).breaches[0]?.says).toBe(
      'Between 03:57 and 04:31 tray field-loaf-1 and tray field-loaf-2 are both in position 1 of warm-box.',
    );
  });

  it('sees a position the place does not have', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      placeOf(plan, 'field-loaf-2/proof').position = 3;
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['PLACE_POSITION']);
  });

  it('counts a tray that waits as still there', () => {
    const longer = edited(coldNight.plan, (plan) => {
      // The batch leaves position 1 at 75, when its first tray is shaped, not at 70, when it is done.
      Object.assign(placeOf(plan, 'night-loaf-1/retard'), { position: 1 });
      Object.assign(placeOf(plan, 'night-loaf-2/retard'), { position: 2 });
    });
    expect(codesSeen(coldNight.scenario, longer)).toEqual([]);
    const clash = edited(longer, (plan) => {
      task(plan, 'night-loaf-1/retard').start = 74;
    });
    expect(codesSeen(coldNight.scenario, clash)).toContain('PLACE_POSITION');
  });

  it('leaves a crowded proofer to its own rule, but only while it is crowded', () => {
    const other = edited(marketMorning.bare, (plan) => {
      placeOf(plan, 'field-loaf-2/proof').position = 1;
      placeOf(plan, 'milk-bun-1/proof').id = 'cool-box';
      placeOf(plan, 'milk-bun-2/proof').id = 'cool-box';
    });
    // The loaves share a position from 57 to 97 where there is room for two; the buns are two in a box for one from 115 on.
    const { breaches } = judge(marketMorning.scenario, other);
    expect(breaches.map(({ rule, minute }) => [rule, minute])).toEqual([
      ['SHELF_CAPACITY', 115],
      ['PLACE_POSITION', 57],
    ]);
    const sameBox = edited(marketMorning.bare, (plan) => {
      placeOf(plan, 'field-loaf-2/proof').position = 1;
    });
    const crowdedLater = edited(sameBox, (plan) => {
      plan.tasks.push({
        step: 'proof',
        product: 'milk-bun',
        batch: 'milk-1',
        tray: 'milk-bun-3',
        start: 115,
        end: 149,
        place: { kind: 'shelf', id: 'warm-box', position: 1 },
        handsOn: [],
      });
    });
    const shared = judge(marketMorning.scenario, crowdedLater).breaches.filter(({ rule }) => rule === 'PLACE_POSITION');
    expect(shared.map(({ minute }) => minute)).toEqual([57]);
  });
});
