// What counts as a temperature change.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import { temperatureChanges } from '../../src/check/temperatureChanges.ts';
import * as fourJobs from '../rules/plans/fourJobs.ts';
import { edited } from '../rules/spoil.ts';

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

  it('is counted from the first bake on the deck, whichever task is listed first', () => {
    // The deck starts at 200; one more move at the end of the day is a change, because bakes came before it.
    const decks = [{ id: 'oven/deck', setPoints: [{ start: 201, end: 211, fromC: 200, toC: 190 }] }];
    const late = edited(fourJobs.plan, (plan) => {
      plan.tasks.reverse();
    });
    for (const { tasks } of [fourJobs.plan, late]) {
      expect(judge(fourJobs.scenario, { tasks, decks }).figures.temperatureChanges).toBe(1);
    }
    const between = [{ id: 'oven/deck', setPoints: [{ start: 96, end: 106, fromC: 200, toC: 190 }] }];
    expect(judge(fourJobs.scenario, { ...fourJobs.plan, decks: between }).figures.temperatureChanges).toBe(1);
  });
});
