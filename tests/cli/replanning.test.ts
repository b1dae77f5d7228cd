// `replan` around a planner that answers at once, then the real program: inputs, files, streams, exit codes.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { build } from '../../scripts/build.mjs';
import { jsonText } from '../../src/cli/jsonText.ts';
import type { Parts } from '../../src/cli/parts.ts';
import { run } from '../../src/cli/run.ts';
import { planSchema } from '../../src/model/plan.ts';
import { type ReplanAnswer, replanAnswerSchema } from '../../src/model/replanAnswer.ts';
import { threeLoaves, threeLoavesPlan } from '../questions/replan/threeLoaves.ts';
import { partsFor, surroundingsFor } from './fakes.ts';

let folder: string;
const inFolder = (name: string): string => join(folder, name);
const PLAN_TEXT = `${JSON.stringify(threeLoavesPlan)}   \n`;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'replanning-'));
  writeFileSync(inFolder('day.yaml'), 'a day');
  writeFileSync(inFolder('plan.json'), PLAN_TEXT);
  writeFileSync(inFolder('events.yaml'), 'events');
});
afterEach(() => rmSync(folder, { recursive: true }));

const answer: ReplanAnswer = {
  now: 60,
  isUnchanged: false,
  plan: threeLoavesPlan,
  scenario: threeLoaves,
  changes: [
    { kind: 'moved', minute: 102, says: 'Rye 1: load at 04:42 instead of 04:30.', trays: ['rye-1'], batches: [], steps: [] },
  ],
  movedTasks: 3,
  movePrice: 2,
  movesCost: 6,
  told: ['rye-1/shape has not begun; it was to at 03:45.'],
};

const ours: Partial<Parts> = {
  readScenario: () => ({ ok: true, value: threeLoaves }),
  readPlan: () => ({ ok: true, value: threeLoavesPlan }),
};

async function replan(words: readonly string[], parts: Partial<Parts> = {}) {
  const surroundings = surroundingsFor();
  const code = await run(['replan', inFolder('day.yaml'), ...words], async () => partsFor({ ...ours, ...parts }), surroundings);
  return { code, out: surroundings.out.text(), err: surroundings.err.text() };
}

const NOW = ['--now', '04:00'];
const usual = (): readonly string[] => [inFolder('plan.json'), ...NOW, '--happened', inFolder('events.yaml')];
const answering = (changed: Partial<ReplanAnswer> = {}): Partial<Parts> => ({
  replan: async () => ({ ok: true, answer: { ...answer, ...changed } }),
});

describe('what is told', () => {
  test('the changes by the clock, what was taken for granted, the price of moving', async () => {
    const { code, out, err } = await replan(usual(), answering());
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out.split('\n').slice(0, 8)).toEqual([
      'Three loaves, 2026-05-16, from 04:00 on',
      'Every tray is planned and on time.',
      '',
      'What changes',
      '04:42  Rye 1: load at 04:42 instead of 04:30.',
      '',
      'Taken for granted',
      'rye-1/shape has not begun; it was to at 03:45.',
    ]);
    expect(out).toContain('3 steps moved at 2 each: 6 of the price.');
  });

  test('--json: the answer and nothing else on standard output', async () => {
    const { out, err } = await replan([...usual(), '--json'], answering());
    expect(replanAnswerSchema.parse(JSON.parse(out))).toEqual(answer);
    expect(err).toContain('What changes');
  });

  test('a tray late: exit code 1', async () => {
    const late = { ...threeLoavesPlan, score: { ...threeLoavesPlan.score, lateTrayMinutes: 70 } };
    const { code, out } = await replan(usual(), answering({ plan: late }));
    expect(code).toBe(1);
    expect(out).toContain('Trays are late by 1 h 10 min in all.');
  });

  test('more changes than a screen takes are counted', async () => {
    const changes = Array.from(
      { length: 40 },
      (_, k) => ({ ...answer.changes[0], minute: 60 + k }) as ReplanAnswer['changes'][number],
    );
    expect((await replan(usual(), answering({ changes }))).out).toContain('And 10 more: see the sheet.');
    expect((await replan(usual(), answering({ changes: [] }))).out).toContain('Nothing: go on as planned.');
  });
});

describe('files', () => {
  test('--out: the scenario of the day under way, the plan, the sheet', async () => {
    const { out } = await replan([...usual(), '--out', inFolder('later')], answering());
    expect(readdirSync(inFolder('later')).sort()).toEqual(['plan.json', 'scenario.json', 'sheet.svg']);
    expect(readFileSync(inFolder('later/plan.json'), 'utf8')).toBe(jsonText(threeLoavesPlan));
    expect(readFileSync(inFolder('later/scenario.json'), 'utf8')).toBe(jsonText(threeLoaves));
    expect(out).toContain(inFolder('later/scenario.json'));
  });

  test('nothing happened: the plan comes back to the byte', async () => {
    const { code, out } = await replan([inFolder('plan.json'), ...NOW, '--out', inFolder('later')]);
    expect(code).toBe(0);
    expect(readFileSync(inFolder('later/plan.json'), 'utf8')).toBe(PLAN_TEXT);
    expect(out).toContain('Nothing: nothing has happened and nothing is decided, so the plan stays as it is.');
  });

  test('an input is never written over', async () => {
    const { code, err } = await replan([...usual(), '--out', folder]);
    expect(code).toBe(2);
    expect(err).toContain('FILE_UNWRITABLE');
    expect(readFileSync(inFolder('plan.json'), 'utf8')).toBe(PLAN_TEXT);
  });
});

describe('bad input', () => {
  test.each([
    ['4 pm', 'It is a time such as 05:40'],
    ['13:00', 'TIME_OUTSIDE_DAY'],
  ])('--now %s', async (now, says) => {
    const { code, err } = await replan([inFolder('plan.json'), '--now', now]);
    expect(code).toBe(2);
    expect(err).toContain(says);
  });

  test('--now is needed', async () => {
    const { code, err } = await replan([inFolder('plan.json')]);
    expect(code).toBe(2);
    expect(err).toContain('--now');
  });

  test('a time before the day was planned anew last', async () => {
    const underway = { now: 90, movePrice: 2, batches: [], tasks: [], decks: [], out: [] };
    const { code, err } = await replan(usual(), { readScenario: () => ({ ok: true, value: { ...threeLoaves, underway } }) });
    expect(code).toBe(2);
    expect(err).toContain('BEFORE_LAST_TIME');
  });

  test('a plan that breaks a rule is refused, every breach told', async () => {
    const breach = { rule: 'SCORE' as const, says: 'It costs more.', taskIds: [], doThis: 'State it.' };
    const verdict = partsFor().judge(threeLoaves, threeLoavesPlan);
    const { code, err } = await replan(usual(), { judge: () => ({ ...verdict, breaches: [breach, breach] }) });
    expect(code).toBe(2);
    expect(err.match(/SCORE {2}It costs more\. \/ State it\./g)).toHaveLength(2);
  });

  test('what cannot have happened, with its place; with --json as data', async () => {
    const errors = [{ code: 'ALREADY_BUSY', path: '/happened/0', says: 'It cannot be.', doThis: 'Correct it.' }];
    const parts: Partial<Parts> = {
      replan: async () => ({ ok: false, errors }),
      placedInHappened: (text, found) => found.map((error) => ({ ...error, line: text.length, column: 1 })),
    };
    const { code, err } = await replan(usual(), parts);
    expect(code).toBe(2);
    expect(err).toContain(`${inFolder('events.yaml')}:6:1  ALREADY_BUSY  It cannot be. / Correct it.`);
    expect(JSON.parse((await replan([...usual(), '--json'], parts)).out).errors).toMatchObject(errors);
  });

  test('a day that can no longer be planned is bad input, as read', async () => {
    const seen: unknown[] = [];
    const parts: Partial<Parts> = {
      readScenario: (text) =>
        text === 'a day'
          ? { ok: true, value: threeLoaves }
          : { ok: false, errors: [{ code: 'NOBODY_CAN', path: '/people', says: 'Nobody mixes.', doThis: 'Find somebody.' }] },
      replan: async (scenario, _plan, at) => {
        const errors = at.faultsOf(scenario);
        seen.push(...errors);
        return { ok: false, errors };
      },
    };
    const { code, err } = await replan(usual(), parts);
    expect(code).toBe(2);
    expect(seen).toHaveLength(1);
    expect(err).toContain('NOBODY_CAN');
  });

  test('two inputs from standard input', async () => {
    const { code, err } = await replan(['-', ...NOW, '--happened', '-']);
    expect(code).toBe(2);
    expect(err).toContain('STDIN_TWICE');
  });
});

test('limits: seed of the plan, time from the start of the command, rounds without a clock', async () => {
  const asked: { seed: number; untilMs: number; effort: number | undefined }[] = [];
  const parts: Partial<Parts> = {
    replan: async (_scenario, _plan, _at, { seed, untilMs }, limits) => {
      asked.push({ seed, untilMs, effort: limits?.effort });
      return { ok: true, answer };
    },
  };
  await replan(usual(), parts);
  await replan([...usual(), '--seconds', '2', '--seed', '9'], parts);
  await replan([...usual(), '--effort', '50'], parts);
  expect(asked).toEqual([
    { seed: 1, untilMs: 5000, effort: undefined },
    { seed: 9, untilMs: 2000, effort: undefined },
    { seed: 1, untilMs: Number.POSITIVE_INFINITY, effort: 50 },
  ]);
});

describe('the real program', () => {
  const root = resolve(import.meta.dirname, '../..');
  const day = join(root, 'scenarios/one-pair-of-hands.yaml');
  let place: string;
  const at = (name: string): string => join(place, name);
  const ovenward = (...words: string[]) =>
    spawnSync(process.execPath, [join(root, 'scripts/ovenward.mjs'), ...words], { cwd: place, encoding: 'utf8' });

  beforeAll(() => {
    build();
    place = mkdtempSync(join(tmpdir(), 'replan-program-'));
    expect(ovenward('plan', day, '--effort', '50', '--out', 'first').status).toBe(0);
  });
  afterAll(() => rmSync(place, { recursive: true }));

  test('plan, replan, check, replan again, check', { timeout: 60_000 }, () => {
    writeFileSync(at('away.yaml'), 'happened:\n  - { what: away, person: liv, from: "05:40", until: "06:10" }\n');
    const first = ovenward(
      'replan',
      day,
      'first/plan.json',
      '--now',
      '05:40',
      '--happened',
      'away.yaml',
      '--effort',
      '30',
      '--out',
      'second',
    );
    expect(first.stderr).toBe('');
    expect([0, 1]).toContain(first.status);
    expect(first.stdout).toContain('What changes');
    expect(ovenward('check', 'second/scenario.json', 'second/plan.json').stdout).toContain(
      'No breach: the plan keeps every rule.',
    );
    writeFileSync(at('more.yaml'), 'happened:\n  - { what: ordered, product: potato-bun, pieces: 20, readyBy: "09:20" }\n');
    const second = ovenward(
      'replan',
      'second/scenario.json',
      'second/plan.json',
      '--now',
      '06:00',
      '--happened',
      'more.yaml',
      '--effort',
      '30',
      '--out',
      'third',
    );
    expect(second.stderr).toBe('');
    expect(second.stdout).toContain('New: ');
    expect(ovenward('check', 'third/scenario.json', 'third/plan.json').stdout).toContain('No breach: the plan keeps every rule.');
    // What began before 05:40 began when and where it did in all three.
    const begun = (name: string): readonly unknown[] =>
      planSchema
        .parse(JSON.parse(readFileSync(at(`${name}/plan.json`), 'utf8')))
        .tasks.filter(({ start }) => start < 200)
        .map(({ id, start, place: where }) => [id, start, where]);
    expect(begun('second')).toEqual(begun('first'));
    expect(begun('third')).toEqual(begun('first'));
  });

  test('nothing told: plan and sheet as they were', { timeout: 60_000 }, () => {
    expect(ovenward('replan', day, 'first/plan.json', '--now', '05:40', '--out', 'same').status).toBe(0);
    for (const file of readdirSync(at('first')))
      expect(readFileSync(at(`same/${file}`), 'utf8')).toBe(readFileSync(at(`first/${file}`), 'utf8'));
  });

  test('a wrong file of events: every error with its line', () => {
    writeFileSync(
      at('wrong.yaml'),
      'happened:\n  - { what: away, person: lib, from: "05:40" }\n  - { what: lost, tray: oat-tin-9 }\n',
    );
    const { status, stderr } = ovenward('replan', day, 'first/plan.json', '--now', '05:40', '--happened', 'wrong.yaml');
    expect(status).toBe(2);
    expect(stderr).toMatch(/wrong\.yaml:2:27 {2}UNKNOWN_PERSON .*Did you mean "liv"\?/);
    expect(stderr).toMatch(/wrong\.yaml:3:25 {2}UNKNOWN_TRAY .*Did you mean "oat-tin-1"\?/);
    expect(stderr).toContain('2 things to put right.');
  });
});
