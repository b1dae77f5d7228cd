// Clocks and chance live in few files and are handed in from there: the same scenario, seed and effort give the same bytes.
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const src = resolve(import.meta.dirname, '../../src');
const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));

/** The only files that may ask what time it is. */
const CLOCK_FILES = ['cli/clock.ts', 'api/jobs/workThread.ts'];
const CLOCK =
  /\bDate\.now\b|\bnew Date\(\s*\)|\bDate\(\s*\)|\bperformance\s*\.|\bTemporal\.Now\b|\bprocess\.(hrtime|uptime)\b|\bperf_hooks\b/;
/** Chance comes from a seed; the platform's own has none. */
const CHANCE = /\bMath\.random\b|\brandom(UUID|Int|Bytes|FillSync)\b|\bgetRandomValues\b/;
/** The only files that may have it: names for work and requests that nobody can guess. Nothing is decided by them. */
const NAME_FILES = ['api/jobs/jobBook.ts', 'api/telling/requestId.ts'];
const SEEDED = /from 'pure-rand/;

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '$1');
}

function filesWith(pattern: RegExp): readonly string[] {
  return files.filter((name) => pattern.test(withoutComments(readFileSync(join(src, name), 'utf8'))));
}

test.each([
  ['const t = Date.now();', CLOCK],
  ['const t = new Date();', CLOCK],
  ['const t = performance.now();', CLOCK],
  ['const x = Math.random();', CHANCE],
  ["import { randomInt } from 'node:crypto';", CHANCE],
])('%s is seen', (line, pattern) => {
  expect(withoutComments(line)).toMatch(pattern);
});

test('nobody but the clock files asks what time it is', () => {
  expect(filesWith(CLOCK).filter((name) => !CLOCK_FILES.includes(name))).toEqual([]);
});

test('nobody throws dice without a seed; with one, a file of the search and a file of the simulated mornings', () => {
  expect(filesWith(CHANCE).filter((name) => !NAME_FILES.includes(name))).toEqual([]);
  expect([...filesWith(SEEDED)].sort()).toEqual(['questions/howSure/chance.ts', 'solver/random.ts']);
});
