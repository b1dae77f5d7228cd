// Stop signals and sudden death, on a process of its own around a planner that never ends by itself.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { planSchema } from '../../src/model/plan.ts';

const root = resolve(import.meta.dirname, '../..');
let folder: string;
let running: ChildProcess | undefined;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'signals-'));
  writeFileSync(join(folder, 'day.yaml'), 'a day');
});
afterEach(() => {
  running?.kill('SIGKILL');
  rmSync(folder, { recursive: true });
});

type Ended = { readonly code: number | null; readonly signal: NodeJS.Signals | null; readonly out: string; readonly err: string };

function start(words: readonly string[], env: NodeJS.ProcessEnv = {}) {
  const command = ['--import', 'tsx', join(root, 'tests/cli/slowCommand.ts'), 'plan', join(folder, 'day.yaml'), ...words];
  const child = spawn(process.execPath, command, { cwd: root, env: { ...process.env, ...env } });
  running = child;
  let out = '';
  let err = '';
  child.stdout.on('data', (text) => {
    out += text;
  });
  const searching = new Promise<void>((resolve) => {
    child.stderr.on('data', (text) => {
      err += text;
      if (err.includes('searching')) resolve();
    });
  });
  const ended = new Promise<Ended>((resolve) => child.on('close', (code, signal) => resolve({ code, signal, out, err })));
  return { child, searching, ended };
}

function wait(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

test.each<NodeJS.Signals>(['SIGINT', 'SIGTERM'])('%s takes the best plan so far, whole', async (signal) => {
  const { child, searching, ended } = start(['--json', '--out', folder]);
  await searching;
  child.kill(signal);
  const { code, out, err } = await ended;
  expect(code).toBe(1);
  expect(planSchema.parse(JSON.parse(out)).stopped).toBe('cancelled');
  expect(JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8'))).toEqual(JSON.parse(out));
  expect(err).toContain('Stopping: the best plan so far follows.');
});

test('one press that arrives twice is one press', async () => {
  const { child, searching, ended } = start([]);
  await searching;
  child.kill('SIGINT');
  await wait(30);
  child.kill('SIGINT');
  expect((await ended).code).toBe(1);
});

test('a second press quits at once, with nothing written', async () => {
  const { child, searching, ended } = start(['--out', folder], { STUBBORN: '1' });
  await searching;
  child.kill('SIGINT');
  await wait(700);
  child.kill('SIGINT');
  const { code, out } = await ended;
  expect({ code, out }).toEqual({ code: 130, out: '' });
  expect(readdirSync(folder)).toEqual(['day.yaml']);
});

test('killed while it writes, it leaves the old sheet or the new one, never half of one', async () => {
  const sheet = join(folder, 'sheet.svg');
  const kills: string[] = [];
  for (const delay of [0, 5, 15, 30, 60]) {
    writeFileSync(sheet, 'old');
    const { child, searching, ended } = start(['--out', folder]);
    await searching;
    child.kill('SIGINT');
    // Until the new file grows beside the old one, then a little longer.
    while (!readdirSync(folder).some((name) => name.startsWith('sheet.svg.')) && statSync(sheet).size === 3) await wait(1);
    await wait(delay);
    child.kill('SIGKILL');
    kills.push((await ended).signal ?? 'ended');
    expect([3, 30_000_000]).toContain(statSync(sheet).size);
  }
  expect(kills).toContain('SIGKILL');
  expect(existsSync(sheet)).toBe(true);
});

test('a reader that has seen enough is no fault, and the files are there', async () => {
  const { child, searching, ended } = start(['--json', '--out', folder]);
  await searching;
  child.stdout.destroy();
  child.kill('SIGINT');
  const { code, err } = await ended;
  expect(code).toBe(1);
  expect(err).not.toMatch(/EPIPE|fault/);
  expect(existsSync(join(folder, 'plan.json'))).toBe(true);
});
