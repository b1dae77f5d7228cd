// `plan` with a plan to start from, and with a number of threads.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Parts } from '../../src/cli/parts.ts';
import { run } from '../../src/cli/run.ts';
import type { Surroundings } from '../../src/cli/surroundings.ts';
import type { PlanningOptions } from '../../src/planning.ts';
import { partsFor, surroundingsFor } from './fakes.ts';
import { finePlan } from './samplePlan.ts';

let folder: string;
let day: string;
let start: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'starting-'));
  day = join(folder, 'day.yaml');
  start = join(folder, 'plan.json');
  writeFileSync(day, 'a day');
  writeFileSync(start, 'a plan');
});
afterEach(() => rmSync(folder, { recursive: true }));

async function asked(words: readonly string[], parts: Partial<Parts> = {}, around: Partial<Surroundings> = {}) {
  let options: PlanningOptions | undefined;
  const makePlan: Parts['makePlan'] = async (_, given) => {
    options = given;
    return finePlan;
  };
  const surroundings = surroundingsFor(around);
  const code = await run(['plan', day, ...words], async () => partsFor({ makePlan, ...parts }), surroundings);
  return { code, options, err: surroundings.err.text() };
}

test('the plan to start from is handed on once it is judged', async () => {
  const { code, options } = await asked(['--from', start]);
  expect(code).toBe(0);
  expect(options?.startFrom).toEqual(finePlan);
  expect((await asked([])).options).not.toHaveProperty('startFrom');
});

test('a plan that breaks a rule is refused, every breach told, and nothing is planned', async () => {
  const breach = { rule: 'BENCH_CAPACITY', says: 'Three at a bench for two.', doThis: 'Move one.', taskIds: [] } as const;
  const other = { ...breach, rule: 'DECK_CAPACITY', says: 'Three on a deck for two.' } as const;
  const judge: Parts['judge'] = (scenario, plan) => ({ ...partsFor().judge(scenario, plan), breaches: [breach, other] });
  const { code, options, err } = await asked(['--from', start], { judge });
  expect(code).toBe(2);
  expect(options).toBeUndefined();
  expect(err).toContain('Three at a bench for two.');
  expect(err).toContain('Three on a deck for two.');
});

test('as many threads as there are processors, two at most, or as many as are asked for', async () => {
  expect((await asked([], {}, { processors: 1 })).options?.workers).toBe(1);
  expect((await asked([], {}, { processors: 16 })).options?.workers).toBe(2);
  expect((await asked(['--workers', '1'], {}, { processors: 16 })).options?.workers).toBe(1);
  expect((await asked(['--workers', '3'])).code).toBe(2);
});

test('only a search without limits stops when nothing gets better', async () => {
  expect((await asked([])).options?.stopsWhenFlat).toBe(true);
  expect((await asked(['--seconds', '5'])).options?.stopsWhenFlat).toBe(false);
  expect((await asked(['--effort', '5'])).options?.stopsWhenFlat).toBe(false);
});
