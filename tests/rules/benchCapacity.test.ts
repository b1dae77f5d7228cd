// BENCH_CAPACITY. More on the bench than it has places.
import { describe, expect, it } from 'vitest';
import * as marketMorning from './plans/marketMorning.ts';
import * as quietHouse from './plans/quietHouse.ts';
import { codesSeen, edited, spoiled } from './spoil.ts';

describe('BENCH_CAPACITY', () => {
  it('lets the bench be exactly full, and no fuller', () => {
    const places = (count: number) =>
      edited(quietHouse.scenario, (scenario) => {
        scenario.equipment.bench = { places: count };
      });
    expect(codesSeen(places(2), quietHouse.plan)).toEqual([]);
    expect(codesSeen(places(1), quietHouse.plan)).toEqual(['BENCH_CAPACITY']);
  });

  it('lets one tray follow another in the same minute', () => {
    expect(codesSeen(marketMorning.scenario, marketMorning.bare)).toEqual([]);
    const one = spoiled(marketMorning.scenario, (scenario) => {
      if (scenario.equipment.bench !== undefined) scenario.equipment.bench.places = 1;
    });
    expect(codesSeen(one, marketMorning.bare)).toEqual([]);
  });
});
