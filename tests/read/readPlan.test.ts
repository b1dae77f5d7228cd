// Reading plans: ours come back as they were written, those of anybody in minutes; what is wrong is said with its place.
import { describe, expect, it } from 'vitest';
import { readPlan, readWrittenPlan } from '../../src/read/readPlan.ts';
import { readScenario } from '../../src/read/readScenario.ts';
import { PLAN, WRITTEN } from './plans.ts';
import { errorsOf, expectCoded, GOOD, goodWith, readValue } from './wholeScenario.ts';

const SCENARIO = readValue(readScenario(GOOD));

describe('a plan we wrote', () => {
  it('reads back the same, however indented', () => {
    for (const indent of [0, 2]) expect(readValue(readPlan(JSON.stringify(PLAN, null, indent)))).toEqual(PLAN);
  });

  it('reads back the same when it is large', () => {
    const [task] = PLAN.tasks;
    const large = { ...PLAN, tasks: Array.from({ length: 8000 }, (_, index) => ({ ...task, id: `orange-${index}/mix` })) };
    const text = JSON.stringify(large, null, 1);
    expect(text.length).toBeGreaterThan(2_000_000);
    expect(readValue(readPlan(text))).toEqual(large);
  });

  const wrong: readonly (readonly [string, unknown, string])[] = [
    ['another version', { ...PLAN, plan: 2 }, 'BAD_VERSION /plan'],
    ['a key that means nothing', { ...PLAN, taks: [] }, 'UNKNOWN_KEY /taks'],
    ['no decks', { ...PLAN, decks: undefined }, 'MISSING /decks'],
    ['a word that is none', { ...PLAN, holds: 'optimum' }, 'UNKNOWN_WORD /holds'],
    [
      'a time zone that is none',
      { ...PLAN, scenario: { ...PLAN.scenario, timeZone: 'Mars/Base' } },
      'UNKNOWN_TIME_ZONE /scenario/timeZone',
    ],
    ['a start that is no instant', { ...PLAN, day: { ...PLAN.day, startsAt: 'dawn' } }, 'BAD_TIME /day/startsAt'],
    ['a day without end', { ...PLAN, day: { ...PLAN.day, minutes: 1e9 } }, 'DAY_TOO_LONG /day/minutes'],
    [
      'a day without minutes',
      { ...PLAN, day: { ...PLAN.day, minutes: 0 }, tasks: [], decks: [] },
      'DAY_UPSIDE_DOWN /day/minutes',
    ],
    ['a task after the day', { ...PLAN, tasks: PLAN.tasks.map((task) => ({ ...task, end: 841 })) }, 'OUT_OF_BOUNDS /tasks/0'],
    ['a task that ends first', { ...PLAN, tasks: PLAN.tasks.map((task) => ({ ...task, start: 15 })) }, 'OUT_OF_BOUNDS /tasks/0'],
    [
      'more bench than a house',
      { ...PLAN, bakehouse: { ...PLAN.bakehouse, benchPlaces: 1e9 } },
      'OUT_OF_BOUNDS /bakehouse/benchPlaces',
    ],
  ];

  it.each(wrong)('%s', (_, value, error) => {
    const reading = readPlan(JSON.stringify(value, null, 1));
    expect(errorsOf(reading).map(({ code, path }) => `${code} ${path}`)).toEqual([error]);
    expectCoded(reading, true);
  });
});

describe('a plan of anybody', () => {
  it('is read in minutes of the scenario, whatever way its times are written', () => {
    const plan = readValue(readWrittenPlan(WRITTEN, SCENARIO));
    expect(plan.tasks.map(({ start, end }) => [start, end])).toEqual([
      [0, 14],
      [14, 440],
      [440, 451],
    ]);
    expect(plan.tasks[0]?.handsOn).toEqual([{ person: 'duarte', start: 0, end: 5, for: 'mix' }]);
    expect(plan.tasks[0]?.place).toEqual({ kind: 'bowl', id: 'spiral', position: 1 });
    expect(plan.tasks[1]?.handsOn).toEqual([]);
    expect(plan.decks[0]?.setPoints).toEqual([{ start: 480, end: 530, fromC: 20, toC: 200 }]);
    expect(plan.score).toEqual({ temperatureChanges: 0 });
  });

  it('may be one of ours', () => {
    expect(readValue(readWrittenPlan(JSON.stringify(PLAN), SCENARIO))).toEqual(PLAN);
  });

  it('counts real minutes in the night the clocks go forward, and refuses the hour that never comes', () => {
    const night = readValue(readScenario(goodWith('2026-05-16', '2026-03-29')));
    const text = 'tasks: [{ step: rest, start: "-1d 20:00", end: "03:00" }]\ndecks: []\n';
    expect(readValue(readWrittenPlan(text, night)).tasks[0]?.end).toBe(360);
    expect(readValue(readWrittenPlan(text, SCENARIO)).tasks[0]?.end).toBe(420);
    const errors = errorsOf(readWrittenPlan(text.replace('03:00', '01:30'), night));
    expect(errors).toMatchObject([{ code: 'TIME_SKIPPED', path: '/tasks/0/end', line: 1 }]);
  });

  it.each([
    ['step: mix', 'step: mixx', 'UNKNOWN_WORD /tasks/0/step'],
    ['start: 14', 'start: "3:20"', 'BAD_TIME /tasks/1/start'],
    ['start: 14', 'start: 14.5', 'NOT_WHOLE /tasks/1/start'],
    ['start: 14', 'begin: 14', 'MISSING /tasks/1/start'],
    ['position: 3', 'position: 0', 'OUT_OF_BOUNDS /tasks/1/place/position'],
    ['kind: bowl', 'kind: bowls', 'UNKNOWN_WORD /tasks/0/place/kind'],
    ['toC: 200', 'toC: hot', 'WRONG_TYPE /decks/0/setPoints/0/toC'],
    ['decks:', 'deck:', 'UNKNOWN_KEY /deck'],
  ])('%s -> %s', (from, to, error) => {
    expect(WRITTEN).toContain(from);
    const reading = readWrittenPlan(WRITTEN.replace(from, to), SCENARIO);
    expect(errorsOf(reading).map(({ code, path }) => `${code} ${path}`)).toContain(error);
    expectCoded(reading, true);
  });
});
