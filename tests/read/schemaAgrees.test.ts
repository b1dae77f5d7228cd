// The JSON Schemas in docs/schema and the program accept and refuse the same shapes. Ajv checks draft 2020-12 independently.
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { scenarioSchema } from '../../src/model/scenario.ts';
import { writtenPlanInputSchema } from '../../src/model/writtenPlan.ts';
import { GOOD, goodWith } from './wholeScenario.ts';

const ajv = new Ajv2020({ strict: true, allErrors: false, allowUnionTypes: true, formats: { date: true } });

function compiled(name: string): (value: unknown) => boolean {
  const schema: unknown = JSON.parse(readFileSync(new URL(`../../docs/schema/${name}.json`, import.meta.url), 'utf8'));
  if (typeof schema !== 'object' || schema === null) throw new Error(`${name}.json is no schema`);
  const validate = ajv.compile(schema);
  return (value) => validate(value) === true;
}

const REFUSED: readonly (readonly [string, string])[] = [
  ['scenario: 1', 'scenario: 2'],
  ['date: 2026-05-16\n', ''],
  ['date: 2026-05-16', 'date: 2026-02-30'],
  ['date: 2026-05-16', 'date: 2026-05-16\nnote: 1'],
  ['"-1d 20:00"', '"5:30"'],
  ['"-1d 20:00"', '"24:00"'],
  ['trays: 2', 'trays: 0'],
  ['trays: 2', 'trays: 2.5'],
  ['trays: 2', 'trays: "2"'],
  ['id: spiral', 'id: my mixer'],
  ['cannot: [bake]', 'cannot: [bike]'],
  ['do: mix', 'do: bake'],
  ['do: retard', 'do: bulk'],
  ['minutes: [70, 95]', 'minutes: [70]'],
  ['minutes: [70, 95]', 'minutes: [70, 80, 95]'],
  ['minutes: [70, 95]', 'minutes: [70, "95"]'],
  ['minutes: [70, 95]', 'minutes: 0'],
  ['steam: true }\n        - { id: lower', 'steam: yes }\n        - { id: lower'],
  ['egg: 10', 'egg: much'],
  ['egg: 10', '"free egg": 10'],
  ['aim: start-late', 'aim: sleep'],
  ['bench: { places: 2 }', 'bench: 2'],
  ['name: Orange bun', `name: ${'x'.repeat(121)}`],
  ['allergens: [gluten]', 'allergens: gluten'],
];

const ACCEPTED: readonly (readonly [string, string])[] = [
  ['minutes: [70, 95]', 'minutes: 80'],
  ['name: Orange bun\n', '\n'],
  ['goals: { lateTrayMinute: 20, aim: start-late }', ''],
  ['  bench: { places: 2 }\n', ''],
  ['"-1d 20:00"', '"+7d 23:59"'],
  ['temperatureC: [235, 245]', 'temperatureC: 240.5'],
];

describe('docs/schema/scenario.json', () => {
  const accepts = compiled('scenario');

  it.each([['', ''] as const, ...ACCEPTED])('accepts, as the program does: %s -> %s', (from, to) => {
    const value: unknown = parse(goodWith(from, to));
    expect([accepts(value), scenarioSchema.safeParse(value).success]).toEqual([true, true]);
  });

  it.each(REFUSED)('refuses, as the program does: %s -> %s', (from, to) => {
    const value: unknown = parse(goodWith(from, to));
    expect([accepts(value), scenarioSchema.safeParse(value).success]).toEqual([false, false]);
  });

  it('refuses what is no object, and an empty one', () => {
    for (const value of [null, [], 'text', 1, true, {}]) {
      expect([accepts(value), scenarioSchema.safeParse(value).success]).toEqual([false, false]);
    }
  });

  it('says which draft it is', () => {
    const text = readFileSync(new URL('../../docs/schema/scenario.json', import.meta.url), 'utf8');
    expect(text).toContain('https://json-schema.org/draft/2020-12/schema');
    expect(parse(GOOD)).toHaveProperty('scenario', 1);
  });
});

const TASK = { step: 'proof', batch: 'a-1', tray: 'b-1', product: 'b', start: '05:30', end: 400 };

describe('docs/schema/written-plan.json', () => {
  const accepts = compiled('written-plan');
  const cases: readonly (readonly [string, unknown, boolean])[] = [
    ['nothing planned', { tasks: [], decks: [] }, true],
    ['a task with a clock time', { tasks: [TASK], decks: [] }, true],
    ['a place without a position', { tasks: [{ ...TASK, place: { kind: 'shelf', id: 'warm' } }], decks: [] }, true],
    ['a score in part', { tasks: [], decks: [], score: { cost: 3 } }, true],
    ['no decks', { tasks: [] }, false],
    ['a step that is none', { tasks: [{ ...TASK, step: 'poof' }], decks: [] }, false],
    ['half a minute', { tasks: [{ ...TASK, end: 400.5 }], decks: [] }, false],
    ['a clock time that is none', { tasks: [{ ...TASK, start: '5:30' }], decks: [] }, false],
    ['a key that means nothing', { tasks: [{ ...TASK, finish: 3 }], decks: [] }, false],
  ];

  it.each(cases)('%s', (_, value, isFine) => {
    expect([accepts(value), writtenPlanInputSchema.safeParse(value).success]).toEqual([isFine, isFine]);
  });
});

describe('docs/schema/plan.json', () => {
  it('is a schema that refuses an empty object', () => {
    expect(compiled('plan')({})).toBe(false);
  });
});
