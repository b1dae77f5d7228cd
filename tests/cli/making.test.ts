// `plan` around a planner that answers at once: streams, files, exit codes, limits, and what happens when things are wrong.
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Parts } from '../../src/cli/parts.ts';
import { run } from '../../src/cli/run.ts';
import type { Surroundings } from '../../src/cli/surroundings.ts';
import { planSchema } from '../../src/model/plan.ts';
import type { PlanningOptions } from '../../src/planning.ts';
import { partsFor, surroundingsFor } from './fakes.ts';
import { finePlan, samplePlan } from './samplePlan.ts';

let folder: string;
let day: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'making-'));
  day = join(folder, 'day.yaml');
  writeFileSync(day, 'a day');
});
afterEach(() => rmSync(folder, { recursive: true }));

async function plan(words: readonly string[], parts: Partial<Parts> = {}, around: Partial<Surroundings> = {}) {
  const surroundings = surroundingsFor(around);
  const code = await run(['plan', ...words], async () => partsFor(parts), surroundings);
  return { code, out: surroundings.out.text(), err: surroundings.err.text() };
}

test('without files: the summary on standard output, nothing on standard error', async () => {
  const { code, out, err } = await plan([day]);
  expect(code).toBe(0);
  expect(out).toContain('Every tray is planned and on time.');
  expect(err).toBe('');
});

test('--json: the plan and nothing else on standard output, the summary on standard error', async () => {
  const { code, out, err } = await plan([day, '--json']);
  expect(code).toBe(0);
  expect(planSchema.parse(JSON.parse(out))).toEqual(finePlan);
  expect(out.endsWith('}\n')).toBe(true);
  expect(err).toContain('Every tray is planned and on time.');
});

test('late or left out: exit code 1, and the plan is written all the same', async () => {
  const { code } = await plan([day, '--out', join(folder, 'out')], { makePlan: async () => samplePlan });
  expect(code).toBe(1);
  expect(JSON.parse(readFileSync(join(folder, 'out/plan.json'), 'utf8'))).toEqual(samplePlan);
});

describe('files', () => {
  const threePages = { drawPlan: () => ['<svg>1</svg>', '<svg>2</svg>', '<svg>3</svg>'] };

  test('--out and --svg write plan and pages whole and name them', async () => {
    const target = join(folder, 'deep/out');
    const { out } = await plan([day, '--out', target, '--svg', join(folder, 'wall.svg')], threePages);
    expect(readdirSync(target).sort()).toEqual(['plan.json', 'sheet-2.svg', 'sheet-3.svg', 'sheet.svg']);
    expect(readFileSync(join(target, 'sheet-2.svg'), 'utf8')).toBe('<svg>2</svg>');
    expect(readFileSync(join(folder, 'wall-3.svg'), 'utf8')).toBe('<svg>3</svg>');
    for (const file of ['deep/out/plan.json', 'deep/out/sheet.svg', 'wall.svg', 'wall-2.svg'])
      expect(out).toContain(join(folder, file));
    expect(readdirSync(folder).sort()).toEqual(['day.yaml', 'deep', 'wall-2.svg', 'wall-3.svg', 'wall.svg']);
  });

  test('a shorter sheet takes the pages of a longer one away, and nothing else', async () => {
    await plan([day, '--out', folder], threePages);
    writeFileSync(join(folder, 'sheet-old.svg'), 'mine');
    await plan([day, '--out', folder]);
    expect(readdirSync(folder).sort()).toEqual(['day.yaml', 'plan.json', 'sheet-old.svg', 'sheet.svg']);
  });

  test.each([
    ['a folder under a file', (at: string) => ['--out', join(at, 'day.yaml/out')], 'ENOTDIR'],
    ['a folder where the file should be', (at: string) => ['--svg', at], 'not a file'],
    ['the scenario itself', (at: string) => ['--svg', join(at, 'day.yaml')], 'overwritten'],
    ['the scenario by another name', (at: string) => ['--svg', join(at, 'link.svg')], 'overwritten'],
  ])('%s is refused before any planning', async (_, words, says) => {
    symlinkSync(day, join(folder, 'link.svg'));
    let planned = 0;
    const makePlan = async () => {
      planned += 1;
      return finePlan;
    };
    const { code, out, err } = await plan([day, ...words(folder)], { makePlan });
    expect({ code, planned, out }).toEqual({ code: 2, planned: 0, out: '' });
    expect(err).toContain('FILE_UNWRITABLE');
    expect(err).toContain(says);
    expect(readFileSync(day, 'utf8')).toBe('a day');
  });
});

describe('limits', () => {
  async function given(words: readonly string[]): Promise<PlanningOptions> {
    const seen: PlanningOptions[] = [];
    const makePlan: Parts['makePlan'] = async (_, options) => {
      seen.push(options);
      return finePlan;
    };
    await plan([day, ...words], { makePlan }, { startedAtMs: 12, now: () => 345 });
    const [options] = seen;
    if (options === undefined) throw new Error('nothing was planned');
    return options;
  }

  test('without any: ten seconds or the usual effort', async () => {
    expect(await given([])).toMatchObject({ seconds: 10, effort: 777, startedAtMs: 12 });
    expect(await given([])).not.toHaveProperty('seed');
  });

  test('seconds alone, effort alone, and a seed', async () => {
    expect(await given(['--seconds', '2'])).toMatchObject({ seconds: 2 });
    expect(await given(['--seconds', '2'])).not.toHaveProperty('effort');
    expect(await given(['--effort', '50', '--seed', '9'])).toMatchObject({ effort: 50, seed: 9 });
    expect(await given(['--effort', '50'])).not.toHaveProperty('seconds');
  });

  test('drawing and writing get their share of a time limit', async () => {
    expect((await given(['--seconds', '2', '--out', folder])).seconds).toBeCloseTo(2 - 0.333);
    expect((await given(['--seconds', '1', '--svg', join(folder, 'wall.svg')])).seconds).toBeCloseTo(0.75);
  });
});

describe('when things are wrong', () => {
  const errors = [
    { code: 'TOO_HOT', path: '/ovens/0', line: 7, column: 3, says: 'it is too hot', doThis: 'cool it' },
    { code: 'NO_PEOPLE', path: '/people', says: 'nobody is there', doThis: 'name somebody' },
  ];
  const readScenario: Parts['readScenario'] = () => ({ ok: false, errors });

  test('every input error at once, with its place, exit code 2', async () => {
    const { code, out, err } = await plan([day], { readScenario });
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toBe(
      `${day}:7:3  TOO_HOT  it is too hot / cool it\n${day} /people  NO_PEOPLE  nobody is there / name somebody\n2 things to put right.\n`,
    );
  });

  test('--json gives the same errors as data', async () => {
    const { code, out, err } = await plan([day, '--json'], { readScenario });
    expect(code).toBe(2);
    expect(JSON.parse(out)).toEqual({ errors });
    expect(err).toContain('TOO_HOT');
  });

  test.each([
    ['missing', (at: string) => join(at, 'no.yaml'), 'FILE_MISSING'],
    ['a folder', (at: string) => at, 'FILE_IS_FOLDER'],
    ['under a file', (at: string) => join(at, 'day.yaml/x'), 'FILE_UNREADABLE'],
    ['not text', (at: string) => join(at, 'bytes'), 'TEXT_NOT_UTF8'],
    ['enormous', (at: string) => join(at, 'huge'), 'FILE_TOO_LARGE'],
  ])('an input that is %s', async (_, file, says) => {
    writeFileSync(join(folder, 'bytes'), Uint8Array.of(0xff, 0xfe, 0x41));
    writeFileSync(join(folder, 'huge'), Buffer.alloc(20_000_001, 97));
    const { code, err } = await plan([file(folder)]);
    expect(code).toBe(2);
    expect(err).toContain(`${file(folder)}  ${says}  `);
  });

  test('standard input is read for -, and named in its errors', async () => {
    const texts: string[] = [];
    const seeing: Parts['readScenario'] = (text, fileName) => {
      texts.push(`${text} ${fileName}`);
      return { ok: false, errors };
    };
    const { err } = await plan(['-'], { readScenario: seeing });
    expect(texts).toEqual(['from standard input undefined']);
    expect(err).toContain('standard input:7:3  TOO_HOT');
  });

  test('a fault of ours: exit code 3, a short report, no stack, no files', async () => {
    const makePlan = async () => {
      throw new TypeError('the plan breaks DECK_CAPACITY');
    };
    const words = [day, '--json', '--out', join(folder, 'out')];
    const { code, out, err } = await plan(words, { makePlan });
    expect(code).toBe(3);
    expect(out).toBe('');
    expect(err).toContain('This is a fault of ovenward');
    expect(err).toContain('TypeError: the plan breaks DECK_CAPACITY');
    expect(err).not.toMatch(/\n\s+at /);
    expect(readdirSync(join(folder, 'out'))).toEqual([]);
    const debugging = await plan(words, { makePlan }, { isDebugging: true });
    expect(debugging.err).toMatch(/\n\s+at /);
  });

  test('standard output that cannot be written is told, and is not success', async () => {
    const out = surroundingsFor().out;
    const { code, err } = await plan([day], {}, { out: { ...out, settled: async () => false } });
    expect(code).toBe(2);
    expect(err).toContain('Standard output could not be written');
  });
});

test('a stop that is asked for reaches the planner, and its best plan is written', async () => {
  const makePlan: Parts['makePlan'] = async (_, { cancelled }) => ({
    ...samplePlan,
    stopped: cancelled?.() ? 'cancelled' : 'effort',
  });
  const { code, out } = await plan([day, '--out', folder], { makePlan }, { stoppable: (work) => work(() => true) });
  expect(code).toBe(1);
  expect(out).toContain('The search was stopped');
  expect(existsSync(join(folder, 'plan.json'))).toBe(true);
});

test('an out folder that is there already is used', async () => {
  mkdirSync(join(folder, 'out'));
  expect((await plan([day, '--out', join(folder, 'out')])).code).toBe(0);
});
