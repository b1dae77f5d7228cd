// SHELF_TEMPERATURE. A proofer too warm or too cold for a tray.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as quietHouse from './plans/quietHouse.ts';
import { codesSeen, edited, nth, placeOf, spoiled } from './spoil.ts';

describe('SHELF_TEMPERATURE', () => {
  it('sees a proofer that is too warm', () => {
    const other = spoiled(quietHouse.plan, (plan) => {
      placeOf(plan, 'flatbread-1/proof').id = 'spare';
    });
    expect(codesSeen(quietHouse.scenario, other)).toEqual(['SHELF_TEMPERATURE']);
    expect(judge(quietHouse.scenario, other).breaches[0]?.says).toBe(
      'flatbread-1/proof from 06:18 stands in spare at 40 C, 8 C too warm: it allows 28 C to 32 C.',
    );
  });

  it('takes both ends of the range and nothing beyond', () => {
    const keptAt = (celsius: number) =>
      edited(quietHouse.scenario, (scenario) => {
        nth(scenario.equipment.proofers, 1).temperatureC = celsius;
      });
    for (const celsius of [28, 32]) expect(codesSeen(keptAt(celsius), quietHouse.plan)).toEqual([]);
    for (const celsius of [27.9, 32.1]) expect(codesSeen(keptAt(celsius), quietHouse.plan)).toEqual(['SHELF_TEMPERATURE']);
  });
});
