// SHELF_CAPACITY. More trays in a proofer than its shelves hold.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import * as quietHouse from './plans/quietHouse.ts';
import { codesSeen, edited, nth, placeOf, spoiled, task } from './spoil.ts';

describe('SHELF_CAPACITY', () => {
  it('sees a third tray on two shelves', () => {
    const other = spoiled(quietHouse.plan, (plan) => {
      placeOf(plan, 'flatbread-1/proof').id = 'tall';
    });
    expect(codesSeen(quietHouse.scenario, other)).toEqual(['SHELF_CAPACITY']);
    expect(judge(quietHouse.scenario, other).breaches[0]?.minute).toBe(25);
  });

  it('counts a tray that waits: it keeps its shelf until its bake', () => {
    const shelves = (scenario: typeof quietHouse.scenario, count: number) =>
      edited(scenario, (copy) => {
        nth(copy.equipment.proofers, 0).shelves = count;
      });
    expect(codesSeen(shelves(quietHouse.scenario, 2), quietHouse.plan)).toEqual([]);
    const { breaches } = judge(shelves(quietHouse.scenario, 1), quietHouse.plan);
    expect(breaches.map(({ rule }) => rule)).toEqual(['SHELF_CAPACITY']);
    const late = edited(quietHouse.plan, (plan) => {
      Object.assign(placeOf(plan, 'roll-2/proof'), { id: 'short', position: 1 });
      Object.assign(task(plan, 'flatbread-1/proof'), { start: 50 });
    });
    // The second roll tray is done proofing at 50 and is baked from 56: until then the short proofer is full.
    expect(judge(quietHouse.scenario, late).breaches.find(({ rule }) => rule === 'SHELF_CAPACITY')?.says).toContain(
      'between 06:50 and 06:56',
    );
  });
});
