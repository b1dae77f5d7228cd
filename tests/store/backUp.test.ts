// Copies of the store: whole while others write, one file, and never over the store or half there.
import {
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openStore } from '../../src/store/openStore.ts';
import type { Store } from '../../src/store/store.ts';
import { posted, scenario, work } from './samples.ts';

let folder: string;
let store: Store;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'backup-'));
  mkdirSync(join(folder, 'copies'));
  store = await openStore(join(folder, 'store.db'));
});
afterEach(async () => {
  await store.close();
  rmSync(folder, { recursive: true });
});

const inFolder = (name: string): string => join(folder, name);

/** Written in this process between two pieces of a copy, and by a second connection, as another process would. */
async function writeOn(other: Store, isOver: () => boolean): Promise<number> {
  let written = 0;
  for (; !isOver(); written++) {
    await store.addWork(work(`w${written}`), { key: `k${written}`, fingerprint: 'f', savedAt: 't', location: `/${written}` });
    await other.post(posted(`plan ${written}`, [`a${written}`, `b${written}`, `c${written}`]));
    await new Promise(setImmediate);
  }
  return written;
}

test('made while two connections write, it is of one moment, and holds all that was acknowledged before it began', async () => {
  for (let i = 0; i < 60; i++) await store.saveScenario(scenario(`${i} `.repeat(20_000)));
  await store.addWork(work('before'));
  const other = await openStore(inFolder('store.db'));
  let isOver = false;
  const copying = store.backup(inFolder('copies/a.db')).finally(() => {
    isOver = true;
  });
  const [written] = await Promise.all([writeOn(other, () => isOver), copying]);
  expect(written).toBeGreaterThan(1);
  await other.close();

  const copy = await openStore(inFolder('copies/a.db'));
  expect(await copy.faults()).toEqual([]);
  expect((await copy.scenario('saturday'))?.revision).toBe(60);
  expect(await copy.work('before')).not.toBeNull();
  const kept = (await copy.postedHistory('2026-05-16')).length;
  for (let i = 0; i < written; i++) {
    // A key and its work were written as one, so the copy has both or neither; a plan has all of its pages.
    expect((await copy.key(`k${i}`)) === null).toBe((await copy.work(`w${i}`)) === null);
    expect((await copy.posted('2026-05-16', i + 1))?.pages.length).toBe(i < kept ? 3 : undefined);
  }
  await copy.close();
});

test('it is one file that can be read without writing beside it, and takes the place of the copy before', async () => {
  await store.saveScenario(scenario('one'));
  await store.backup(inFolder('copies/a.db'));
  await store.saveScenario(scenario('two'));
  await store.backup(inFolder('copies/a.db'));
  expect(readdirSync(inFolder('copies'))).toEqual(['a.db']);
  const db = new Database(inFolder('copies/a.db'), { readonly: true });
  expect(db.pragma('journal_mode', { simple: true })).toBe('delete');
  expect(db.prepare('SELECT text FROM scenario ORDER BY revision').pluck().all()).toEqual(['one', 'two']);
  db.close();
  expect(readdirSync(inFolder('copies'))).toEqual(['a.db']);
});

test('a store in memory can be copied too, and closing waits for the copy', async () => {
  const memory = await openStore(':memory:');
  await memory.saveScenario(scenario('one '.repeat(500_000)));
  const copying = memory.backup(inFolder('copies/a.db'));
  await memory.close();
  await copying;
  const copy = await openStore(inFolder('copies/a.db'));
  expect((await copy.scenario('saturday'))?.revision).toBe(1);
  await copy.close();
});

test('never over the store, by whatever name', async () => {
  await store.saveScenario(scenario('one'));
  symlinkSync(inFolder('store.db'), inFolder('copies/link.db'));
  linkSync(inFolder('store.db'), inFolder('copies/second-name.db'));
  symlinkSync(folder, inFolder('copies/way-round'));
  const names = ['store.db', 'store.db-wal', 'store.db-shm', 'store.db-journal', 'copies/../store.db'];
  for (const name of [...names, 'copies/link.db', 'copies/second-name.db', 'copies/way-round/store.db'])
    await expect(store.backup(inFolder(name)), name).rejects.toMatchObject({ name: 'StoreFault', code: 'NO_BACKUP_THERE' });
  expect((await store.saveScenario(scenario('two')))?.revision).toBe(2);
  expect(await store.faults()).toEqual([]);
});

test.each([
  ['a folder', 'copies'],
  ['in a folder that is not there', 'gone/a.db'],
  ['beside the log of a copy that is open', 'open.db'],
])('not where it cannot stand: %s', async (_, name) => {
  writeFileSync(inFolder('open.db'), 'a copy');
  writeFileSync(inFolder('open.db-wal'), 'its log');
  await expect(store.backup(inFolder(name))).rejects.toMatchObject({ name: 'StoreFault', code: 'NO_BACKUP_THERE' });
  expect(readFileSync(inFolder('open.db'), 'utf8')).toBe('a copy');
  expect(existsSync(inFolder('gone'))).toBe(false);
});

test('a copy that fails leaves the one before, and nothing beside it', async () => {
  await store.backup(inFolder('copies/a.db'));
  const before = readFileSync(inFolder('copies/a.db'));
  renameSync(inFolder('store.db'), inFolder('away.db'));
  await expect(store.backup(inFolder('copies/a.db'))).rejects.toMatchObject({ name: 'StoreFault', code: 'CANNOT_OPEN' });
  // What lies there now can be opened and not be read; with its log beside it, it could.
  for (const end of ['-wal', '-shm']) rmSync(inFolder(`store.db${end}`), { force: true });
  writeFileSync(inFolder('store.db'), 'no database at all, and long enough to have all of a header, were it one '.repeat(2));
  await expect(store.backup(inFolder('copies/a.db'))).rejects.toMatchObject({ name: 'StoreFault', code: 'NOT_A_STORE' });
  expect(readFileSync(inFolder('copies/a.db')).equals(before)).toBe(true);
  expect(readdirSync(inFolder('copies'))).toEqual(['a.db']);
});
