// What has happened is no breach: the same mistake, seen to the last minute it goes on, and not a minute longer.
import { describe, expect, it } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import type { RuleCode } from '../../src/model/rules.ts';
import type { Scenario } from '../../src/model/scenario.ts';
import type { WrittenPlan } from '../../src/model/writtenPlan.ts';
import * as coldNight from '../rules/plans/coldNight.ts';
import { dayUnderway, recordOf } from '../rules/plans/dayUnderway.ts';
import * as marketMorning from '../rules/plans/marketMorning.ts';
import * as quietHouse from '../rules/plans/quietHouse.ts';
import * as rackMorning from '../rules/plans/rackMorning.ts';
import { codesSeen, edited, moveOf, nth, placeOf, task, workOf } from '../rules/spoil.ts';

type Good = { readonly scenario: Scenario; readonly plan: WrittenPlan };
type Case = {
  readonly code: RuleCode;
  readonly what: string;
  readonly good: Good;
  readonly spoil: { readonly scenario?: (copy: Scenario) => void; readonly plan?: (copy: WrittenPlan) => void };
  /** From this minute on it is history; at the minute before it is not. */
  readonly over: number;
};

const market: Good = { scenario: marketMorning.scenario, plan: marketMorning.bare };

function bakesRange(scenario: Scenario): void {
  for (const { steps } of scenario.products) for (const step of steps) if (step.do === 'bake') step.minutes = [17, 18];
}

const CASES: readonly Case[] = [
  {
    code: 'STEP_MINUTES',
    what: 'a tray that cooled a minute too long, until it is off the rack',
    good: market,
    spoil: { plan: (plan) => Object.assign(task(plan, 'field-loaf-2/cool'), { end: 150 }) },
    over: 150,
  },
  {
    code: 'STEP_ORDER',
    what: 'a bulk that begins too soon, until it has begun',
    good: market,
    spoil: { plan: (plan) => Object.assign(task(plan, 'country-1/bulk'), { start: 9 }) },
    over: 10,
  },
  {
    code: 'SHAPE_WITHIN',
    what: 'a tray that begins too late, until it has begun',
    good: market,
    spoil: { scenario: (scenario) => Object.assign(nth(scenario.doughs, 0), { shapeWithin: 5 }) },
    over: 52,
  },
  {
    code: 'BOWL_CAPACITY',
    what: 'two batches in a bowl, until the first is out',
    good: quietHouse,
    spoil: { plan: (plan) => Object.assign(placeOf(plan, 'flat-dough-1/mix'), { id: 'one' }) },
    over: 10,
  },
  {
    code: 'BENCH_CAPACITY',
    what: 'two trays on one bench place',
    good: quietHouse,
    spoil: { scenario: (scenario) => Object.assign(scenario.equipment, { bench: { places: 1 } }) },
    over: 25,
  },
  {
    code: 'SHELF_CAPACITY',
    what: 'three trays on two shelves, until one is loaded',
    good: quietHouse,
    spoil: { plan: (plan) => Object.assign(placeOf(plan, 'flatbread-1/proof'), { id: 'tall' }) },
    over: 50,
  },
  {
    code: 'RETARDER_CAPACITY',
    what: 'two trays in a retarder for one, until one is loaded',
    good: coldNight,
    spoil: { scenario: (scenario) => Object.assign(nth(scenario.equipment.retarders, 0), { traysPerShelf: 1 }) },
    over: 570,
  },
  {
    code: 'DECK_CAPACITY',
    what: 'two trays on a deck for one, until one is out',
    good: market,
    spoil: { plan: (plan) => Object.assign(placeOf(plan, 'field-loaf-2/bake'), { id: 'hearth/upper' }) },
    over: 122,
  },
  {
    code: 'RACK_CAPACITY',
    what: 'two trays on a rack for one, until the second is finished',
    good: market,
    spoil: { scenario: (scenario) => Object.assign(scenario.equipment, { coolingRack: { trays: 1 } }) },
    over: 173,
  },
  {
    code: 'PLACE_POSITION',
    what: 'two trays in one position, until one is loaded',
    good: market,
    spoil: { plan: (plan) => Object.assign(placeOf(plan, 'field-loaf-2/proof'), { position: 1 }) },
    over: 91,
  },
  {
    code: 'PLACE_POSITION',
    what: 'a tray in a position that is not there',
    good: market,
    spoil: { plan: (plan) => Object.assign(placeOf(plan, 'field-loaf-2/proof'), { position: 3 }) },
    over: 97,
  },
  {
    code: 'PLACE_KIND',
    what: 'a tray in a place of another kind, until it is out',
    good: market,
    spoil: { plan: (plan) => Object.assign(placeOf(plan, 'milk-bun-1/proof'), { kind: 'retarder' }) },
    over: 149,
  },
  {
    code: 'BOWL_SIZE',
    what: 'a batch in a bowl too small',
    good: market,
    spoil: { plan: (plan) => Object.assign(placeOf(plan, 'country-1/mix'), { id: 'small' }) },
    over: 10,
  },
  {
    code: 'SHELF_TEMPERATURE',
    what: 'a tray in a proofer too warm',
    good: quietHouse,
    spoil: { plan: (plan) => Object.assign(placeOf(plan, 'flatbread-1/proof'), { id: 'spare' }) },
    over: 56,
  },
  {
    code: 'RETARDER_TEMPERATURE',
    what: 'a dough in a retarder too warm',
    good: coldNight,
    spoil: { plan: (plan) => Object.assign(placeOf(plan, 'slow-1/bulk'), { id: 'cellar' }) },
    over: 70,
  },
  {
    code: 'STEAM',
    what: 'a loaf on a deck without steam',
    good: market,
    spoil: { plan: (plan) => Object.assign(placeOf(plan, 'field-loaf-2/bake'), { id: 'hatch/only' }) },
    over: 128,
  },
  {
    code: 'DECK_TEMPERATURE',
    what: 'a deck too cold at the last minute of a bake',
    good: market,
    spoil: { plan: (plan) => Object.assign(moveOf(plan, 'hearth/lower', 1), { start: 125 }) },
    over: 128,
  },
  {
    code: 'DECK_LIMITS',
    what: 'a set point above the limits, until it is there',
    good: market,
    spoil: {
      plan: (plan) => plan.decks.push({ id: 'hatch/only', setPoints: [{ start: 200, end: 210, fromC: 235, toC: 251 }] }),
    },
    over: 210,
  },
  {
    code: 'DECK_LIMITS',
    what: 'a bake on a deck outside its limits, until it is out',
    good: market,
    spoil: { scenario: (scenario) => Object.assign(nth(nth(scenario.equipment.ovens, 0).decks, 0), { minC: 236 }) },
    over: 122,
  },
  {
    code: 'HEAT_RATE',
    what: 'a move faster than the oven, until it is there',
    good: market,
    spoil: { plan: (plan) => Object.assign(moveOf(plan, 'hearth/upper'), { end: 87 }) },
    over: 87,
  },
  {
    code: 'HEAT_RATE',
    what: 'a move that started from another temperature, until it is there',
    good: market,
    spoil: { plan: (plan) => Object.assign(moveOf(plan, 'hearth/upper'), { fromC: 21 }) },
    over: 88,
  },
  {
    code: 'LOAD_TOGETHER',
    what: 'a tray taken out before its load, until it is out',
    good: rackMorning,
    spoil: { scenario: bakesRange, plan: (plan) => Object.assign(task(plan, 'plain-roll-2/bake'), { end: 57 }) },
    over: 57,
  },
  {
    code: 'HANDS_ON',
    what: 'a mix left too soon',
    good: market,
    spoil: { plan: (plan) => Object.assign(workOf(plan, 'country-1/mix'), { end: 3 }) },
    over: 4,
  },
  {
    code: 'PERSON_BUSY',
    what: 'a person at two things, until one is done',
    good: market,
    spoil: { plan: (plan) => Object.assign(workOf(plan, 'field-loaf-2/bake'), { person: 'ana' }) },
    over: 98,
  },
  {
    code: 'PERSON_HOURS',
    what: 'work in a break, until it is done',
    good: market,
    spoil: { plan: (plan) => Object.assign(workOf(plan, 'field-loaf-1/bake', 1), { person: 'ana' }) },
    over: 123,
  },
  {
    code: 'PERSON_HOURS',
    what: 'work before the hours, until they begin',
    good: market,
    spoil: { scenario: (scenario) => Object.assign(nth(scenario.people, 1), { from: '04:32' }) },
    over: 92,
  },
  {
    code: 'PERSON_CANNOT',
    what: 'work a person cannot do, until it is done',
    good: market,
    spoil: { plan: (plan) => Object.assign(workOf(plan, 'field-loaf-1/shape'), { person: 'bem' }) },
    over: 51,
  },
];

function spoiledDay({ good, spoil }: Case): Good {
  return {
    scenario: edited(good.scenario, (copy) => spoil.scenario?.(copy)),
    plan: edited(good.plan, (copy) => spoil.plan?.(copy)),
  };
}

describe('a mistake of the day so far', () => {
  it.each(CASES)('$code: $what', (one) => {
    const { scenario, plan } = spoiledDay(one);
    expect(codesSeen(scenario, plan)).toContain(one.code);
    const seenAt = (now: number) => codesSeen(dayUnderway(scenario, plan, now), plan);
    for (const now of [0, one.over - 1]) expect(seenAt(now), `at ${now}`).toContain(one.code);
    for (const now of [one.over, one.over + 1, scenario.date === '2026-03-29' ? 700 : 300]) {
      expect(seenAt(now), `at ${now}`).not.toContain(one.code);
    }
  });
});

describe('what reaches past now', () => {
  it('is dated now, and a stretch is told from now on', () => {
    const plan = edited(market.plan, (copy) => {
      placeOf(copy, 'field-loaf-2/bake').id = 'hearth/upper';
    });
    const { breaches } = judge(dayUnderway(market.scenario, plan, 110), plan);
    expect(breaches.filter(({ rule }) => rule === 'DECK_CAPACITY')).toEqual([
      {
        rule: 'DECK_CAPACITY',
        says:
          'hearth/upper holds 2 trays at once between 04:50 and 05:02, 1 more than its room of 1: ' +
          'tray field-loaf-1, tray field-loaf-2.',
        doThis: 'Bake the tray at another time or on another deck.',
        taskIds: ['field-loaf-1/bake', 'field-loaf-2/bake'],
        minute: 110,
      },
    ]);
    const noSteam = edited(market.plan, (copy) => {
      placeOf(copy, 'field-loaf-2/bake').id = 'hatch/only';
    });
    expect(judge(dayUnderway(market.scenario, noSteam, 110), noSteam).breaches.map(({ rule, minute }) => [rule, minute])).toEqual(
      [['STEAM', 110]],
    );
  });

  it('is seen though it was already so before now', () => {
    // Too hot for the loaf from its first minute to its last.
    const plan = edited(market.plan, (copy) => {
      Object.assign(moveOf(copy, 'hearth/upper'), { start: 41, toC: 255 });
    });
    const found = judge(dayUnderway(market.scenario, plan, 110), plan).breaches;
    expect(found.map(({ rule, minute }) => [rule, minute])).toEqual([['DECK_TEMPERATURE', 111]]);
  });

  it('is seen though it hides behind a crowd that is over', () => {
    // Three trays in a box for two until 91, two of them in one position until 97.
    const plan = edited(market.plan, (copy) => {
      placeOf(copy, 'field-loaf-2/proof').position = 1;
      copy.tasks.push({ ...structuredClone(task(copy, 'field-loaf-1/proof')), id: 'extra/proof', tray: 'extra' });
      Object.assign(task(copy, 'extra/proof'), { end: 95 });
      Object.assign(placeOf(copy, 'extra/proof'), { position: 1 });
    });
    const day = dayUnderway(market.scenario, market.plan, 92);
    const scenario = edited(day, (copy) => {
      const { place } = recordOf(copy, 'field-loaf-2/proof');
      if (place !== undefined) place.position = 1;
      copy.underway.tasks.push({
        ...structuredClone(recordOf(copy, 'field-loaf-1/proof')),
        tray: 'extra',
        state: 'begun',
        end: 95,
      });
    });
    const shared = judge(scenario, plan).breaches.filter(({ rule }) => rule === 'PLACE_POSITION');
    expect(shared.map(({ minute }) => minute)).toEqual([92]);
    expect(judge(scenario, plan).breaches.filter(({ rule }) => rule === 'SHELF_CAPACITY')).toEqual([]);
  });

  it('is seen where something that has not begun is part of it', () => {
    // One of the two has ended; the other has not begun, and is before now only by the plan's mistake.
    const plan = edited(market.plan, (copy) => {
      workOf(copy, 'milk-bun-2/shape').start = 99;
    });
    const found = judge(dayUnderway(market.scenario, market.plan, 100), plan).breaches.map(({ rule }) => rule);
    expect(found).toContain('PERSON_BUSY');
  });
});

describe('what is never history', () => {
  it('a step that goes on, though the plan ends it before now', () => {
    // The second tray of rolls waits from 50 on. Ended at 44 it would have proofed a minute too short.
    const plan = edited(quietHouse.plan, (copy) => {
      task(copy, 'roll-2/proof').end = 44;
    });
    const at = (now: number) => codesSeen(dayUnderway(quietHouse.scenario, quietHouse.plan, now), plan);
    expect(at(52)).toContain('STEP_MINUTES');
  });

  it('a plan without a day under way', () => {
    for (const one of CASES) {
      const { scenario, plan } = spoiledDay(one);
      expect(codesSeen(scenario, plan), one.what).toContain(one.code);
    }
  });
});
