// dist follows src: what changed is built, what did not is left, a fault in a source is named and what was built before stays.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { build } from '../../scripts/build.mjs';

let src: string;
let dist: string;
let house: string;
const entries = ['a.ts', 'deep/thread.ts'];

beforeEach(() => {
  house = mkdtempSync(join(tmpdir(), 'build-'));
  src = `${house}/src/`;
  dist = `${house}/dist/`;
  mkdirSync(`${src}deep`, { recursive: true });
  writeFileSync(`${house}/package.json`, '{ "type": "module" }');
  writeFileSync(
    `${src}a.ts`,
    `import { b } from './deep/b.ts';
import type { Missing } from './types.ts';
export const a: number | Missing = b + 1;
export const later = async (): Promise<number> => (await import('./later.ts')).later;
`,
  );
  writeFileSync(`${src}deep/b.ts`, 'export const b: number = 1;\n');
  writeFileSync(`${src}deep/thread.ts`, "import { b } from './b.ts';\nexport const thread = b + 10;\n");
  writeFileSync(`${src}later.ts`, 'export const later = 7;\n');
});
afterEach(() => rmSync(house, { recursive: true }));

const builtAs = (name: string) => import(`${pathToFileURL(dist + name).href}?${Math.random()}`);

test('builds what runs on plain Node, entries in one folder, with maps, and loads later what is asked for later', async () => {
  expect(build(src, dist, entries)).toBe(true);
  const { a, later } = await builtAs('a.js');
  expect(a).toBe(2);
  expect(await later()).toBe(7);
  expect((await builtAs('thread.js')).thread).toBe(11);
  const mapped = readdirSync(dist)
    .filter((name) => name.endsWith('.map'))
    .flatMap((name) => JSON.parse(readFileSync(dist + name, 'utf8')).sources.map((source: string) => resolve(dist, source)));
  expect(mapped).toContain(`${src}a.ts`);
});

test('builds again only when something changed, also when an older file came back', async () => {
  build(src, dist, entries);
  expect(build(src, dist, entries)).toBe(false);
  writeFileSync(`${src}deep/b.ts`, 'export const b = 5;\n');
  utimesSync(`${src}deep/b.ts`, 1000, 1000);
  expect(build(src, dist, entries)).toBe(true);
  expect((await builtAs('a.js')).a).toBe(6);
  expect(build(src, dist, entries)).toBe(false);
  rmSync(`${src}deep/thread.ts`);
  expect(build(src, dist, ['a.ts'])).toBe(true);
});

test('what a command that is just starting may still read stays for an hour, and no longer', () => {
  build(src, dist, entries);
  for (const [name, minutes] of [
    ['command-OLD.cjs', 61],
    ['command-NEW.cjs', 59],
  ] as const) {
    writeFileSync(dist + name, '');
    const then = Date.now() / 1000 - minutes * 60;
    utimesSync(dist + name, then, then);
  }
  writeFileSync(`${src}later.ts`, 'export const later = 8;\n');
  utimesSync(`${src}later.ts`, 1000, 1000);
  build(src, dist, entries);
  expect(existsSync(`${dist}command-OLD.cjs`)).toBe(false);
  expect(existsSync(`${dist}command-NEW.cjs`)).toBe(true);
});

test('a file that cannot be read as TypeScript is named with its line, and what was built before stays', async () => {
  build(src, dist, entries);
  writeFileSync(`${src}deep/b.ts`, '\nexport const = ;\n');
  expect(() => build(src, dist, entries)).toThrow(/deep\/b\.ts:2:13/);
  expect((await builtAs('a.js')).a).toBe(2);
  expect(() => build(src, dist, entries)).toThrow(/deep\/b\.ts:2:13/);
});

describe('the command', () => {
  const command = ['cli/main.ts'];
  const start = (...words: string[]) => spawnSync(process.execPath, [`${house}/start.mjs`, ...words], { encoding: 'utf8' });
  const caches = () => readdirSync(dist).filter((name) => name.endsWith('.cache'));

  beforeEach(() => {
    mkdirSync(`${src}cli`);
    writeFileSync(
      `${src}cli/main.ts`,
      "export const main = async () => console.log((await import('../later.ts')).later, import.meta.url.endsWith('.cjs'));\n",
    );
    writeFileSync(`${house}/start.mjs`, "import { main } from './dist/main.js';\nawait main();\n");
    build(src, dist, command);
  });

  test('is one file with main.js to load it; what a run that plans has compiled is kept, and used', () => {
    expect(start('check').stdout).toBe('7 true\n');
    expect(caches()).toEqual([]);
    expect(start('plan').stdout).toBe('7 true\n');
    expect(caches()).toHaveLength(1);
    expect(start('plan')).toMatchObject({ stdout: '7 true\n', stderr: '', status: 0 });
  });

  test('runs as well where what was kept is of another program, and keeps its own instead', () => {
    start('plan');
    const file = dist + (caches()[0] as string);
    const whole = readFileSync(file);
    writeFileSync(file, whole.subarray(0, 100));
    expect(start('plan')).toMatchObject({ stdout: '7 true\n', stderr: '', status: 0 });
    expect(readFileSync(file).length).toBeGreaterThan(100);
  });

  test('runs what was built last, whatever was kept before', () => {
    start('plan');
    writeFileSync(`${src}later.ts`, 'export const later = 8;\n');
    utimesSync(`${src}later.ts`, 1000, 1000);
    build(src, dist, command);
    expect(start('plan').stdout).toBe('8 true\n');
  });

  test('names the lines of the sources in faults, when it is debugged', () => {
    writeFileSync(`${src}later.ts`, "export const later = 7;\n\nthrow new Error('too late');\n");
    utimesSync(`${src}later.ts`, 1000, 1000);
    build(src, dist, command);
    const env = { ...process.env, OVENWARD_DEBUG: '1' };
    const { status, stderr } = spawnSync(process.execPath, [`${house}/start.mjs`, 'plan'], { encoding: 'utf8', env });
    expect(status).toBe(1);
    expect(stderr).toContain(`${src}later.ts:3:7`);
  });

  test('runs where nothing can be kept', () => {
    // A folder in the place of what would be written.
    start('plan');
    const name = caches()[0] as string;
    rmSync(dist + name);
    mkdirSync(`${dist}${name}`);
    expect(start('plan')).toMatchObject({ stdout: '7 true\n', stderr: '', status: 0 });
  });
});

test('the licence of every package built in stands beside the program', () => {
  build();
  const program = resolve(import.meta.dirname, '../../dist/program');
  const text = readFileSync(join(program, 'LICENCES.txt'), 'utf8');
  for (const name of ['commander', 'picocolors', 'pure-rand', 'temporal-polyfill', 'yaml', 'zod'])
    expect(text).toMatch(new RegExp(`^${name} \\d.*\n\n(.|\n)*?(MIT|ISC|Permission)`, 'm'));
});
