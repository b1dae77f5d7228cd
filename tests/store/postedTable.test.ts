// Posted plans in the store: one revision after the other for each day, pages in their order, all or nothing.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openDatabase } from '../../src/store/openDatabase.ts';
import { storeOver } from '../../src/store/openStore.ts';
import { posted } from './samples.ts';

const db = () => openDatabase(':memory:');
let opened: ReturnType<typeof db>;
let store: ReturnType<typeof storeOver>;
beforeEach(() => {
  opened = db();
  store = storeOver(opened);
});
afterEach(() => store.close());

test('each day counts its own revisions, and pages keep their order', async () => {
  const pages = [...'abcdefghijkl'];
  await store.post(posted('one', pages));
  await store.post(posted('other day', [], '2026-05-17'));
  expect(await store.post(posted('two'))).toEqual({ ...posted('two'), revision: 2 });
  expect(await store.posted('2026-05-16')).toEqual({ ...posted('two'), revision: 2 });
  expect(await store.posted('2026-05-16', 1)).toEqual({ ...posted('one', pages), revision: 1 });
  expect((await store.posted('2026-05-17'))?.pages).toEqual([]);
  expect(await store.posted('2026-05-18')).toBeNull();
  expect((await store.postedHistory('2026-05-16')).map(({ revision }) => revision)).toEqual([2, 1]);
});

test('a plan that replaces another than the last is refused with null; the same plan again is a new revision', async () => {
  expect(await store.post(posted('one'), 1)).toBeNull();
  expect((await store.post(posted('one'), 0))?.revision).toBe(1);
  expect(await store.post(posted('two'), 0)).toBeNull();
  expect((await store.post(posted('one'), 1))?.revision).toBe(2);
});

test('the last is the one posted last, whatever its day and its clock', async () => {
  expect(await store.lastPosted()).toBeNull();
  await store.post(posted('one', [], '2026-05-18'));
  await store.post({ ...posted('two', [], '2026-05-17'), postedAt: '2020-01-01T00:00:00.000Z' });
  expect(await store.lastPosted()).toMatchObject({ date: '2026-05-17', revision: 1, timeZone: 'Europe/Lisbon' });
});

test('when a page cannot be kept, nothing of the plan is', async () => {
  opened.exec(
    "CREATE TRIGGER no_third BEFORE INSERT ON posted_page WHEN NEW.number = 3 BEGIN SELECT RAISE(ABORT, 'no third page'); END",
  );
  await expect(store.post(posted('one', ['a', 'b', 'c']))).rejects.toMatchObject({ name: 'StoreFault', code: 'REFUSED' });
  expect(await store.posted('2026-05-16')).toBeNull();
  expect((await store.post(posted('one', ['a', 'b'])))?.revision).toBe(1);
});
