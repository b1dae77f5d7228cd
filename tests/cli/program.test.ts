// The real program, as people start it: exit codes, streams, files, time.
import { spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, openSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { build } from '../../scripts/build.mjs';
import { type Plan, planSchema } from '../../src/model/plan.ts';

const root = resolve(import.meta.dirname, '../..');
const script = join(root, 'scripts/ovenward.mjs');
const morning = 'scenarios/two-hands-and-leaven.yaml';
const large = 'scenarios/central-bakery.yaml';
const tooMuch = 'scenarios/more-than-the-oven-takes.yaml';
const BRIEFLY = ['--effort', '20'];

let folder: string;
let good: Plan;
const inFolder = (name: string) => join(folder, name);
beforeAll(() => {
  build();
  folder = mkdtempSync(join(tmpdir(), 'program-'));
  cpSync(join(root, 'scenarios'), inFolder('scenarios'), { recursive: true });
  good = planSchema.parse(JSON.parse(ovenward(['plan', morning, ...BRIEFLY, '--json', '--out', inFolder('good')]).stdout));
});
afterAll(() => rmSync(folder, { recursive: true }));

function ovenward(words: readonly string[], input = '') {
  return spawnSync(process.execPath, [script, ...words], { cwd: folder, encoding: 'utf8', input, maxBuffer: 1 << 28 });
}

function millisecondsOf(words: readonly string[]): number {
  const startedAt = performance.now();
  expect(spawnSync(process.execPath, words).status).toBe(0);
  return performance.now() - startedAt;
}

/** How slowly this machine goes just now: 1 on one that starts Node alone in 50 ms or less, more on a busy or slow one. */
function pace(): number {
  return Math.max(1, Math.min(...Array.from({ length: 3 }, () => millisecondsOf(['-e', '0']))) / 50);
}

// Measured beside a bare start of Node in the same run: this machine may be busy with other things.
test('it starts at most five times as slowly as Node alone', { timeout: 60_000, retry: 2 }, () => {
  const rounds = Array.from({ length: 7 }, () => [millisecondsOf([script, '--version']), millisecondsOf(['-e', '0'])] as const);
  const best = (which: 0 | 1) => Math.min(...rounds.map((round) => round[which]));
  expect(best(0) / best(1)).toBeLessThan(5);
});

describe('plan', () => {
  test('one screen for people, nothing on standard error, no colours in a pipe', () => {
    const { status, stdout, stderr } = ovenward(['plan', morning, ...BRIEFLY]);
    expect([0, 1]).toContain(status);
    expect(stdout).toMatch(/^Saturday at Wrenfold.*\n.*start \d\d:\d\d, last ready \d\d:\d\d/);
    expect(stdout).toContain('No plan costs less');
    expect(stdout).not.toContain('\u001b');
    expect(stderr).toBe('');
  });

  test('--json through npm: one whole plan on standard output and nothing else', () => {
    const words = ['run', '-s', 'ovenward', '--', 'plan', inFolder(morning), ...BRIEFLY, '--json'];
    const { stdout } = spawnSync('npm', words, { cwd: root, encoding: 'utf8', maxBuffer: 1 << 28 });
    expect(planSchema.parse(JSON.parse(stdout)).scenario.name).toMatch(/^Saturday at Wrenfold/);
  });

  test('the same scenario, seed and effort give the same bytes, timings aside', () => {
    const timeless = (plan: Plan) => ({ ...plan, solver: { ...plan.solver, seconds: 0 } });
    const again = JSON.parse(ovenward(['plan', morning, ...BRIEFLY, '--json']).stdout);
    expect(JSON.stringify(timeless(again)) === JSON.stringify(timeless(good))).toBe(true);
  });

  test('from standard input as from the file', () => {
    const { stdout } = ovenward(['plan', '-', ...BRIEFLY, '--json'], readFileSync(inFolder(morning), 'utf8'));
    expect(planSchema.parse(JSON.parse(stdout)).score).toEqual(good.score);
  });

  test('exit code 1 where trays must be late or left out, with the reason in words', () => {
    const { status, stdout } = ovenward(['plan', tooMuch, ...BRIEFLY]);
    expect(status).toBe(1);
    expect(stdout).toMatch(/left out|late/);
  });

  test('the files are the plan that was printed, and its sheet', () => {
    expect(planSchema.parse(JSON.parse(readFileSync(inFolder('good/plan.json'), 'utf8')))).toEqual(good);
    expect(readFileSync(inFolder('good/sheet.svg'), 'utf8')).toMatch(/^<svg[\s\S]*<\/svg>\s*$/);
  });

  test('--seconds 2 ends within 3 seconds, everything included', { timeout: 60_000, retry: 2 }, () => {
    const startedAt = performance.now();
    const { status } = ovenward(['plan', morning, '--seconds', '2', '--out', inFolder('limit')]);
    const milliseconds = performance.now() - startedAt;
    expect(milliseconds / pace()).toBeLessThan(3000);
    expect([0, 1]).toContain(status);
    expect(readdirSync(inFolder('limit'))).toContain('plan.json');
  });

  test('Ctrl-C takes the best plan so far, and it keeps every rule', { timeout: 60_000, retry: 2 }, async () => {
    const child = spawn(process.execPath, [script, 'plan', large, '--seconds', '600', '--json', '--out', 'stopped'], {
      cwd: folder,
    });
    let out = '';
    child.stdout.on('data', (text) => {
      out += text;
    });
    const code = new Promise((ended) => child.on('close', ended));
    await new Promise((later) => setTimeout(later, 3000));
    child.kill('SIGINT');
    const startedAt = performance.now();
    expect([0, 1]).toContain(await code);
    const milliseconds = performance.now() - startedAt;
    expect(milliseconds / pace()).toBeLessThan(4000);
    expect(['cancelled', 'proved']).toContain(planSchema.parse(JSON.parse(out)).stopped);
    expect(ovenward(['check', large, inFolder('stopped/plan.json')]).status).toBe(0);
  });
});

describe('what goes wrong', () => {
  test('every error of a scenario at once, with lines, exit code 2', () => {
    const spoiled = readFileSync(inFolder(morning), 'utf8')
      .replace('heatUpCPerMinute: 5 ', 'heatUpCPerMinut: 5 ')
      .replace('startsAtC: 20', 'startsAtC: warm')
      .replace('date: 2026-05-16', 'date: 2026-05-36');
    writeFileSync(inFolder('spoiled.yaml'), spoiled);
    const { status, stdout, stderr } = ovenward(['plan', 'spoiled.yaml']);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    const lines = stderr.trim().split('\n');
    expect(lines.length).toBeGreaterThan(3);
    for (const line of lines.slice(0, -1)) expect(line).toMatch(/^spoiled\.yaml:\d+:\d+ {2}[A-Z_]+ {2}.+ \/ .+$/);
    expect(lines.at(-1)).toBe(`${lines.length - 1} things to put right.`);
  });

  test.each([
    ['no such file', ['plan', 'no-such.yaml'], 'FILE_MISSING'],
    ['a folder', ['plan', '.'], 'FILE_IS_FOLDER'],
    ['an empty file', ['plan', '/dev/null'], 'dev/null'],
    ['a place that cannot be written', ['plan', morning, '--out', '/dev/null/x'], 'FILE_UNWRITABLE'],
    ['a plan that is none', ['draw', morning], 'two-hands-and-leaven.yaml'],
    ['an unknown option', ['plan', morning, '--fast'], 'unknown option'],
  ])('%s: exit code 2 and nothing on standard output', (_, words, says) => {
    const { status, stdout, stderr } = ovenward(words);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(says);
    expect(stderr).not.toMatch(/\n\s+at /);
  });

  test('a full disk under standard output is not success', () => {
    const stdio: ['ignore', number, 'pipe'] = ['ignore', openSync('/dev/full', 'w'), 'pipe'];
    const { status, stderr } = spawnSync(process.execPath, [script, 'draw', inFolder('good/plan.json')], { cwd: folder, stdio });
    expect(status).toBe(2);
    expect(String(stderr)).toContain('Standard output could not be written');
  });
});

test('a command with nothing left to do and something still to wait for says so, and ends with 3', () => {
  // What would let it go on never comes.
  const preload = 'data:text/javascript,globalThis.setImmediate = () => {};';
  const words = ['--import', preload, script, 'plan', morning, ...BRIEFLY, '--workers', '1'];
  const { status, stdout, stderr } = spawnSync(process.execPath, words, { cwd: folder, encoding: 'utf8' });
  expect({ status, stdout }).toEqual({ status: 3, stdout: '' });
  expect(stderr).toMatch(/^This is a fault of ovenward, not of your input\.\n {2}Error: It ended in the midst of its work\n/);
});

describe('check and draw', () => {
  test('a plan of ours keeps every rule; one with a spoiled number does not', () => {
    const fine = ovenward(['check', morning, 'good/plan.json', '--json']);
    expect(fine.status).toBe(0);
    expect(JSON.parse(fine.stdout)).toMatchObject({ breaches: [], figures: { cost: good.score.cost } });
    const tasks = good.tasks.map((task) => (task.step === 'bake' ? { ...task, end: task.end + 60 } : task));
    writeFileSync(inFolder('spoiled.json'), JSON.stringify({ ...good, tasks }));
    const spoiled = ovenward(['check', morning, 'spoiled.json', '--json']);
    expect(spoiled.status).toBe(1);
    expect(JSON.parse(spoiled.stdout).breaches.length).toBeGreaterThan(0);
    expect(spoiled.stderr).toMatch(/^\d\d:\d\d {2}[A-Z_]+ {2}/);
  });

  test('draw draws the sheet that plan drew, page by page', () => {
    const { status, stdout, stderr } = ovenward(['draw', 'good/plan.json', '--svg', 'wall.svg']);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const pages = stdout.trim().split('\n');
    expect(pages.length).toBe(readdirSync(inFolder('good')).length - 1);
    for (const page of pages) {
      const drawn = readFileSync(inFolder(`good/${page.replace('wall', 'sheet')}`), 'utf8');
      expect(readFileSync(inFolder(page), 'utf8') === drawn).toBe(true);
    }
  });
});
