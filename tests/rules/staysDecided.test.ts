// STAYS_DECIDED. A step whose time, place or people are decided, and that is otherwise in the plan.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import type { UnderwayTask } from '../../src/model/underway.ts';
import { dayUnderway, recordOf, type ScenarioUnderway } from './plans/dayUnderway.ts';
import * as marketMorning from './plans/marketMorning.ts';
import * as rackMorning from './plans/rackMorning.ts';
import { codesSeen, edited, nth, placeOf, spoiled, workOf } from './spoil.ts';

function keeping(scenario: ScenarioUnderway, id: string, keeps: UnderwayTask['keeps']): ScenarioUnderway {
  return edited(scenario, (copy) => {
    recordOf(copy, id).keeps = keeps;
  });
}

const at100 = dayUnderway(marketMorning.scenario, marketMorning.bare, 100);

describe('STAYS_DECIDED', () => {
  it('sees another time', () => {
    const decided = keeping(at100, 'milk-bun-1/finish', ['time']);
    expect(codesSeen(decided, marketMorning.bare)).toEqual([]);
    const sooner = spoiled(decided, (scenario) => {
      recordOf(scenario, 'milk-bun-1/finish').start = 172;
    });
    expect(codesSeen(sooner, marketMorning.bare)).toEqual(['STAYS_DECIDED']);
    expect(judge(sooner, marketMorning.bare).breaches[0]?.says).toBe(
      'milk-bun-1/finish stays at 05:52; the plan has it at 05:53.',
    );
  });

  it('sees another place, and lets the position be', () => {
    const decided = keeping(at100, 'milk-bun-1/proof', ['place']);
    const shifted = edited(marketMorning.bare, (plan) => {
      placeOf(plan, 'milk-bun-1/proof').position = 2;
      placeOf(plan, 'milk-bun-2/proof').position = 1;
    });
    expect(codesSeen(decided, shifted)).toEqual([]);
    const moved = spoiled(marketMorning.bare, (plan) => {
      placeOf(plan, 'milk-bun-1/proof').id = 'cool-box';
    });
    expect(codesSeen(at100, moved)).toEqual([]);
    expect(codesSeen(decided, moved)).toEqual(['STAYS_DECIDED']);
    expect(judge(decided, moved).breaches[0]?.says).toBe('milk-bun-1/proof stays in warm-box; the plan has it in cool-box.');
  });

  it('sees other people', () => {
    const decided = keeping(at100, 'milk-bun-2/finish', ['people']);
    const other = spoiled(marketMorning.bare, (plan) => {
      workOf(plan, 'milk-bun-2/finish').person = 'bem';
    });
    expect(codesSeen(at100, other)).toEqual([]);
    expect(codesSeen(decided, other)).toEqual(['STAYS_DECIDED']);
    expect(judge(decided, other).breaches[0]?.says).toBe(
      'milk-bun-2/finish stays with ana (finish); the plan has other people at it.',
    );
  });

  it('looks for the people of a load on the tray that carries its work', () => {
    const at20 = dayUnderway(rackMorning.scenario, rackMorning.plan, 20);
    const byOther = edited(rackMorning.plan, (plan) => {
      for (const index of [0, 1]) workOf(plan, 'plain-roll-1/bake', index).person = 'ole';
      for (const index of [0, 1]) workOf(plan, 'seeded-roll-2/bake', index).person = 'ida';
    });
    expect(codesSeen(keeping(at20, 'plain-roll-2/bake', ['people']), byOther)).toEqual([]);
    expect(codesSeen(keeping(at20, 'plain-roll-1/bake', ['people']), byOther)).toEqual(['STAYS_DECIDED']);
    const carriedByNext = edited(rackMorning.plan, (plan) => {
      const works = [nth(plan.tasks, 2), nth(plan.tasks, 4)].map((one) => one.handsOn.splice(0));
      nth(plan.tasks, 4).handsOn.push(...(works[0] ?? []));
      placeOf(plan, 'plain-roll-1/bake').position = 2;
      placeOf(plan, 'plain-roll-2/bake').position = 1;
    });
    expect(codesSeen(keeping(at20, 'plain-roll-1/bake', ['people']), carriedByNext)).toEqual([]);
  });

  it('says nothing of a tray that is left out, nor of what has begun', () => {
    const decided = keeping(at100, 'milk-bun-2/finish', ['time', 'place', 'people']);
    const tasks = marketMorning.bare.tasks.filter(({ tray }) => tray !== 'milk-bun-2');
    expect(codesSeen(decided, { ...marketMorning.bare, tasks })).toEqual([]);
    const begun = keeping(at100, 'field-loaf-1/bake', ['people']);
    const other = spoiled(marketMorning.bare, (plan) => {
      workOf(plan, 'field-loaf-1/bake', 1).person = 'ana';
    });
    expect(codesSeen(begun, other)).toEqual(['PERSON_HOURS']);
  });
});
