// What counts as a temperature change.
import { describe, expect, it } from 'vitest';
import { temperatureChanges } from '../../src/check/temperatureChanges.ts';

const heatUp = { start: 0, end: 40, fromC: 20, toC: 220 };
const coolDown = { start: 100, end: 120, fromC: 220, toC: 180 };
const nowhere = { start: 60, end: 70, fromC: 220, toC: 220 };

describe('temperatureChanges', () => {
  it('counts none without a move', () => {
    expect(temperatureChanges([], undefined)).toBe(0);
    expect(temperatureChanges([], 10)).toBe(0);
    expect(temperatureChanges([nowhere], 10)).toBe(0);
  });

  it('does not count the first heat-up', () => {
    expect(temperatureChanges([heatUp], 40)).toBe(0);
    expect(temperatureChanges([heatUp, coolDown], 40)).toBe(1);
    expect(temperatureChanges([heatUp, nowhere, coolDown], 40)).toBe(1);
  });

  it('counts every move of a deck that bakes before one has ended', () => {
    expect(temperatureChanges([coolDown], 119)).toBe(1);
    expect(temperatureChanges([coolDown], 120)).toBe(0);
    expect(temperatureChanges([heatUp, coolDown], 39)).toBe(2);
  });

  it('takes a deck nothing bakes on as heated up once', () => {
    expect(temperatureChanges([heatUp, coolDown], undefined)).toBe(1);
  });
});
