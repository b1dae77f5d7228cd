// The store in a thread of its own: the same answers, the same faults, and an event loop that goes on meanwhile.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openStore } from '../../src/store/openStore.ts';
import { openStoreThread } from '../../src/store/openStoreThread.ts';
import type { Store } from '../../src/store/store.ts';
import { StoreFault } from '../../src/store/storeFault.ts';
import { allOf, anyCall } from './anyCall.ts';
import { memoryStore } from './memoryStore.ts';
import { outcome } from './outcome.ts';
import { posted, scenario } from './samples.ts';

let folder: string;
const faults: unknown[] = [];
const report = (fault: unknown): void => {
  faults.push(fault);
};

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'store-'));
  faults.length = 0;
});
afterEach(() => {
  rmSync(folder, { recursive: true });
  expect(faults).toEqual([]);
});

test('answers every row of calls as plain lists do', async () => {
  let count = 0;
  const calls = fc.array(anyCall, { minLength: 20, maxLength: 60, size: 'max' });
  const property = fc.asyncProperty(calls, async (row) => {
    const store = await openStoreThread(join(folder, `${++count}.db`), { report });
    const model = memoryStore();
    try {
      for (const call of row) expect(await outcome(call(store))).toEqual(await outcome(call(model)));
      expect(await allOf(store)).toEqual(await allOf(model));
    } finally {
      await store.close();
    }
  });
  await fc.assert(property, { numRuns: 3 });
});

test('does calls in the order they are made, without waiting for each', async () => {
  const store = await openStoreThread(join(folder, 'a.db'), { report });
  const saved = await Promise.all(['a', 'b', 'c'].map((text) => store.saveScenario(scenario(text))));
  expect(saved.map((record) => [record?.revision, record?.text])).toEqual([
    [1, 'a'],
    [2, 'b'],
    [3, 'c'],
  ]);
  await store.close();
});

test('goes on while a backup is made, and the backup is whole', async () => {
  const store = await openStoreThread(join(folder, 'a.db'), { report });
  await store.post(posted('plan'));
  const [, saved] = await Promise.all([store.backup(join(folder, 'copy.db')), store.saveScenario(scenario('one'))]);
  expect(saved?.revision).toBe(1);
  await store.close();
  const copy = await openStore(join(folder, 'copy.db'));
  expect((await copy.posted(posted('plan').date))?.plan).toBe('plan');
  await copy.close();
});

test('rejects with the fault the store had, code and sentence', async () => {
  const file = join(folder, 'foreign.db');
  writeFileSync(file, 'no database at all');
  const opening = openStoreThread(file, { report });
  await expect(opening).rejects.toBeInstanceOf(StoreFault);
  const [here, there] = await Promise.all(
    [openStore(file), opening].map((one) =>
      one.then(String, (fault: unknown) => (fault instanceof StoreFault ? [fault.code, fault.message] : fault)),
    ),
  );
  expect(there).toEqual(here);
  const store: Store = await openStoreThread(join(folder, 'a.db'), { report });
  await expect(store.changeWork('nobody', { state: 'done' })).rejects.toMatchObject({ code: 'REFUSED' });
  await store.close();
});

test('closed: ready no more, every call rejects, closing again is nothing', async () => {
  const store = await openStoreThread(join(folder, 'a.db'), { report });
  expect(await store.isReady()).toBe(true);
  await Promise.all([store.close(), store.close()]);
  expect(await store.isReady()).toBe(false);
  await expect(store.scenarios()).rejects.toMatchObject({ code: 'CLOSED' });
});
