// The files of deploy/ name real commands, flags and variables, and leave the service the time it wants to stop.
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { commandLine } from '../../src/cli/commandLine.ts';
import { SERVE_SETTINGS } from '../../src/cli/settings/serveSettings.ts';
import { surroundingsFor } from '../cli/fakes.ts';

const folder = resolve(import.meta.dirname, '../../deploy');
const files = readdirSync(folder).map((name) => ({ name, text: readFileSync(join(folder, name), 'utf8') }));
const textOf = (name: string): string => files.find((file) => file.name === name)?.text ?? '';
const known: readonly string[] = Object.values(SERVE_SETTINGS).map(({ variable }) => variable);

test.each(files)('$name names no variable that is not there', ({ text }) => {
  const named = [...text.matchAll(/OVENWARD_\w+/g)].map(([name]) => name);
  expect(named.filter((name) => !known.includes(name))).toEqual([]);
});

/** The words after the command in a unit, as a shell would hand them over. */
function wordsOf(unit: string): readonly string[] {
  const line = /\/usr\/local\/bin\/ovenward ([^'\n]*)/.exec(textOf(unit))?.[1] ?? '';
  return [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');
}

test.each([
  ['ovenward.service', 'serve'],
  ['ovenward-post.service', 'post'],
])('%s starts a command line that is understood', (unit, command) => {
  const streams = surroundingsFor();
  expect(commandLine(wordsOf(unit), '1', streams)).toMatchObject({ do: command });
  expect(streams.err.text()).toBe('');
});

test('the unit waits for longer than the grace period and the ten seconds that answers have to leave', () => {
  const unit = textOf('ovenward.service');
  const grace = Number(/^Environment=OVENWARD_GRACE_SECONDS=(\d+)$/m.exec(unit)?.[1]);
  const timeout = Number(/^TimeoutStopSec=(\d+)$/m.exec(unit)?.[1]);
  expect(timeout).toBeGreaterThan(grace + 10);
  expect(unit).toMatch(/^KillSignal=SIGTERM$/m);
});

test('both units keep the same store', () => {
  const stores = ['ovenward.service', 'ovenward-post.service'].map((name) => /OVENWARD_STORE=(\S+)/.exec(textOf(name))?.[1]);
  expect(stores).toEqual(['/var/lib/ovenward/ovenward.db', '/var/lib/ovenward/ovenward.db']);
});

test('both units read the same settings: a store that is set for one is not missed by the other', () => {
  const read = ['ovenward.service', 'ovenward-post.service'].map((name) => /^EnvironmentFile=(\S+)$/m.exec(textOf(name))?.[1]);
  expect(read).toEqual(['-/etc/ovenward/ovenward.env', '-/etc/ovenward/ovenward.env']);
});

test.each([
  ['2026-05-15 20:00', '2026-05-16'],
  ['2026-05-16 02:30', '2026-05-16'],
  ['2026-05-16 13:00', '2026-05-17'],
])('a timer that goes off at %s has the day of %s planned', (now, day) => {
  const [, ahead] = /date -d \+(\S+) \+%%F/.exec(textOf('ovenward-post.service')) ?? [];
  const { stdout } = spawnSync('date', ['-u', '-d', `${now} ${ahead}`, '+%F'], { encoding: 'utf8' });
  expect(stdout.trim()).toBe(day);
});

test('what is sent to be built is what the container copies', () => {
  const copied = [...textOf('Containerfile').matchAll(/^COPY (?!--from)(.*) \S+$/gm)].flatMap(
    ([, names]) => names?.split(' ') ?? [],
  );
  const sent = [...readFileSync(resolve(folder, '../.dockerignore'), 'utf8').matchAll(/^!(.+)$/gm)].map(([, name]) => name);
  expect(sent.sort()).toEqual(copied.map((name) => name.replace(/^\.\//, '')).sort());
});

test('the container asks the port it listens on, runs as nobody special, and copies what is there', () => {
  const text = textOf('Containerfile');
  const port = /OVENWARD_PORT=(\d+)/.exec(text)?.[1];
  expect(text).toContain(`http://127.0.0.1:${port}/healthz`);
  expect(text).toContain(`EXPOSE ${port}`);
  expect(text).toMatch(/^USER node$/m);
  const root = resolve(folder, '..');
  const copied = [...text.matchAll(/^COPY (?!--from)(.*) \S+$/gm)].flatMap(([, names]) => names?.split(' ') ?? []);
  expect(copied.length).toBeGreaterThan(4);
  const here = readdirSync(root);
  expect(copied.filter((name) => !here.includes(name))).toEqual([]);
});

const hasVerifier = spawnSync('systemd-analyze', ['--version']).status === 0;

function verify(): void {
  const copy = mkdtempSync(join(tmpdir(), 'units-'));
  onTestFinished(() => rmSync(copy, { recursive: true }));
  // It also looks whether the command is there; here it is elsewhere.
  const command = join(copy, 'ovenward');
  writeFileSync(command, '#!/bin/sh\n');
  chmodSync(command, 0o755);
  const units = files.filter(({ name }) => /\.(service|timer)$/.test(name));
  for (const { name, text } of units) writeFileSync(join(copy, name), text.replaceAll('/usr/local/bin/ovenward', command));
  const { status, stderr } = spawnSync('systemd-analyze', ['verify', ...units.map(({ name }) => join(copy, name))], {
    encoding: 'utf8',
  });
  const ours = stderr.split('\n').filter((line) => line.includes(copy) || line.includes('ovenward'));
  expect({ status, ours }).toEqual({ status: 0, ours: [] });
}

// Where systemd is not installed there is nobody to ask.
if (hasVerifier) test('systemd finds nothing wrong with the units', { timeout: 20_000 }, verify);
