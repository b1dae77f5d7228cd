// Every earlier store becomes one of today with what it holds; a later one, and one that cannot be brought up, stays as it is.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { migrate } from '../../src/store/migrate.ts';
import { MIGRATIONS } from '../../src/store/migrations.ts';
import { openDatabase } from '../../src/store/openDatabase.ts';
import { openStore } from '../../src/store/openStore.ts';
import { olderStore, ROWS } from './olderStore.ts';
import { posted, scenario } from './samples.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'migrate-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

test('the steps are numbered from 1 without a gap, and every step has rows to try it with', () => {
  expect(MIGRATIONS.map(({ to }) => to)).toEqual(MIGRATIONS.map((_, index) => index + 1));
  expect(ROWS.map(({ since }) => since)).toEqual(MIGRATIONS.map(({ to }) => to));
});

test.each([0, ...MIGRATIONS.map(({ to }) => to)])('a store of version %i is brought up with all it holds', async (version) => {
  const file = join(folder, 'a.db');
  olderStore(file, version);
  const store = await openStore(file);
  for (const { since, found } of ROWS) expect(await found(store)).toBe(since <= version);
  expect(await store.faults()).toEqual([]);
  expect((await store.saveScenario(scenario('new', 'new')))?.revision).toBe(1);
  expect((await store.post(posted('plan', ['<svg/>'], '2030-01-01')))?.revision).toBe(1);
  await store.close();
  const db = openDatabase(file);
  expect(db.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length);
  const [made, fresh] = [db, openDatabase(':memory:')].map((each) =>
    each.prepare('SELECT type, name, sql FROM sqlite_schema ORDER BY name').all(),
  );
  expect(made).toEqual(fresh);
  db.close();
});

test('a newer store is refused, and not a byte of it changes', async () => {
  const file = join(folder, 'a.db');
  const db = openDatabase(file);
  db.pragma(`user_version = ${MIGRATIONS.length + 1}`);
  db.close();
  const before = readFileSync(file);
  await expect(openStore(file)).rejects.toMatchObject({ name: 'StoreFault', code: 'NEWER_STORE' });
  await expect(openStore(file)).rejects.toThrow(/of version 5, this program knows versions up to 4/);
  expect(readFileSync(file).equals(before)).toBe(true);
});

test('when a step fails, none of the steps has been taken', () => {
  const db = openDatabase(':memory:');
  const version = MIGRATIONS.length;
  const broken = [
    ...MIGRATIONS,
    { to: version + 1, does: 'a table', sql: 'CREATE TABLE extra (a TEXT) STRICT' },
    { to: version + 2, does: 'nonsense', sql: 'CREATE TABLE other (b TEXT) STRICT; CREATE NONSENSE' },
  ];
  expect(() => migrate(db, broken)).toThrow(/NONSENSE/);
  expect(db.pragma('user_version', { simple: true })).toBe(version);
  expect(db.prepare("SELECT name FROM sqlite_schema WHERE name IN ('extra', 'other')").all()).toEqual([]);
  migrate(db, broken.slice(0, -1));
  expect(db.pragma('user_version', { simple: true })).toBe(version + 1);
  db.close();
});
