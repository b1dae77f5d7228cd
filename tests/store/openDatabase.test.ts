// Which files are opened as a store, how they are written from then on, and that a file of somebody else is never changed.
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { APPLICATION_ID, openDatabase } from '../../src/store/openDatabase.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'open-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

function simple(db: Database.Database, name: string): unknown {
  return db.pragma(name, { simple: true });
}

test('writes ahead into a log, waits for the disk at every commit, keeps references', () => {
  const db = openDatabase(join(folder, 'a.db'), { busyMs: 123, checkpointPages: 7 });
  const asked = ['journal_mode', 'synchronous', 'foreign_keys', 'trusted_schema', 'busy_timeout', 'wal_autocheckpoint'];
  // synchronous 2 is FULL (sqlite.org, "PRAGMA synchronous").
  expect(asked.map((name) => simple(db, name))).toEqual(['wal', 2, 1, 0, 123, 7]);
  db.close();
});

test('the file itself says whose it is, also while the log still holds everything else', () => {
  const file = join(folder, 'a.db');
  const db = openDatabase(file);
  expect(readFileSync(file).readUInt32BE(68)).toBe(APPLICATION_ID);
  db.close();
  expect(readdirSync(folder)).toEqual(['a.db']);
  openDatabase(file).close();
});

test('an empty file becomes a store', () => {
  const file = join(folder, 'a.db');
  writeFileSync(file, '');
  const db = openDatabase(file);
  expect(simple(db, 'application_id')).toBe(APPLICATION_ID);
  db.close();
});

test('a database of another program is refused and not changed, the log of its killed writer neither', () => {
  const file = join(folder, 'theirs.db');
  const theirs = new Database(file);
  theirs.pragma('journal_mode = WAL');
  theirs.exec("CREATE TABLE till (sold TEXT); INSERT INTO till VALUES ('bun')");
  // Copied while open, so that the log is left as a killed program leaves it.
  const names = ['theirs.db', 'theirs.db-wal'];
  mkdirSync(join(folder, 'left'));
  for (const name of names) writeFileSync(join(folder, 'left', name), readFileSync(join(folder, name)));
  theirs.close();
  const bytes = () => names.map((name) => readFileSync(join(folder, 'left', name)).toString('base64'));
  const before = bytes();
  expect(() => openDatabase(join(folder, 'left/theirs.db'))).toThrow(
    expect.objectContaining({ name: 'StoreFault', code: 'NOT_A_STORE' }),
  );
  expect(bytes()).toEqual(before);
  expect(readdirSync(join(folder, 'left')).sort()).toEqual(names);
});

test.each([
  [
    'a text',
    Buffer.from('a text that is no database, and longer than one hundred bytes, so that it has room for all of a header ...'),
  ],
  ['a few bytes', Buffer.from('SQLite format 3\0')],
  ['a hundred zeros', Buffer.alloc(100)],
])('%s is refused and not changed', (_, content) => {
  const file = join(folder, 'a');
  writeFileSync(file, content);
  expect(() => openDatabase(file)).toThrow(expect.objectContaining({ name: 'StoreFault', code: 'NOT_A_STORE' }));
  expect(readFileSync(file).equals(content)).toBe(true);
});

test.each([
  ['a folder', '.'],
  ['a file in a folder that is not there', 'gone/a.db'],
  ['a file in a file', 'file/a.db'],
])('%s cannot be opened, and the sentence says which', (_, name) => {
  writeFileSync(join(folder, 'file'), 'x');
  const file = join(folder, name);
  expect(() => openDatabase(file)).toThrow(
    expect.objectContaining({ code: 'CANNOT_OPEN', message: expect.stringContaining(file) }),
  );
  expect(existsSync(join(folder, 'gone'))).toBe(false);
});

test('no name is no store, and spaces around a name are not part of it', () => {
  for (const name of ['', '  ']) expect(() => openDatabase(name)).toThrow(expect.objectContaining({ code: 'CANNOT_OPEN' }));
  openDatabase(` ${join(folder, 'a.db')} `).close();
  expect(readdirSync(folder)).toEqual(['a.db']);
});

// Rights would not do: root may write everywhere.
test('a store whose log cannot be written is refused', () => {
  const file = join(folder, 'a.db');
  openDatabase(file).close();
  mkdirSync(`${file}-wal`);
  expect(() => openDatabase(file)).toThrow(expect.objectContaining({ code: 'CANNOT_OPEN' }));
});
