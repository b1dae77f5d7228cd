// The native part of the store is built where it is missing, once, told on standard error; and a build that fails says what to do.
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';

const scripts = resolve(import.meta.dirname, '../../scripts');
const building = 'fetching or building the native part of better-sqlite3';
const native = 'node_modules/better-sqlite3/build/Release/better_sqlite3.node';

let house: string;
beforeEach(() => {
  house = mkdtempSync(join(tmpdir(), 'ready-store-'));
  mkdirSync(join(house, 'scripts'));
  for (const name of ['ready.mjs', 'readyStore.mjs']) cpSync(join(scripts, name), join(house, 'scripts', name));
  // As in a clone: scripts of packages are off.
  writeFileSync(join(house, '.npmrc'), 'ignore-scripts=true\n');
  writeFileSync(join(house, 'package.json'), '{ "name": "house", "version": "1.0.0" }');
});
afterEach(() => rmSync(house, { recursive: true, force: true }));

/** A package of this name whose install script is this. */
function putPackage(install: string): void {
  mkdirSync(join(house, 'node_modules/better-sqlite3'), { recursive: true });
  writeFileSync(
    join(house, 'node_modules/better-sqlite3/package.json'),
    JSON.stringify({ name: 'better-sqlite3', version: '1.0.0', scripts: { install } }),
  );
}

function readyStore() {
  const words = [
    '--input-type=module',
    '-e',
    "import { readyStore } from './scripts/readyStore.mjs'; console.log(readyStore());",
  ];
  return spawnSync(process.execPath, words, { cwd: house, encoding: 'utf8' });
}

test('builds what is missing, tells it on standard error, and then has nothing to do', () => {
  putPackage('mkdir -p build/Release && echo built > build/Release/better_sqlite3.node');
  const first = readyStore();
  expect(first.stderr).toContain(building);
  expect(first).toMatchObject({ status: 0, stdout: 'true\n' });
  expect(readFileSync(join(house, native), 'utf8')).toBe('built\n');
  expect(readyStore()).toMatchObject({ status: 0, stdout: 'false\n', stderr: '' });
});

test.each([
  ['that fails', 'exit 7'],
  ['that builds nothing', 'exit 0'],
])('a build %s ends with 3, says what to run, and leaves the turn to others', (_, install) => {
  putPackage(install);
  const { status, stdout, stderr } = readyStore();
  expect({ status, stdout }).toEqual({ status: 3, stdout: '' });
  expect(stderr).toContain('npm rebuild better-sqlite3 --ignore-scripts=false');
  expect(existsSync(join(house, '.installing'))).toBe(false);
});

test.each([
  ['serve', true],
  ['post', true],
  ['backup', true],
  ['plan', false],
  ['--help', false],
])('ovenward %s: the native part is seen to: %s', (word, isAsked) => {
  // The starter itself, among scripts that only say that they were asked.
  cpSync(join(scripts, 'ovenward.mjs'), join(house, 'scripts/ovenward.mjs'));
  for (const folder of ['src', 'dist/program']) mkdirSync(join(house, folder), { recursive: true });
  writeFileSync(join(house, 'scripts/ready.mjs'), 'export const ready = () => false;\n');
  writeFileSync(join(house, 'scripts/build.mjs'), 'export const build = () => 0;\n');
  writeFileSync(
    join(house, 'scripts/readyStore.mjs'),
    "export function readyStore() {\n  console.log('asked');\n  return false;\n}\n",
  );
  writeFileSync(join(house, 'package.json'), '{ "type": "module" }');
  writeFileSync(join(house, 'dist/program/main.js'), "export const main = () => console.log('started');\n");
  const { stdout } = spawnSync(process.execPath, ['scripts/ovenward.mjs', word], { cwd: house, encoding: 'utf8' });
  expect(stdout).toBe(isAsked ? 'asked\nstarted\n' : 'started\n');
});
