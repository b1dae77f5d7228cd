// dist follows src: what changed is built, what did not is left, what went away goes; a file that is no TypeScript is named.
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { build } from '../../scripts/build.mjs';

let src: string;
let dist: string;
let house: string;
beforeEach(() => {
  house = mkdtempSync(join(tmpdir(), 'build-'));
  src = `${house}/src/`;
  dist = `${house}/dist/`;
  mkdirSync(`${src}deep`, { recursive: true });
  mkdirSync(dist);
  writeFileSync(`${house}/package.json`, '{ "type": "module" }');
  writeFileSync(
    `${src}a.ts`,
    "import { b } from './deep/b.ts';\nimport type { Missing } from './types.ts';\nexport const a: number | Missing = b + 1;\n",
  );
  writeFileSync(`${src}deep/b.ts`, 'export const b: number = 1;\n');
  writeFileSync(`${src}deep/page.css`, 'p {}');
});
afterEach(() => rmSync(house, { recursive: true }));

test('builds what runs on plain Node, with maps, and copies what is not TypeScript', async () => {
  expect(build(src, dist)).toBe(3);
  expect((await import(pathToFileURL(`${dist}a.js`).href)).a).toBe(2);
  expect(readdirSync(`${dist}deep`).sort()).toEqual(['b.js', 'b.js.map', 'page.css']);
  expect(JSON.parse(readFileSync(`${dist}a.js.map`, 'utf8')).sources).toEqual([pathToFileURL(`${src}a.ts`).href]);
});

test('builds again only what changed, also when an older file came back', () => {
  build(src, dist);
  expect(build(src, dist)).toBe(0);
  writeFileSync(`${src}deep/b.ts`, 'export const b = 5;\n');
  utimesSync(`${src}deep/b.ts`, 1000, 1000);
  expect(build(src, dist)).toBe(1);
  expect(readFileSync(`${dist}deep/b.js`, 'utf8')).toContain('b = 5');
  expect(statSync(`${dist}deep/b.js`).mtimeMs).toBe(1_000_000);
});

test('what went away in src goes away in dist with the next build', () => {
  build(src, dist);
  rmSync(`${src}deep/page.css`);
  writeFileSync(`${src}a.ts`, 'export const a = 1;\n');
  utimesSync(`${src}a.ts`, 1000, 1000);
  build(src, dist);
  expect(readdirSync(`${dist}deep`).sort()).toEqual(['b.js', 'b.js.map']);
});

test('a file that cannot be read as TypeScript is named, and nothing stands in its place', () => {
  writeFileSync(`${src}deep/b.ts`, 'export const = ;\n');
  expect(() => build(src, dist)).toThrow(`${src}deep/b.ts`);
  expect(existsSync(`${dist}deep/b.js`)).toBe(false);
});
