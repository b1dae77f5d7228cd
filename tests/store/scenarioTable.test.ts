// Scenarios in the store: revisions, the same text again, the revision somebody expects, the order of names.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openStore } from '../../src/store/openStore.ts';
import type { Store } from '../../src/store/store.ts';
import { scenario } from './samples.ts';

let store: Store;
beforeEach(async () => {
  store = await openStore(':memory:');
});
afterEach(() => store.close());

test('every other text is a revision, and each can be fetched as it was sent', async () => {
  for (const text of ['a: 1\n', 'a: 2\r\n', 'a: 1\n']) await store.saveScenario(scenario(text));
  expect((await store.scenario('saturday'))?.revision).toBe(3);
  expect((await store.scenario('saturday', 2))?.text).toBe('a: 2\r\n');
  expect(await store.scenario('saturday', 4)).toBeNull();
  expect(await store.scenario('sunday')).toBeNull();
  expect((await store.scenarioHistory('saturday')).map(({ revision }) => revision)).toEqual([3, 2, 1]);
  expect(await store.scenarioHistory('sunday')).toEqual([]);
});

test('the same text again is the revision it was; as another media type it is a new one', async () => {
  await store.saveScenario(scenario('{}'));
  const again = await store.saveScenario({ ...scenario('{}'), savedAt: '2026-05-17T00:00:00.000Z' });
  expect(again).toEqual({ ...scenario('{}'), revision: 1 });
  expect((await store.saveScenario({ ...scenario('{}'), mediaType: 'application/json' }))?.revision).toBe(2);
});

test('a text that replaces another than the last is refused with null, the same text too', async () => {
  expect(await store.saveScenario(scenario('one'), 1)).toBeNull();
  expect((await store.saveScenario(scenario('one'), 0))?.revision).toBe(1);
  expect(await store.saveScenario(scenario('one'), 0)).toBeNull();
  expect((await store.saveScenario(scenario('two'), 1))?.revision).toBe(2);
  expect(await store.saveScenario(scenario('three'), 1)).toBeNull();
  expect((await store.saveScenario(scenario('two'), 2))?.revision).toBe(2);
});

test('the list holds the last of each, by name, without its text', async () => {
  for (const name of ['b', 'a', 'B']) await store.saveScenario(scenario('one', name));
  await store.saveScenario(scenario('two', 'a'));
  expect((await store.scenarios()).map(({ name, revision }) => `${name} ${revision}`)).toEqual(['B 1', 'a 2', 'b 1']);
  expect((await store.scenarios())[0]).not.toHaveProperty('text');
});
