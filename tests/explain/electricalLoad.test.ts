import { describe, expect, it } from 'vitest';
import { electricalLoad } from '../../src/explain/cautions/electricalLoad.ts';
import { at, dayWith, trayTask } from './cautionDay.ts';

const ovens = [{ id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute: 2, powerKw: 40, decks: [{ id: 'deck', trays: 4 }] }];
const mixers = [{ id: 'spiral', bowlKg: 20, powerKw: 10 }];
const day = dayWith({ equipment: { ovens, mixers } });
const onDeck = { place: { kind: 'deck' as const, id: 'oven/deck', position: 1 } };
const inBowl = { place: { kind: 'bowl' as const, id: 'spiral', position: 1 } };

describe('electricalLoad', () => {
  it('counts 40 running long and 10 running short as 60', () => {
    // NEC 210.20(A): 125 % of continuous load plus the rest; continuous is three hours or more. 40 and 10 give 60.
    const tasks = [trayTask('mix', at('02:00'), at('02:10'), inBowl), trayTask('bake', at('02:44'), at('03:00'), onDeck)];
    expect(electricalLoad(day, tasks)[0]?.says).toBe(
      'Stated loads reach 50 kW at 02:00, 60 kW with long-running ones at 125 %. Ask a licensed electrician.',
    );
  });

  it('takes an oven off before three hours as not continuous', () => {
    const tasks = [trayTask('mix', at('02:00'), at('02:10'), inBowl), trayTask('bake', at('02:43'), at('02:59'), onDeck)];
    expect(electricalLoad(day, tasks)[0]?.says).toMatch(/reach 50 kW at 02:00, 50 kW/);
  });

  it('adds only what runs at the same moment', () => {
    const tasks = [trayTask('bake', at('01:00'), at('01:16'), onDeck), trayTask('mix', at('02:00'), at('02:10'), inBowl)];
    expect(electricalLoad(day, tasks)[0]?.says).toMatch(/reach 40 kW at 00:00/);
  });

  it('says nothing of machines that are not used or state no load', () => {
    expect(electricalLoad(day, [])).toEqual([]);
    expect(electricalLoad(dayWith({}), [trayTask('bake', 60, 76, onDeck)])).toEqual([]);
  });
});
