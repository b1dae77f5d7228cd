// `ovenward compare` on the command line: what it asks for, what it refuses, what it writes, how it ends.
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { realParts } from '../../src/cli/realParts.ts';
import { run } from '../../src/cli/run.ts';
import { comparisonSchema } from '../../src/model/comparison.ts';
import { shelfMorning } from '../questions/compare/shelfMorning.ts';
import { surroundingsFor } from './fakes.ts';

const folder = mkdtempSync(join(tmpdir(), 'comparing-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const morning = file('morning.json', JSON.stringify(shelfMorning(2, [2])));
const changes = file(
  'changes.yaml',
  'changes:\n  - title: A second proofer\n    patch: [{ op: add, path: /equipment/proofers/-, value: { id: second, shelves: 4, temperatureC: 30 } }]\n',
);

async function compared(...words: string[]) {
  const surroundings = surroundingsFor();
  const code = await run(['compare', ...words], realParts, surroundings);
  return { code, out: surroundings.out.text(), err: surroundings.err.text() };
}

test('tells the verdicts, writes answer and picture, and ends with 0 when all is on time', { timeout: 30_000 }, async () => {
  const out = join(folder, 'answer');
  const { code, out: text } = await compared(morning, '--changes', changes, '--effort', '40', '--out', out);
  expect(code).toBe(0);
  expect(text).toMatch(/^1 {2}A second proofer: it takes \d+ more trays of the day's mix \(proved\)/m);
  expect(readdirSync(out).sort()).toEqual(['comparison.json', 'comparison.svg']);
  const comparison = comparisonSchema.parse(JSON.parse(readFileSync(join(out, 'comparison.json'), 'utf8')));
  expect(comparison.days.map(({ title }) => title)).toEqual(['A second proofer']);
});

test('a sweep with too few shelves ends with 1; --json prints nothing else on standard output', { timeout: 30_000 }, async () => {
  const { code, out } = await compared(morning, '--sweep', '/equipment/proofers/0/shelves=1..2', '--effort', '40', '--json');
  expect(code).toBe(0);
  expect(comparisonSchema.parse(JSON.parse(out)).days.map(({ value }) => value)).toEqual([1, 2]);
  const full = file('full.json', JSON.stringify(shelfMorning(1, [6])));
  expect((await compared(full, '--sweep', '/equipment/proofers/0/shelves=1..2', '--effort', '40')).code).toBe(1);
});

test.each<[string, readonly string[], RegExp]>([
  ['neither changes nor a sweep', [], /give --changes or --sweep, and not both/],
  ['both', ['--changes', changes, '--sweep', '/a=1..2'], /give --changes or --sweep, and not both/],
  ['a range that does not rise', ['--sweep', '/equipment/proofers/0/shelves=4..4'], /The range rises/],
  ['no range', ['--sweep', '/equipment/proofers/0/shelves'], /Write a place and a range/],
  ['too many values', ['--sweep', '/equipment/proofers/0/shelves=1..500'], /at most 100 values/],
  ['a place that is not there', ['--sweep', '/equipment/proofer/0/shelves=1..5'], /NO_SUCH_PLACE.*Did you mean "proofers"/],
  ['a product nobody wants', ['--changes', changes, '--more-of', 'bagel'], /UNKNOWN_PRODUCT.*Name one of: roll/],
])('%s is refused', async (_, words, says) => {
  const { code, err } = await compared(morning, ...words);
  expect(code).toBe(2);
  expect(err).toMatch(says);
});
