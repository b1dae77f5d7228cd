// `check` and `draw` around a judge and a pen that answer at once.
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Parts } from '../../src/cli/parts.ts';
import { run } from '../../src/cli/run.ts';
import { partsFor, surroundingsFor } from './fakes.ts';

let folder: string;
let day: string;
let plan: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'checking-'));
  day = join(folder, 'day.yaml');
  plan = join(folder, 'plan.json');
  writeFileSync(day, 'a day');
  writeFileSync(plan, 'a plan');
});
afterEach(() => rmSync(folder, { recursive: true }));

async function ovenward(words: readonly string[], parts: Partial<Parts> = {}) {
  const surroundings = surroundingsFor();
  const code = await run(words, async () => partsFor(parts), surroundings);
  return { code, out: surroundings.out.text(), err: surroundings.err.text() };
}

const { figures } = partsFor().judge(...judged());
function judged(): Parameters<Parts['judge']> {
  const scenario = partsFor().readScenario('');
  if (!scenario.ok) throw new Error('the fake scenario cannot be read');
  return [scenario.value, { tasks: [], decks: [] }];
}

const breaches: ReturnType<Parts['judge']>['breaches'] = [
  {
    rule: 'SHELF_CAPACITY',
    says: 'eleven trays on ten places',
    doThis: 'move one',
    taskIds: ['a', 'b', 'c', 'd', 'e'],
    minute: 130,
  },
  { rule: 'SCORE', says: 'the price is 5, not 4', doThis: 'recount', taskIds: [] },
];

test('no breach: exit code 0 and the recounted figures', async () => {
  const { code, out, err } = await ovenward(['check', day, plan]);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toBe(
    'No breach: the plan keeps every rule.\nRecounted: price 1, start 03:10, last ready 06:20, 0 trays left out, trays late by 0 min in all, 0 temperature changes.\n',
  );
});

test('breaches: exit code 1, each with its minute, its rule, what to do and its tasks', async () => {
  const { code, out } = await ovenward(['check', day, plan], { judge: () => ({ breaches, figures }) });
  expect(code).toBe(1);
  expect(out).toContain('05:10  SHELF_CAPACITY  eleven trays on ten places / move one\n  a, b, c, d and 1 more\n');
  expect(out).toContain('\nSCORE  the price is 5, not 4 / recount\n2 breaches.\n');
});

test('--json: the verdict alone on standard output', async () => {
  const { code, out, err } = await ovenward(['check', day, plan, '--json'], { judge: () => ({ breaches, figures }) });
  expect(code).toBe(1);
  expect(JSON.parse(out)).toEqual({ breaches, figures });
  expect(err).toContain('2 breaches.');
});

test('errors of a plan name the plan; both from standard input is refused', async () => {
  const readWrittenPlan: Parts['readWrittenPlan'] = () => ({
    ok: false,
    errors: [{ code: 'X', path: '', says: 'no', doThis: 'yes' }],
  });
  expect((await ovenward(['check', day, plan], { readWrittenPlan })).err).toBe(`${plan}  X  no / yes\n`);
  const twice = await ovenward(['check', '-', '-']);
  expect(twice.code).toBe(2);
  expect(twice.err).toContain('STDIN_TWICE');
});

test('draw writes every page and names it; the plan itself is never overwritten', async () => {
  const drawPlan = () => ['<svg>1</svg>', '<svg>2</svg>'];
  const { code, out } = await ovenward(['draw', plan, '--out', join(folder, 'wall')], { drawPlan });
  expect(code).toBe(0);
  expect(out).toBe(`${join(folder, 'wall/sheet.svg')}\n${join(folder, 'wall/sheet-2.svg')}\n`);
  expect(readdirSync(join(folder, 'wall')).sort()).toEqual(['sheet-2.svg', 'sheet.svg']);
  expect((await ovenward(['draw', plan, '--svg', plan])).code).toBe(2);
  expect(readFileSync(plan, 'utf8')).toBe('a plan');
});
