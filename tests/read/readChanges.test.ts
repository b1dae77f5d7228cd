// Changes and sweeps at the door: every error at once, at its line, under the title of its change, with what to do.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { CHANGE_CODES } from '../../src/read/changeCodes.ts';
import { readChanges } from '../../src/read/readChanges.ts';
import { readScenario } from '../../src/read/readScenario.ts';
import { sweepScenario } from '../../src/read/sweepScenario.ts';
import { GOOD } from './wholeScenario.ts';

const good = readScenario(GOOD);
if (!good.ok) throw new Error('the scenario is good');
const scenario = good.value;

function told(text: string): readonly string[] {
  const reading = readChanges(text, scenario);
  return reading.ok
    ? []
    : reading.errors.map(({ code, line, column, says, doThis }) => `${line}:${column} ${code} ${says} / ${doThis}`);
}

test('good changes are made, each to the scenario as it is', () => {
  const reading = readChanges(
    `changes:
  - title: More shelves
    patch: [{ op: replace, path: /equipment/proofers/0/shelves, value: 50 }]
  - title: Another name
    patch: [{ op: replace, path: /name, value: Sunday }]`,
    scenario,
  );
  if (!reading.ok) throw new Error(JSON.stringify(reading.errors));
  const [more, other] = reading.value;
  expect(more?.scenario.equipment.proofers[0]?.shelves).toBe(50);
  expect(other?.scenario).toEqual({ ...scenario, name: 'Sunday' });
});

test('every error of every change is told at once, where it stands', () => {
  const errors = told(`changes:
  - title: A misspelt place
    patch: [{ op: replace, path: /equipment/profers/0/shelves, value: 9 }]
  - title: Too many shelves
    patch:
      - { op: replace, path: /equipment/proofers/0/shelves, value: -4 }
      - { op: add, path: /orders/-, value: { product: bagel, pieces: 10, readyBy: "07:00" } }
  - title: Nothing to put
    patch: [{ op: add, path: /equipment/proofers/- }]`);
  expect(errors).toHaveLength(4);
  expect(errors[0]).toMatch(/^3:\d+ NO_SUCH_PLACE Under "A misspelt place": There is no "profers" .*Did you mean "proofers"\?/);
  expect(errors[1]).toMatch(/^6:\d+ OUT_OF_BOUNDS Under "Too many shelves": /);
  expect(errors[2]).toMatch(/^7:\d+ UNKNOWN_PRODUCT Under "Too many shelves": .*bagel/);
  expect(errors[3]).toMatch(/^9:\d+ VALUE_MISSING Under "Nothing to put": .*"value"/);
});

test('an unknown operation is met with the ones there are', () => {
  const errors = told('changes:\n  - title: A wrong word\n    patch: [{ op: repalce, path: /name, value: x }]');
  expect(errors.join()).toMatch(/UNKNOWN_WORD .*Did you mean "replace"\?/);
});

test('a sweep of what is no number, of nothing, and of numbers the scenario cannot hold', () => {
  const codes = (pointer: string, from: number): readonly string[] => {
    const reading = sweepScenario(scenario, { pointer, from, to: from + 2, step: 1 });
    return reading.ok ? [] : reading.errors.map(({ code, says }) => `${code} ${says}`);
  };
  expect(codes('/name', 1).join()).toMatch(/^NOT_SWEPT/);
  expect(codes('/equipment/fridges', 1).join()).toMatch(/^NO_SUCH_PLACE/);
  expect(codes('/equipment/bench/places', -1)).toEqual([
    expect.stringMatching(/^OUT_OF_BOUNDS With -1 as places of bench: /),
    expect.stringMatching(/^OUT_OF_BOUNDS With 0 as places of bench: /),
  ]);
  expect(codes('/equipment/bench/places', 1)).toEqual([]);
});

test('docs/compare.md lists every code of a change', () => {
  const page = readFileSync(new URL('../../docs/compare.md', import.meta.url), 'utf8');
  const listed = [...page.matchAll(/^\| `([A-Z_]+)` \| (.+) \|$/gm)].map(([, code, means]) => [code, means]);
  expect(listed).toEqual(Object.entries(CHANGE_CODES));
});
