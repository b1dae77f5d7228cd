// The demo works out: a plan and its sheet are written. And the picture of the README is a plan we drew.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import { drawPlan } from '../../src/draw/drawPlan.ts';
import { readPlan } from '../../src/read/readPlan.ts';
import { readScenario } from '../../src/read/readScenario.ts';

const root = resolve(import.meta.dirname, '../..');

test('npm run demo ends with 0 and leaves a plan and its sheet', { timeout: 120_000 }, () => {
  const out = mkdtempSync(join(tmpdir(), 'demo-'));
  const { status, stdout } = spawnSync(process.execPath, [join(root, 'scripts/demo.mjs'), '--out', out], { encoding: 'utf8' });
  expect(status).toBe(0);
  expect(stdout).toMatch(/^Saturday at Wrenfold.*\n.*start \d\d:\d\d, last ready \d\d:\d\d, 21 trays/);
  expect(readdirSync(out)).toEqual(expect.arrayContaining(['plan.json', 'sheet.svg']));
  rmSync(out, { recursive: true });
});

test('the picture of the README is the first page of the plan beside it, which keeps every rule', () => {
  const plan = readPlan(readFileSync(join(root, 'docs/pictures/morning.json'), 'utf8'));
  const scenario = readScenario(readFileSync(join(root, 'scenarios/two-hands-and-leaven.yaml'), 'utf8'));
  if (!plan.ok || !scenario.ok) throw new Error('the plan or its scenario cannot be read; npm run pictures makes it anew');
  expect(judge(scenario.value, plan.value).breaches).toEqual([]);
  const picture = readFileSync(join(root, 'docs/pictures/morning.svg'), 'utf8');
  // Not toBe: a difference of a page of SVG helps nobody. `npm run pictures` draws it anew.
  expect(drawPlan(plan.value)[0] === picture).toBe(true);
});
