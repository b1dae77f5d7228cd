// The spread of a scenario: absent it leaves everything as it was, in part it is filled up, and a wrong one is refused with help.
import { expect, test } from 'vitest';
import { fingerprint } from '../../src/model/fingerprint.ts';
import { scenarioSchema } from '../../src/model/scenario.ts';
import { spreadSchema, USUAL_SPREAD } from '../../src/model/spread.ts';
import { STEP_KINDS } from '../../src/model/steps.ts';
import { readScenario } from '../../src/read/readScenario.ts';
import { errorsOf, GOOD, goodWith, readValue } from '../read/wholeScenario.ts';

test('every step has a usual spread, and so has the work at the oven', () => {
  expect(Object.keys(USUAL_SPREAD).sort()).toEqual([...STEP_KINDS, 'load', 'unload'].sort());
  expect(Math.min(...Object.values(USUAL_SPREAD))).toBeGreaterThan(0);
});

test('absent, nothing of it is in the scenario; stated, it is another scenario', () => {
  const bare = readValue(readScenario(GOOD));
  expect(Object.keys(bare)).not.toContain('spread');
  expect(bare.products.flatMap(({ steps }) => steps).some((step) => 'spreadPercent' in step)).toBe(false);
  const stated = readValue(readScenario(`${GOOD}spread: { proof: 20 }\n`));
  expect(stated.spread).toEqual({ ...USUAL_SPREAD, proof: 20 });
  expect(fingerprint(stated)).not.toBe(fingerprint(bare));
  expect(fingerprint(scenarioSchema.parse({ ...bare, spread: undefined }))).toBe(fingerprint(bare));
});

test('a step may have its own', () => {
  const scenario = readValue(readScenario(goodWith('{ do: cool, minutes: 40 }', '{ do: cool, minutes: 40, spreadPercent: 33 }')));
  expect(scenario.products[0]?.steps.at(-1)).toMatchObject({ do: 'cool', spreadPercent: 33 });
});

test.each([
  ['spread: { prove: 10 }', '/spread/prove'],
  ['spread: { proof: 101 }', '/spread/proof'],
  ['spread: { proof: -1 }', '/spread/proof'],
  ['spread: { proof: wide }', '/spread/proof'],
  ['spread: 10', '/spread'],
])('%s is refused', (line, path) => {
  expect(errorsOf(readScenario(`${GOOD}${line}\n`)).map((error) => error.path)).toEqual([path]);
});

test('0 and 100 are within', () => {
  expect(spreadSchema.parse({ proof: 0, bulk: 100 })).toMatchObject({ proof: 0, bulk: 100 });
});
