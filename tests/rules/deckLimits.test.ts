// DECK_LIMITS. A set point outside the limits of its deck.
import { describe, expect, it } from 'vitest';
import * as fourJobs from './plans/fourJobs.ts';
import * as marketMorning from './plans/marketMorning.ts';
import { codesSeen, edited, nth } from './spoil.ts';

describe('DECK_LIMITS', () => {
  it('lets a set point go to the limit and no further', () => {
    const setTo = (celsius: number) =>
      edited(marketMorning.bare, (plan) => {
        plan.decks.push({ id: 'hatch/only', setPoints: [{ start: 200, end: 210, fromC: 235, toC: celsius }] });
      });
    expect(codesSeen(marketMorning.scenario, setTo(250))).toEqual([]);
    expect(codesSeen(marketMorning.scenario, setTo(251))).toEqual(['DECK_LIMITS']);
  });

  it('lets a deck that starts cold hold there, and come inside with its first move', () => {
    const lowest = (celsius: number) =>
      edited(marketMorning.scenario, (scenario) => {
        nth(nth(scenario.equipment.ovens, 0).decks, 0).minC = celsius;
      });
    expect(codesSeen(lowest(235), marketMorning.bare)).toEqual([]);
    expect(codesSeen(lowest(236), marketMorning.bare)).toEqual(['DECK_LIMITS']);
    const unused = edited(marketMorning.scenario, (scenario) => {
      nth(nth(scenario.equipment.ovens, 1).decks, 0).startsAtC = 20;
    });
    expect(codesSeen(unused, marketMorning.bare)).toEqual([]);
  });

  it('lets a deck on its way inside go on at once, faster or slower, and not stop short', () => {
    const heated = (pause: number, next: number) =>
      edited(marketMorning.bare, (plan) => {
        plan.decks.push({
          id: 'hatch/only',
          setPoints: [
            { start: 200, end: 210, fromC: 20, toC: 50 },
            { start: 210 + pause, end: 240 + pause, fromC: 50, toC: next },
          ],
        });
      });
    const cold = edited(marketMorning.scenario, (scenario) => {
      const deck = nth(nth(scenario.equipment.ovens, 1).decks, 0);
      deck.startsAtC = 20;
      deck.minC = 100;
    });
    expect(codesSeen(cold, heated(0, 110))).toEqual([]);
    expect(codesSeen(cold, heated(1, 110))).toEqual(['DECK_LIMITS']);
    expect(codesSeen(cold, heated(0, 90))).toEqual(['DECK_LIMITS']);
  });

  it('sees a bake on a deck that is still outside', () => {
    const outside = edited(fourJobs.scenario, (scenario) => {
      nth(nth(scenario.equipment.ovens, 0).decks, 0).minC = 201;
    });
    expect(codesSeen(outside, fourJobs.plan)).toEqual(['DECK_LIMITS']);
  });
});
