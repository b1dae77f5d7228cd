// RACK_CAPACITY. More trays on the cooling rack than it holds.
import { describe, expect, it } from 'vitest';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, spoiled } from './spoil.ts';

describe('RACK_CAPACITY', () => {
  it('lets the rack be exactly full, and no fuller', () => {
    const other = spoiled(marketMorning.scenario, (scenario) => {
      if (scenario.equipment.coolingRack !== undefined) scenario.equipment.coolingRack.trays = 1;
    });
    expect(codesSeen(marketMorning.scenario, marketMorning.bare)).toEqual([]);
    expect(codesSeen(other, marketMorning.bare)).toEqual(['RACK_CAPACITY']);
  });
});
