// dist follows src: what changed is built, what did not is left, a fault in a source is named and what was built before stays.
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
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

test('parts a running service may still load stay for a week, and no longer', () => {
  build(src, dist, entries);
  for (const [name, days] of [
    ['part-OLD.js', 8],
    ['part-NEW.js', 6],
  ] as const) {
    writeFileSync(dist + name, '');
    const then = Date.now() / 1000 - days * 24 * 3600;
    utimesSync(dist + name, then, then);
  }
  writeFileSync(`${src}later.ts`, 'export const later = 8;\n');
  utimesSync(`${src}later.ts`, 1000, 1000);
  build(src, dist, entries);
  expect(existsSync(`${dist}part-OLD.js`)).toBe(false);
  expect(existsSync(`${dist}part-NEW.js`)).toBe(true);
});

test('a file that cannot be read as TypeScript is named with its line, and what was built before stays', async () => {
  build(src, dist, entries);
  writeFileSync(`${src}deep/b.ts`, '\nexport const = ;\n');
  expect(() => build(src, dist, entries)).toThrow(/deep\/b\.ts:2:13/);
  expect((await builtAs('a.js')).a).toBe(2);
  expect(() => build(src, dist, entries)).toThrow(/deep\/b\.ts:2:13/);
});

test('the licence of every package built in stands beside the program', () => {
  build();
  const program = resolve(import.meta.dirname, '../../dist/program');
  const text = readFileSync(join(program, 'LICENCES.txt'), 'utf8');
  for (const name of ['commander', 'picocolors', 'pure-rand', 'temporal-polyfill', 'yaml', 'zod'])
    expect(text).toMatch(new RegExp(`^${name} \\d.*\n\n(.|\n)*?(MIT|ISC|Permission)`, 'm'));
});
