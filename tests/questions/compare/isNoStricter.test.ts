// Which days count as no stricter than another; each case in both directions.
import { expect, test } from 'vitest';
import type { PatchOperation } from '../../../src/model/changes.ts';
import type { Scenario } from '../../../src/model/scenario.ts';
import { isNoStricter } from '../../../src/questions/compare/isNoStricter.ts';
import { patchScenario } from '../../../src/read/patchScenario.ts';
import { readScenario } from '../../../src/read/readScenario.ts';
import { GOOD } from '../../read/wholeScenario.ts';

function base(): Scenario {
  const reading = readScenario(GOOD);
  if (!reading.ok) throw new Error('the scenario is good');
  return reading.value;
}

function changed(...patch: readonly PatchOperation[]): Scenario {
  const patched = patchScenario(base(), patch);
  if (!patched.ok) throw new Error(JSON.stringify(patched));
  return patched.scenario;
}

const ROOMIER: readonly [string, readonly PatchOperation[]][] = [
  ['another proofer', [{ op: 'add', path: '/equipment/proofers/-', value: { id: 'second', shelves: 2, temperatureC: 30 } }]],
  ['more trays on a deck', [{ op: 'replace', path: '/equipment/ovens/0/decks/0/trays', value: 9 }]],
  ['an oven that heats faster', [{ op: 'replace', path: '/equipment/ovens/0/heatUpCPerMinute', value: 50 }]],
  ['no bench to run short of', [{ op: 'remove', path: '/equipment/bench' }]],
  ['a later end of the day', [{ op: 'replace', path: '/day/until', value: '11:30' }]],
  ['a later order', [{ op: 'replace', path: '/orders/0/readyBy', value: '09:55' }]],
  ['an order less', [{ op: 'remove', path: '/orders/0' }]],
  ['more time to shape a batch', [{ op: 'replace', path: '/doughs/0/shapeWithin', value: 90 }]],
];

test.each(ROOMIER)('%s asks for no more, and is not the same', (_, patch) => {
  expect(isNoStricter(base(), changed(...patch))).toBe(true);
  expect(isNoStricter(changed(...patch), base())).toBe(false);
});

const OTHERWISE: readonly [string, readonly PatchOperation[]][] = [
  ['another temperature of the proofer', [{ op: 'replace', path: '/equipment/proofers/0/temperatureC', value: 31 }]],
  ['a deck that starts hot', [{ op: 'replace', path: '/equipment/ovens/0/decks/0/startsAtC', value: 200 }]],
  ['another beginning of the day', [{ op: 'replace', path: '/day/from', value: '-1d 19:00' }]],
  ['heavier pieces', [{ op: 'replace', path: '/products/0/pieceG', value: 61 }]],
];

test.each(OTHERWISE)('%s cannot be held side by side', (_, patch) => {
  expect(isNoStricter(base(), changed(...patch))).toBe(false);
  expect(isNoStricter(changed(...patch), base())).toBe(false);
});

test('the same day is no stricter than itself, whatever things are called', () => {
  expect(isNoStricter(base(), base())).toBe(true);
  const renamed = changed({ op: 'add', path: '/equipment/proofers/0/name', value: 'The old one' });
  expect(isNoStricter(base(), renamed)).toBe(true);
  expect(isNoStricter(renamed, base())).toBe(true);
});
