// A fresh clone makes itself ready: installs once, only when something is missing, all on standard error.
import { spawn, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';

const script = resolve(import.meta.dirname, '../../scripts/ready.mjs');
const installing = 'installing what package-lock.json names';

let house: string;
beforeEach(() => {
  // A project with one dependency that lies in a folder beside it: npm can install it without a network.
  house = mkdtempSync(join(tmpdir(), 'ready-'));
  mkdirSync(join(house, 'scripts'));
  mkdirSync(join(house, 'bowl'));
  cpSync(script, join(house, 'scripts/ready.mjs'));
  writeFileSync(join(house, 'bowl/package.json'), '{ "name": "bowl", "version": "1.0.0" }');
  writeFileSync(join(house, 'package.json'), '{ "name": "house", "version": "1.0.0", "dependencies": { "bowl": "file:bowl" } }');
  spawnSync('npm', ['install', '--package-lock-only', '--offline'], { cwd: house });
});
afterEach(() => rmSync(house, { recursive: true, force: true }));

function ready() {
  return spawnSync(process.execPath, ['scripts/ready.mjs'], { cwd: house, encoding: 'utf8' });
}

test('installs what is missing, tells it on standard error, and then has nothing to do', () => {
  const first = ready();
  expect(first).toMatchObject({ status: 0, stdout: '' });
  expect(first.stderr).toContain(installing);
  expect(existsSync(join(house, 'node_modules/bowl/package.json'))).toBe(true);
  expect(ready()).toMatchObject({ status: 0, stdout: '', stderr: '' });
});

test('a lockfile that is merely newer changes nothing; one that names something else does', () => {
  ready();
  const lockfile = join(house, 'package-lock.json');
  const later = new Date(Date.now() + 60_000);
  utimesSync(lockfile, later, later);
  expect(ready().stderr).toBe('');
  const lock = JSON.parse(readFileSync(lockfile, 'utf8'));
  writeFileSync(
    lockfile,
    JSON.stringify({ ...lock, packages: { ...lock.packages, 'node_modules/spoon': { version: '2.0.0' } } }),
  );
  utimesSync(lockfile, later, later);
  expect(ready().stderr).toContain(installing);
});

test('two that start at once install once', async () => {
  const runs = [0, 1].map(
    () =>
      new Promise<string>((done) => {
        const run = spawn(process.execPath, ['scripts/ready.mjs'], { cwd: house });
        let stderr = '';
        run.stderr.on('data', (text) => {
          stderr += text;
        });
        run.on('close', () => done(stderr));
      }),
  );
  const said = await Promise.all(runs);
  expect(said.filter((text) => text.includes(installing)).length).toBe(1);
  expect(existsSync(join(house, '.installing'))).toBe(false);
});

test('a turn left behind by a process that died is taken over', () => {
  mkdirSync(join(house, '.installing'));
  writeFileSync(join(house, '.installing/pid'), '999999999');
  expect(ready().status).toBe(0);
  expect(existsSync(join(house, 'node_modules/bowl'))).toBe(true);
});
