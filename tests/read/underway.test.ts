// A day under way at the door: a good one passes, whatever the minute; each thing wrong is told with its place, all at once.
import { describe, expect, it } from 'vitest';
import { readScenarioValue } from '../../src/read/readScenario.ts';
import * as coldNight from '../rules/plans/coldNight.ts';
import { dayUnderway, recordOf, type ScenarioUnderway } from '../rules/plans/dayUnderway.ts';
import * as marketMorning from '../rules/plans/marketMorning.ts';
import * as quietHouse from '../rules/plans/quietHouse.ts';
import * as rackMorning from '../rules/plans/rackMorning.ts';
import { edited, nth } from '../rules/spoil.ts';
import { errorsOf, expectCoded } from './wholeScenario.ts';

const at100 = dayUnderway(marketMorning.scenario, marketMorning.bare, 100);

function wrong(value: unknown): readonly string[] {
  const reading = readScenarioValue(value);
  expectCoded(reading, false);
  return errorsOf(reading).map(({ code, path }) => `${code} ${path}`);
}

function wrongWith(edit: (scenario: ScenarioUnderway) => void, good = at100): readonly string[] {
  return wrong(edited(good, edit));
}

function indexOf(id: string): number {
  return at100.underway.tasks.indexOf(recordOf(at100, id));
}

describe('a good day under way', () => {
  it('passes at every turn of the day, and reads back the same', () => {
    const good = [{ scenario: marketMorning.scenario, plan: marketMorning.bare }, quietHouse, rackMorning, coldNight];
    for (const { scenario, plan } of good) {
      for (const { start, end } of plan.tasks) {
        for (const now of [start, start + 1, end]) {
          const day = dayUnderway(scenario, plan, now);
          expect(readScenarioValue(JSON.parse(JSON.stringify(day))), `${scenario.name} at ${now}`).toEqual({
            ok: true,
            value: day,
          });
        }
      }
    }
  });

  it('may be at the end of the day, and not after it', () => {
    const ended = dayUnderway(marketMorning.scenario, marketMorning.bare, 360);
    expect(wrong(ended)).toEqual([]);
    expect(wrong({ ...ended, underway: { ...ended.underway, now: 361 } })).toEqual(['NOW_OUTSIDE_DAY /underway/now']);
  });

  it('may hold a bake that is off its deck and still unloaded, ended or begun', () => {
    const at122 = dayUnderway(marketMorning.scenario, marketMorning.bare, 122);
    expect(recordOf(at122, 'field-loaf-1/bake').state).toBe('begun');
    expect(wrong(at122)).toEqual([]);
    const off = edited(at122, (scenario) => {
      recordOf(scenario, 'field-loaf-1/bake').state = 'ended';
    });
    expect(wrong(off)).toEqual([]);
  });

  it('may hold a load that is being loaded, its trays of products that load sooner too', () => {
    const at38 = dayUnderway(rackMorning.scenario, rackMorning.plan, 38);
    expect(recordOf(at38, 'plain-roll-2/bake')).toMatchObject({ state: 'begun', start: 40 });
    expect(wrong(at38)).toEqual([]);
  });

  it('may hold planned steps whose time has gone by', () => {
    const late = edited(at100, (scenario) => {
      scenario.underway.now = 103;
    });
    expect(wrong(late)).toEqual([]);
  });
});

describe('names', () => {
  it('of doughs, products and people', () => {
    const found = wrongWith(({ underway }) => {
      nth(underway.batches, 1).dough = 'mlik';
      nth(nth(underway.batches, 0).trays, 1).product = 'field-laof';
      nth(underway.tasks[indexOf('milk-1/mix')]?.handsOn, 0).person = 'anna';
    });
    expect(found).toEqual(
      expect.arrayContaining([
        'UNKNOWN_DOUGH /underway/batches/1/dough',
        'UNKNOWN_PRODUCT /underway/batches/0/trays/1/product',
        `UNKNOWN_PERSON /underway/tasks/${indexOf('milk-1/mix')}/handsOn/0/person`,
      ]),
    );
  });

  it('of batches, trays and decks twice', () => {
    expect(wrongWith(({ underway }) => underway.decks.push(nth(underway.decks, 0)))).toEqual([
      'DUPLICATE_ID /underway/decks/3/id',
    ]);
    const trays = wrongWith(({ underway }) => {
      nth(nth(underway.batches, 1).trays, 1).id = 'milk-bun-1';
      for (const record of underway.tasks) if (record.tray === 'milk-bun-2') record.tray = 'milk-bun-1';
    });
    expect(trays).toContain('DUPLICATE_ID /underway/batches/1/trays/1/id');
    const batches = wrongWith(({ underway }) => underway.batches.push(nth(underway.batches, 0)));
    expect(batches).toContain('DUPLICATE_ID /underway/batches/2/id');
  });

  it('of places, decks and what is out of use', () => {
    const found = wrongWith(({ underway }) => {
      Object.assign(underway.tasks[indexOf('milk-bun-1/proof')]?.place ?? {}, { id: 'warm-bok' });
      nth(underway.decks, 0).id = 'hearth/uper';
      underway.out.push(
        { kind: 'mixer', id: 'big', from: 100, until: 200 },
        { kind: 'mixer', id: 'warm-box', from: 100, until: 200 },
        { kind: 'retarder', id: 'cold', from: 100, until: 200 },
        { kind: 'deck', id: 'hearth/upper', from: 100, until: 100 },
      );
    });
    expect(found).toEqual([
      'UNKNOWN_PLACE /underway/decks/0/id',
      'UNKNOWN_PLACE /underway/out/1/id',
      'UNKNOWN_PLACE /underway/out/2/id',
      'OUT_UPSIDE_DOWN /underway/out/3/until',
      `UNKNOWN_PLACE /underway/tasks/${indexOf('milk-bun-1/proof')}/place/id`,
    ]);
  });

  it('that stand in a part of the scenario that is broken are not sought', () => {
    const found = wrong({
      ...at100,
      equipment: { ...at100.equipment, ovens: [{ id: 'hearth' }] },
      doughs: [{ id: 'country' }, ...at100.doughs.slice(1)],
    });
    expect(found.filter((line) => line.includes('/underway'))).toEqual([]);
  });
});

describe('trays and steps', () => {
  it('a tray of another dough, and more trays than are ordered', () => {
    expect(wrongWith(({ underway }) => Object.assign(nth(underway.batches, 0), { dough: 'milk' }))).toContain(
      'TRAY_OF_ANOTHER_DOUGH /underway/batches/0/trays/0/product',
    );
    expect(wrongWith(({ orders }) => Object.assign(nth(orders, 0), { pieces: 5 }))).toEqual([]);
    expect(wrongWith(({ orders }) => Object.assign(nth(orders, 0), { pieces: 4 }))).toEqual([
      'TRAYS_NOT_ORDERED /underway/batches/0/trays/1',
    ]);
  });

  it('a step that is missing, that stands twice, or that is none', () => {
    const index = indexOf('milk-bun-2/rest');
    expect(wrongWith(({ underway }) => underway.tasks.splice(index, 1))).toEqual(['STEP_NOT_TOLD /underway/batches/1/trays/1']);
    expect(wrongWith(({ underway }) => underway.tasks.push(nth(underway.tasks, index)))).toEqual([
      `STEP_TWICE /underway/tasks/${at100.underway.tasks.length}`,
    ]);
    const other = (change: object) => wrongWith(({ underway }) => Object.assign(nth(underway.tasks, index), change));
    const missing = 'STEP_NOT_TOLD /underway/batches/1/trays/1';
    expect(other({ ordinal: 2 })).toEqual([missing, `STEP_NOT_THERE /underway/tasks/${index}/step`]);
    expect(other({ tray: 'milk-bun-3' })).toEqual([missing, `NOT_UNDER_WAY /underway/tasks/${index}/tray`]);
    expect(other({ batch: 'milk-2' })).toEqual([missing, `NOT_UNDER_WAY /underway/tasks/${index}/batch`]);
  });

  it('steps and batches that are not sound are not missed', () => {
    const broken = wrong({
      ...at100,
      underway: {
        ...at100.underway,
        tasks: at100.underway.tasks.map((each, index) => (index === 3 ? { ...each, start: 'dawn' } : each)),
      },
    });
    expect(broken).toEqual(['WRONG_TYPE /underway/tasks/3/start']);
  });

  it('a step in no place, or in one of another kind', () => {
    const index = indexOf('milk-bun-1/proof');
    expect(wrongWith(({ underway }) => delete nth(underway.tasks, index).place)).toEqual([
      `WRONG_PLACE /underway/tasks/${index}`,
    ]);
    expect(wrongWith(({ underway }) => Object.assign(nth(underway.tasks, index).place ?? {}, { kind: 'rack' }))).toContain(
      `WRONG_PLACE /underway/tasks/${index}/place`,
    );
    expect(wrong(dayUnderway(quietHouse.scenario, quietHouse.plan, 60))).toEqual([]);
  });
});

describe('states', () => {
  it('that do not agree with now', () => {
    const state = (id: string, change: object) => wrongWith((scenario) => Object.assign(recordOf(scenario, id), change));
    const at = (id: string, key: string) => `STATE_AND_NOW /underway/tasks/${indexOf(id)}/${key}`;
    expect(state('milk-bun-1/shape', { end: 100 })).toEqual([]);
    expect(state('milk-bun-1/shape', { end: 101 })).toEqual([at('milk-bun-1/shape', 'end')]);
    // The loaf is loaded for a minute.
    expect(state('field-loaf-2/bake', { start: 101 })).toEqual([]);
    expect(state('field-loaf-2/bake', { start: 102 })).toEqual([at('field-loaf-2/bake', 'start')]);
    expect(state('milk-bun-1/bake', { keeps: ['time'], start: 101 })).toEqual([]);
    expect(state('milk-bun-1/bake', { keeps: ['time'], start: 100 })).toEqual([at('milk-bun-1/bake', 'start')]);
    expect(state('milk-bun-1/bake', { keeps: ['place'], start: 100 })).toEqual([]);
    expect(state('milk-bun-1/bake', { start: 163 })).toEqual([
      `STEP_UPSIDE_DOWN /underway/tasks/${indexOf('milk-bun-1/bake')}/end`,
    ]);
  });

  it('that are out of order, also from a batch to its trays', () => {
    const planned = (id: string) => wrongWith((scenario) => Object.assign(recordOf(scenario, id), { state: 'planned' }));
    const at = (id: string) => `STATES_OUT_OF_ORDER /underway/tasks/${indexOf(id)}/state`;
    expect(planned('field-loaf-1/proof')).toEqual([at('field-loaf-1/bake')]);
    expect(planned('field-loaf-1/bake')).toEqual([]);
    expect(planned('milk-1/bulk')).toEqual([at('milk-bun-1/shape')]);
    expect(planned('country-1/mix')).toEqual([at('country-1/bulk')]);
    const begun = wrongWith((scenario) => Object.assign(recordOf(scenario, 'field-loaf-1/proof'), { state: 'begun' }));
    expect(begun).toEqual([at('field-loaf-1/bake')]);
  });

  it('of decks: moves that begin after now, overlap or run backwards', () => {
    const move = (change: object) => wrongWith(({ underway }) => Object.assign(nth(nth(underway.decks, 1).setPoints, 0), change));
    expect(move({ start: 100, end: 143 })).toEqual([]);
    expect(move({ start: 101, end: 144 })).toEqual(['MOVE_OUT_OF_ORDER /underway/decks/1/setPoints/0']);
    expect(move({ end: 49 })).toEqual(['MOVE_OUT_OF_ORDER /underway/decks/1/setPoints/0']);
    const overlapping = wrongWith(({ underway }) => {
      nth(underway.decks, 1).setPoints.push({ start: 92, end: 99, fromC: 235, toC: 230 });
    });
    expect(overlapping).toEqual(['MOVE_OUT_OF_ORDER /underway/decks/1/setPoints/1']);
  });
});
