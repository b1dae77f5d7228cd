// TRAY_COUNT. More or fewer trays than the orders need.
import { describe, expect, it } from 'vitest';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, nth, spoiled } from './spoil.ts';

describe('TRAY_COUNT', () => {
  it('sees a tray left out that is not stated', () => {
    const pieces = (count: number) =>
      edited(marketMorning.scenario, (scenario) => {
        nth(scenario.orders, 0).pieces = count;
      });
    const stating = { ...marketMorning.bare, leftOut: [] };
    expect(codesSeen(pieces(5), stating)).toEqual([]);
    expect(codesSeen(pieces(8), stating)).toEqual([]);
    expect(codesSeen(pieces(9), stating)).toEqual(['TRAY_COUNT']);
    expect(codesSeen(pieces(9), marketMorning.bare)).toEqual([]);
  });

  it('sees one tray left out stated as two', () => {
    const missing = (trays: number) => ({
      ...marketMorning.bare,
      leftOut: [{ product: 'field-loaf', trays, reasons: [] }],
    });
    const nine = spoiled(marketMorning.scenario, (scenario) => {
      nth(scenario.orders, 0).pieces = 9;
    });
    expect(codesSeen(nine, missing(1))).toEqual([]);
    expect(codesSeen(nine, missing(2))).toEqual(['TRAY_COUNT']);
    expect(codesSeen(marketMorning.scenario, missing(1))).toEqual(['TRAY_COUNT']);
  });

  it('sees a tray nobody ordered', () => {
    const four = spoiled(marketMorning.scenario, (scenario) => {
      nth(scenario.orders, 0).pieces = 4;
    });
    expect(codesSeen(four, marketMorning.bare)).toEqual(['TRAY_COUNT']);
  });
});
