// PLACE_KIND. A place of the wrong kind, one missing, one not needed.
import { describe, expect, it } from 'vitest';
import * as marketMorning from './plans/marketMorning.ts';
import * as quietHouse from './plans/quietHouse.ts';
import { codesSeen, edited, placeOf, spoiled, task } from './spoil.ts';

describe('PLACE_KIND', () => {
  it('sees a place of another kind', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      placeOf(plan, 'milk-bun-1/proof').kind = 'retarder';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['PLACE_KIND']);
  });

  it('sees the name of a place of another kind', () => {
    const other = spoiled(marketMorning.bare, (plan) => {
      placeOf(plan, 'milk-bun-1/proof').id = 'hatch/only';
    });
    expect(codesSeen(marketMorning.scenario, other)).toEqual(['PLACE_KIND']);
  });

  it('sees a place missing, and one that no step needs', () => {
    const without = edited(marketMorning.bare, (plan) => {
      delete task(plan, 'milk-bun-1/proof').place;
    });
    expect(codesSeen(marketMorning.scenario, without)).toEqual(['PLACE_KIND']);
    const needless = edited(marketMorning.bare, (plan) => {
      task(plan, 'milk-bun-1/rest').place = { kind: 'shelf', id: 'cool-box', position: 1 };
    });
    expect(codesSeen(marketMorning.scenario, needless)).toEqual(['PLACE_KIND']);
  });

  it('lets a place be stated that the scenario sets no limit', () => {
    const stated = edited(quietHouse.plan, (plan) => {
      task(plan, 'roll-1/cool').place = { kind: 'rack', id: 'cooling-rack', position: 3 };
    });
    expect(codesSeen(quietHouse.scenario, stated)).toEqual([]);
  });
});
