// What SQLite, better-sqlite3 and Node throw, as a code and a sentence; and a program whose native part was never built.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { faultOf } from '../../src/store/faultOf.ts';
import { STORE_FAULT_CODES, StoreFault } from '../../src/store/storeFault.ts';

const root = resolve(import.meta.dirname, '../..');

test.each([
  ['SQLITE_BUSY', 'LOCKED'],
  ['SQLITE_BUSY_SNAPSHOT', 'LOCKED'],
  ['SQLITE_FULL', 'DISK_FULL'],
  ['SQLITE_IOERR_FSYNC', 'DISK_FAULT'],
  ['SQLITE_CORRUPT_INDEX', 'DAMAGED'],
  ['SQLITE_READONLY_DIRECTORY', 'CANNOT_OPEN'],
  ['SQLITE_NOTADB', 'NOT_A_STORE'],
  ['SQLITE_CONSTRAINT_CHECK', 'REFUSED'],
])('%s is %s', (result, code) => {
  const error = new Database.SqliteError('says', result);
  const fault = faultOf(error, '/bakery/store.db');
  expect(fault).toMatchObject({ name: 'StoreFault', code, message: expect.stringContaining('/bakery/store.db'), cause: error });
  expect(STORE_FAULT_CODES).toContain(code);
});

test('a fault stays the fault it is, and what is none of the store is handed on', () => {
  const others = [new StoreFault('CLOSED', 'closed'), new RangeError('ours'), 'a text'];
  expect(others.map((error) => faultOf(error, 'file'))).toEqual(others);
});

test('where the native part was never built, opening says how to build it', () => {
  const house = mkdtempSync(join(tmpdir(), 'unbuilt-'));
  cpSync(join(root, 'src/store'), join(house, 'src/store'), { recursive: true });
  writeFileSync(join(house, 'package.json'), '{ "type": "module" }');
  mkdirSync(join(house, 'node_modules'));
  for (const name of ['better-sqlite3/package.json', 'better-sqlite3/lib', 'bindings', 'file-uri-to-path'])
    cpSync(join(root, 'node_modules', name), join(house, 'node_modules', name), { recursive: true });
  writeFileSync(
    join(house, 'opening.ts'),
    "import { openStore } from './src/store/openStore.ts';\nawait openStore(':memory:').catch(({ code, message }) => console.log(code, message));\n",
  );
  const { stdout, stderr } = spawnSync(process.execPath, ['--import', import.meta.resolve('tsx'), join(house, 'opening.ts')], {
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  expect(stdout).toContain('NATIVE_MISSING ');
  expect(stdout).toContain('npm rebuild better-sqlite3');
  rmSync(house, { recursive: true });
});
