// The whole store against one kept in plain lists, closed, reopened and copied in between; and what becomes of it when it is closed.
import { mkdtempSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openDatabase } from '../../src/store/openDatabase.ts';
import { openStore, storeOver } from '../../src/store/openStore.ts';
import type { Store } from '../../src/store/store.ts';
import { allOf, anyCall, type Call } from './anyCall.ts';
import { memoryStore } from './memoryStore.ts';
import { outcome } from './outcome.ts';
import { posted, scenario } from './samples.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'store-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

test('answers every row of calls as plain lists do', async () => {
  const calls = fc.array(anyCall, { minLength: 1, maxLength: 60, size: 'max' });
  const property = fc.asyncProperty(calls, async (row) => {
    const store = await openStore(':memory:');
    const model = memoryStore();
    try {
      for (const call of row) expect(await outcome(call(store))).toEqual(await outcome(call(model)));
      expect(await allOf(store)).toEqual(await allOf(model));
      expect(await store.faults()).toEqual([]);
    } finally {
      await store.close();
    }
  });
  await fc.assert(property, { numRuns: 120 });
});

test('in a file: closed and reopened, and copied, at any moment', async () => {
  const step = fc.oneof({ weight: 8, arbitrary: anyCall }, { weight: 1, arbitrary: fc.constantFrom('reopen', 'copy') });
  let count = 0;
  const property = fc.asyncProperty(
    fc.array<Call | string>(step, { minLength: 8, maxLength: 25, size: 'max' }),
    async (row: readonly (Call | string)[]) => {
      const file = join(folder, `${++count}.db`);
      let store: Store = await openStore(file);
      const model = memoryStore();
      try {
        for (const each of row) {
          if (typeof each === 'function') {
            expect(await outcome(each(store))).toEqual(await outcome(each(model)));
          } else if (each === 'reopen') {
            await store.close();
            store = await openStore(file);
            expect(await allOf(store)).toEqual(await allOf(model));
          } else {
            await store.backup(`${file}.copy`);
            const copy = await openStore(`${file}.copy`);
            const [held, faults] = [await allOf(copy), await copy.faults()];
            await copy.close();
            expect(held).toEqual(await allOf(model));
            expect(faults).toEqual([]);
          }
        }
        expect(await allOf(store)).toEqual(await allOf(model));
      } finally {
        await store.close();
      }
    },
  );
  await fc.assert(property, { numRuns: 10, endOnFailure: true });
});

test('two stores on one file see what the other has written', async () => {
  const [one, other] = await Promise.all([openStore(join(folder, 'a.db')), openStore(join(folder, 'a.db'))]);
  expect((await one.saveScenario(scenario('one')))?.revision).toBe(1);
  expect((await other.saveScenario(scenario('two')))?.revision).toBe(2);
  expect(await one.saveScenario(scenario('three'), 1)).toBeNull();
  expect((await one.scenario('saturday'))?.text).toBe('two');
  await Promise.all([one.close(), other.close()]);
});

test('is ready while its file is where it was, and until it is closed', async () => {
  const file = join(folder, 'a.db');
  const store = await openStore(file);
  expect(await store.isReady()).toBe(true);
  renameSync(file, `${file}.away`);
  expect(await store.isReady()).toBe(false);
  renameSync(`${file}.away`, file);
  expect(await store.isReady()).toBe(true);
  await store.close();
  expect(await store.isReady()).toBe(false);
});

test('closed: every call rejects and says so, and closing again is nothing', async () => {
  const store = await openStore(join(folder, 'a.db'));
  await store.close();
  await store.close();
  const calls = [
    () => store.scenarios(),
    () => store.post(posted('plan')),
    () => store.faults(),
    () => store.backup(join(folder, 'b.db')),
  ];
  for (const call of calls) await expect(call()).rejects.toMatchObject({ name: 'StoreFault', code: 'CLOSED' });
});

test('held by another for too long: rejects with nothing changed, and works again after', async () => {
  const file = join(folder, 'a.db');
  const store = await openStore(file, { busyMs: 20 });
  await store.saveScenario(scenario('one'));
  const other = openDatabase(file);
  other.exec('BEGIN IMMEDIATE');
  const writes = [() => store.saveScenario(scenario('two')), () => store.post(posted('plan')), () => store.forget('9')];
  for (const write of writes) await expect(write()).rejects.toMatchObject({ name: 'StoreFault', code: 'LOCKED' });
  expect((await store.scenario('saturday'))?.text).toBe('one');
  other.exec('ROLLBACK');
  other.close();
  expect(await store.posted('2026-05-16')).toBeNull();
  expect((await store.saveScenario(scenario('two')))?.revision).toBe(2);
  await store.close();
});

test('no room left: rejects with nothing changed, and works again once there is room', async () => {
  const db = openDatabase(join(folder, 'a.db'));
  const store = storeOver(db);
  const before = Number(db.pragma('page_count', { simple: true }));
  // SQLite refuses to grow past this with the same result as on a full disk.
  db.pragma(`max_page_count = ${before + 4}`);
  const large = posted(
    'plan',
    [...'123456'].map((page) => page.repeat(9000)),
  );
  await expect(store.post(large)).rejects.toMatchObject({ name: 'StoreFault', code: 'DISK_FULL' });
  expect(await store.posted('2026-05-16')).toBeNull();
  expect(db.prepare('SELECT count(*) AS n FROM posted_page').get()).toEqual({ n: 0 });
  expect(await store.faults()).toEqual([]);
  db.pragma('max_page_count = 100000');
  expect((await store.post(large))?.revision).toBe(1);
  await store.close();
});
