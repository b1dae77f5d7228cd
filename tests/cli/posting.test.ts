// `post` on a real store and real files, with a planner that answers at once: what is posted, and that nothing changes when anything fails.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Parts } from '../../src/cli/parts.ts';
import { run } from '../../src/cli/run.ts';
import type { Surroundings } from '../../src/cli/surroundings.ts';
import type { Plan } from '../../src/model/plan.ts';
import { openStore } from '../../src/store/openStore.ts';
import { partsFor, smallestScenario, surroundingsFor } from './fakes.ts';
import { finePlan, samplePlan } from './samplePlan.ts';

const root = resolve(import.meta.dirname, '../..');
const { date } = smallestScenario;
const page = (text: string): string => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">${text}</svg>`;

let folder: string;
const at = (name: string): string => join(folder, name);
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'posting-'));
  writeFileSync(at('day.yaml'), 'a day');
});
afterEach(() => rmSync(folder, { recursive: true }));

async function post(changes: Partial<Parts> = {}, words: readonly string[] = [], around: Partial<Surroundings> = {}) {
  const surroundings = surroundingsFor(around);
  const parts = partsFor({ drawPlan: () => [page('one'), page('two')], ...changes });
  const all = ['post', at('day.yaml'), '--store', at('store.db'), '--svg', at('wall/sheet.svg'), ...words];
  const code = await run(all, async () => parts, surroundings);
  return { code, out: surroundings.out.text(), err: surroundings.err.text() };
}

async function posted() {
  const store = await openStore(at('store.db'));
  try {
    return await store.posted(date);
  } finally {
    await store.close();
  }
}

/** Names and texts of everything in a folder. */
function wall(): Readonly<Record<string, string>> {
  return Object.fromEntries(
    readdirSync(at('wall'))
      .sort()
      .map((name) => [name, readFileSync(at(`wall/${name}`), 'utf8')]),
  );
}

test('the plan is in the store with its scenario and pages, and the sheet is on the wall', async () => {
  const { code, out } = await post({}, ['--out', at('files')]);
  expect(code).toBe(0);
  expect(out).toContain(`Posted for ${date}, as plan 1 of that day`);
  const record = await posted();
  expect(record).toMatchObject({ date, revision: 1, postedAt: '2026-05-15T20:00:00.000Z', timeZone: 'Europe/Lisbon' });
  expect(JSON.parse(record?.plan ?? '')).toEqual(JSON.parse(JSON.stringify(finePlan)));
  expect(JSON.parse(record?.scenario ?? '')).toEqual(JSON.parse(JSON.stringify(smallestScenario)));
  expect(record?.pages).toEqual([page('one'), page('two')]);
  expect(wall()).toEqual({ 'sheet.svg': page('one'), 'sheet-2.svg': page('two') });
  expect(readdirSync(at('files')).sort()).toEqual(['plan.json', 'sheet-2.svg', 'sheet.svg']);
  expect(JSON.parse(readFileSync(at('files/plan.json'), 'utf8'))).toEqual(JSON.parse(JSON.stringify(finePlan)));
});

test('a plan with trays late or left out is posted all the same, and the command says so', async () => {
  const { code } = await post({ makePlan: async () => samplePlan });
  expect(samplePlan.score.leftOutTrays + samplePlan.score.lateTrayMinutes).toBeGreaterThan(0);
  expect(code).toBe(1);
  expect((await posted())?.revision).toBe(1);
  expect(wall()['sheet.svg']).toBe(page('one'));
});

test('a shorter sheet takes the further pages of the longer one away, and no other file', async () => {
  await post({ drawPlan: () => [page('one'), page('two'), page('three')] });
  writeFileSync(at('wall/sheet-2026.svg'), page('not of this sheet'));
  writeFileSync(at('wall/sheet-4.svg'), 'no page of ours');
  await post({ drawPlan: () => [page('alone')] });
  expect(Object.keys(wall())).toEqual(['sheet-2026.svg', 'sheet-4.svg', 'sheet.svg']);
  expect((await posted())?.revision).toBe(2);
});

test('a day that is over is posted, and told', async () => {
  expect((await post()).err).toBe('');
  const { code, err } = await post({}, [], { instant: () => '2026-05-17T00:00:00.000Z' });
  expect(code).toBe(0);
  expect(err).toContain('is over');
});

const nothing: Plan = {
  ...finePlan,
  tasks: [],
  leftOut: [{ product: 'roll', trays: 1, reasons: [] }],
  score: { ...finePlan.score, leftOutTrays: 1 },
};
const wrong = [{ code: 'UNKNOWN_KEY', path: '/nam', says: 'wrong', doThis: 'put it right' }];

const FAILURES: readonly (readonly [
  what: string,
  code: number,
  says: string,
  changes: () => Partial<Parts>,
  words: readonly string[],
])[] = [
  ['the planner fails', 3, 'fault of ovenward', () => ({ makePlan: async () => Promise.reject(new Error('torn')) }), []],
  [
    'drawing fails',
    3,
    'fault of ovenward',
    () => ({
      drawPlan: () => {
        throw new Error('torn');
      },
    }),
    [],
  ],
  ['the scenario is wrong', 2, 'UNKNOWN_KEY', () => ({ readScenario: () => ({ ok: false, errors: wrong }) }), []],
  ['no tray can be planned', 2, 'PLAN_EMPTY', () => ({ makePlan: async () => nothing }), []],
  ['a folder cannot be made', 2, 'FILE_UNWRITABLE', () => ({}), ['--out', '/dev/null/wall']],
  [
    'the folder is gone when it is written',
    2,
    'FILE_UNWRITABLE',
    () => ({
      makePlan: async () => {
        rmSync(at('gone'), { recursive: true });
        return finePlan;
      },
    }),
    ['--out', '$/gone'],
  ],
];

test.each(FAILURES)('%s: exit code %i, and the sheet and the posted plan stay', async (_, code, says, changes, words) => {
  await post({ drawPlan: () => [page('old'), page('old two')] });
  const [before, wallBefore] = [await posted(), wall()];
  const result = await post(
    changes(),
    words.map((word) => word.replace('$', folder)),
  );
  expect(result.code).toBe(code);
  expect(result.err).toContain(says);
  expect(await posted()).toEqual(before);
  expect(wall()).toEqual(wallBefore);
});

test('a store that is held by others when the plan is ready: the sheet stays, and nothing is left beside it', async () => {
  await post({ drawPlan: () => [page('old')] });
  const wallBefore = wall();
  const other = new Database(at('store.db'));
  const result = await post({
    makePlan: async () => {
      other.exec('BEGIN IMMEDIATE');
      return finePlan;
    },
  });
  other.close();
  expect(result).toMatchObject({ code: 2 });
  expect(result.err).toContain('STORE_REFUSED');
  expect(wall()).toEqual(wallBefore);
  expect((await posted())?.pages).toEqual([page('old')]);
});

test('two at once: the one that posts first stays', async () => {
  let inner: Awaited<ReturnType<typeof post>> | undefined;
  const outer = await post({
    drawPlan: () => [page('late')],
    makePlan: async () => {
      inner = await post({ drawPlan: () => [page('first')] });
      return finePlan;
    },
  });
  expect(inner?.code).toBe(0);
  expect(outer.code).toBe(2);
  expect(outer.err).toContain('POSTED_MEANWHILE');
  expect(wall()).toEqual({ 'sheet.svg': page('first') });
  expect((await posted())?.pages).toEqual([page('first')]);
});

async function until(isSo: () => boolean): Promise<void> {
  while (!isSo()) await new Promise((later) => setTimeout(later, 5));
}

/** The command as a program of its own, whose planner searches until it is stopped. */
function slowly() {
  const words = ['--import', 'tsx', join(root, 'tests/cli/slowCommand.ts'), 'post', at('day.yaml')];
  const child = spawn(process.execPath, [...words, '--store', at('store.db'), '--svg', at('wall/sheet.svg')], { cwd: root });
  let err = '';
  child.stderr.on('data', (text) => {
    err += text;
  });
  return { child, isSearching: () => err.includes('searching'), ended: new Promise((done) => child.on('close', done)) };
}

test('killed while it searches or while it writes: the old sheet and the old posted plan; the next run tidies up', async () => {
  await post({ drawPlan: () => [page('old')] });
  const before = await posted();
  const searching = slowly();
  await until(searching.isSearching);
  searching.child.kill('SIGKILL');
  await searching.ended;
  const writing = slowly();
  const beside = at(`wall/.sheet.svg.posting-${writing.child.pid}`);
  await until(writing.isSearching);
  writing.child.kill('SIGTERM');
  await until(() => existsSync(beside));
  writing.child.kill('SIGKILL');
  await writing.ended;
  expect(wall()['sheet.svg']).toBe(page('old'));
  expect(await posted()).toEqual(before);
  expect((await post({ drawPlan: () => [page('new')] })).code).toBe(0);
  expect(wall()).toEqual({ 'sheet.svg': page('new') });
}, 30_000);

test('stopped while it searches, it posts the best so far', async () => {
  const { child, isSearching, ended } = slowly();
  await until(isSearching);
  child.kill('SIGTERM');
  expect(await ended).toBe(1);
  expect((await posted())?.revision).toBe(1);
}, 30_000);
