// What happened on a day, in the store: numbered in the order told, each day by itself.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openStore } from '../../src/store/openStore.ts';
import type { Store } from '../../src/store/store.ts';

let store: Store;
beforeEach(async () => {
  store = await openStore(':memory:');
});
afterEach(() => store.close());

test('goes on counting where the day stood', async () => {
  await store.tell('2026-05-16', 't1', ['a', 'b']);
  await store.tell('2026-05-17', 't2', ['c']);
  expect(await store.tell('2026-05-16', 't0', ['d'])).toEqual([{ date: '2026-05-16', number: 3, toldAt: 't0', event: 'd' }]);
  const told = await store.happened('2026-05-16');
  expect(told.map(({ number, event }) => `${number} ${event}`)).toEqual(['1 a', '2 b', '3 d']);
  expect(await store.tell('2026-05-16', 't3', [])).toEqual([]);
  expect(await store.happened('2026-05-18')).toEqual([]);
});
