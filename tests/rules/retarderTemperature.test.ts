// RETARDER_TEMPERATURE. A retarder too warm or too cold.
import { describe, expect, it } from 'vitest';
import * as coldNight from './plans/coldNight.ts';
import { codesSeen, edited, nth, placeOf, spoiled } from './spoil.ts';

describe('RETARDER_TEMPERATURE', () => {
  it('sees a batch in a retarder that is too warm', () => {
    const other = spoiled(coldNight.plan, (plan) => {
      placeOf(plan, 'slow-1/bulk').id = 'cellar';
    });
    expect(codesSeen(coldNight.scenario, other)).toEqual(['RETARDER_TEMPERATURE']);
  });

  it('takes both ends of the range and nothing beyond', () => {
    const keptAt = (celsius: number) =>
      edited(coldNight.scenario, (scenario) => {
        nth(scenario.equipment.retarders, 0).temperatureC = celsius;
      });
    // The bulk allows 3 to 6, the trays 2 to 6.
    for (const celsius of [3, 6]) expect(codesSeen(keptAt(celsius), coldNight.plan)).toEqual([]);
    for (const celsius of [2.5, 6.5]) expect(codesSeen(keptAt(celsius), coldNight.plan)).toEqual(['RETARDER_TEMPERATURE']);
  });

  it('sees a tray in a retarder that is too warm', () => {
    const other = edited(coldNight.plan, (plan) => {
      placeOf(plan, 'night-loaf-2/retard').id = 'cellar';
    });
    expect(codesSeen(coldNight.scenario, other)).toEqual(['RETARDER_TEMPERATURE']);
  });
});
