// The shape of the house: short files that say what they are, named by what they do.
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const src = resolve(import.meta.dirname, '../../src');
const names = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
const files = names.map((name) => ({ name, lines: readFileSync(join(src, name), 'utf8').trimEnd().split('\n') }));

test('every file opens with what it is', () => {
  expect(files.length).toBeGreaterThan(20);
  expect(files.filter(({ lines }) => !/^\/\/ \S/.test(lines[0] ?? '')).map(({ name }) => name)).toEqual([]);
});

test('no file is over 400 lines, and nine in ten are under 300', () => {
  expect(files.filter(({ lines }) => lines.length > 400).map(({ name }) => name)).toEqual([]);
  expect(files.filter(({ lines }) => lines.length >= 300).length).toBeLessThanOrEqual(files.length / 10);
});

test('no file is named after nothing', () => {
  const empty = /^(utils?|helpers?|common|misc|shared|stuff|lib|index)\./i;
  expect(names.filter((name) => empty.test(basename(name)))).toEqual([]);
});

test('no unfinished work and nothing silenced', () => {
  const unfinished = new RegExp(['TODO', 'FIXME', '@ts-ignore', '@ts-expect-error', 'as unknown as'].join('|'));
  expect(files.filter(({ lines }) => lines.some((line) => unfinished.test(line))).map(({ name }) => name)).toEqual([]);
});
