// Scenarios of the bakeries with a few numbers, words or entries changed: each ends in coded errors or in a judged plan with
// its sheet. Nothing in between.
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { drawPlan } from '../../src/draw/drawPlan.ts';
import { readScenarioValue } from '../../src/read/readScenario.ts';
import { planned } from './planned.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

const FOLDER = new URL('../../scenarios/', import.meta.url);

/** The large bakery alone would take most of the time. */
const BAKERIES: readonly Json[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml') && name !== 'central-bakery.yaml')
  .map((name): Json => parse(readFileSync(new URL(name, FOLDER), 'utf8')));

/** Every place in a value that holds a number, a list or an on-off word. */
function places(value: Json, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value === 'number' || typeof value === 'boolean') return [path];
  if (Array.isArray(value)) return [path, ...value.flatMap((entry, i) => places(entry, [...path, i]))];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, entry]) => places(entry, [...path, key]));
}

function changedAt(value: Json, path: readonly (string | number)[], change: (old: Json) => Json): Json {
  const [key, ...rest] = path;
  if (key === undefined) return change(value);
  if (Array.isArray(value)) return value.map((entry, i) => (i === key ? changedAt(entry, rest, change) : entry));
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([k, entry]) => [k, k === key ? changedAt(entry, rest, change) : entry]));
}

function changeBy(amount: number): (old: Json) => Json {
  return (old) => {
    if (typeof old === 'number') return Math.max(0, Number.isInteger(old) ? Math.round(old * amount) : old * amount);
    if (typeof old === 'boolean') return !old;
    return Array.isArray(old) && old.length > 1 ? old.filter((_, i) => i !== Math.floor(amount * 7) % old.length) : old;
  };
}

const someChange = fc.record({
  bakery: fc.constantFrom(...BAKERIES),
  where: fc.array(fc.nat(), { minLength: 1, maxLength: 3 }),
  amount: fc.constantFrom(0, 0.1, 0.5, 0.9, 1.1, 1.5, 2, 3),
});

it('300 changed scenarios', { timeout: 240_000 }, async () => {
  let plans = 0;
  await fc.assert(
    fc.asyncProperty(someChange, async ({ bakery, where, amount }) => {
      let value = bakery;
      for (const at of where) {
        const list = places(value);
        value = changedAt(value, list[at % list.length] ?? [], changeBy(amount));
      }
      const reading = readScenarioValue(value);
      if (!reading.ok) {
        expect(reading.errors.length).toBeGreaterThan(0);
        return;
      }
      plans++;
      const plan = await planned(reading.value, 3);
      expect(drawPlan(plan).length).toBeGreaterThan(0);
    }),
    { numRuns: 300 },
  );
  expect(plans).toBeGreaterThan(100);
});
