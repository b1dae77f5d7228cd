// RETARDER_CAPACITY. More trays and batches in a retarder than it holds.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as coldNight from './plans/coldNight.ts';
import { codesSeen, edited, nth, placeOf, spoiled, task } from './spoil.ts';

describe('RETARDER_CAPACITY', () => {
  it('lets a retarder be exactly full, and no fuller', () => {
    const other = spoiled(coldNight.scenario, (scenario) => {
      nth(scenario.equipment.retarders, 0).traysPerShelf = 1;
    });
    expect(codesSeen(coldNight.scenario, coldNight.plan)).toEqual([]);
    expect(codesSeen(other, coldNight.plan)).toEqual(['RETARDER_CAPACITY']);
  });

  it('counts a batch in bulk, until its first tray begins', () => {
    const tight = edited(coldNight.plan, (plan) => {
      placeOf(plan, 'slow-1/bulk').id = 'chest';
      Object.assign(placeOf(plan, 'night-loaf-1/retard'), { id: 'chest', position: 1 });
    });
    // The batch is done at 70 and leaves the chest when the first tray is shaped at 75; that tray comes back at 85.
    expect(codesSeen(coldNight.scenario, tight)).toEqual([]);
    const sooner = edited(tight, (plan) => {
      task(plan, 'night-loaf-1/retard').start = 74;
    });
    const crowded = judge(coldNight.scenario, sooner).breaches.filter(({ rule }) => rule === 'RETARDER_CAPACITY');
    expect(crowded.map(({ minute }) => minute)).toEqual([74]);
  });
});
