// Settings of `serve`: a flag wins over a variable, everything wrong is told at once, and nobody opens it to others by accident.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BadInput } from '../../../src/cli/badInput.ts';
import { commandLine } from '../../../src/cli/commandLine.ts';
import { readSettings } from '../../../src/cli/settings/readSettings.ts';
import type { Environment } from '../../../src/cli/settings/setting.ts';
import { surroundingsFor } from '../fakes.ts';

const TOKEN = 'rosemary-and-sea-salt';
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'settings-'));
  writeFileSync(join(folder, 'token'), `${TOKEN}\n`);
  writeFileSync(join(folder, 'short'), 'rye\n');
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Settings as `ovenward serve WORDS` reads them in this environment. */
function settings(words: string, env: Environment = {}) {
  const request = commandLine(['serve', ...words.split(' ').filter((word) => word !== '')], '1.2.3', surroundingsFor());
  if (typeof request === 'number' || request.do !== 'serve') throw new Error('no request to serve');
  return readSettings(request.flags, request.openToAnyone, env);
}

function errors(words: string, env: Environment = {}) {
  try {
    settings(words, env);
  } catch (error) {
    if (error instanceof BadInput)
      return error.errors.map(({ code, path, says, doThis }) => ({ code, path, text: `${says} / ${doThis}` }));
    throw error;
  }
  return [];
}

test('without anything said', () => {
  const usual = settings('');
  expect(usual).toMatchObject({ port: 8430, host: '127.0.0.1', token: null, places: 64, graceSeconds: 10, logLevel: 'info' });
  expect(usual.store).toBe(join(homedir(), '.local/share/ovenward/ovenward.db'));
  expect(usual.threads).toBeGreaterThan(0);
});

test.each([
  ['/var/data', '/var/data/ovenward/ovenward.db'],
  // XDG Base Directory Specification: a path that is not absolute is ignored.
  ['data', join(homedir(), '.local/share/ovenward/ovenward.db')],
  ['', join(homedir(), '.local/share/ovenward/ovenward.db')],
])('with XDG_DATA_HOME=%j the store is %s', (XDG_DATA_HOME, store) => {
  expect(settings('', { XDG_DATA_HOME }).store).toBe(store);
});

test('a variable counts, a flag wins over it, an empty variable is none', () => {
  expect(settings('', { OVENWARD_PORT: '9000' }).port).toBe(9000);
  expect(settings('--port 9001', { OVENWARD_PORT: '9000' }).port).toBe(9001);
  expect(settings('--port 9001', { OVENWARD_PORT: 'soup' }).port).toBe(9001);
  expect(settings('', { OVENWARD_PORT: '' }).port).toBe(8430);
});

test('every setting by variable', () => {
  const env = {
    OVENWARD_PORT: '0',
    OVENWARD_HOST: '::1',
    OVENWARD_TOKEN: TOKEN,
    OVENWARD_STORE: '/srv/day.db',
    OVENWARD_THREADS: '3',
    OVENWARD_PLACES: '0',
    OVENWARD_MOST_SECONDS: '2.5',
    OVENWARD_USUAL_SECONDS: '1',
    OVENWARD_REQUESTS_PER_MINUTE: '12',
    OVENWARD_BODY_KB: '64',
    OVENWARD_GRACE_SECONDS: '0.5',
    OVENWARD_KEEP_DAYS: '7',
    OVENWARD_LOG_LEVEL: 'warn',
    OVENWARD_TIME_ZONE: 'Europe/Lisbon',
  };
  expect(settings('', env)).toEqual({
    port: 0,
    host: '::1',
    token: TOKEN,
    tokenFile: null,
    store: '/srv/day.db',
    threads: 3,
    places: 0,
    mostSeconds: 2.5,
    usualSeconds: 1,
    requestsPerMinute: 12,
    bodyKb: 64,
    graceSeconds: 0.5,
    keepDays: 7,
    logLevel: 'warn',
    timeZone: 'Europe/Lisbon',
  });
});

test('a token from a file, the end of its line left out; a flag names another than the variable', () => {
  expect(settings(`--token-file ${folder}/token`).token).toBe(TOKEN);
  expect(settings('', { OVENWARD_TOKEN_FILE: join(folder, 'token') }).token).toBe(TOKEN);
  expect(settings(`--token-file ${folder}/token`, { OVENWARD_TOKEN: 'another-token-altogether' }).token).toBe(TOKEN);
  expect(errors('', { OVENWARD_TOKEN: TOKEN, OVENWARD_TOKEN_FILE: join(folder, 'token') })[0]).toMatchObject({
    code: 'SETTING_TWICE',
  });
});

test('a token that cannot be used is refused without being repeated', () => {
  const [wrong] = errors('', { OVENWARD_TOKEN: 'rye' });
  expect(wrong).toMatchObject({ code: 'SETTING_WRONG', path: 'OVENWARD_TOKEN' });
  expect(wrong?.text).not.toContain('rye');
  expect(errors(`--token-file ${folder}/short`)[0]?.path).toBe('--token-file');
  expect(errors(`--token-file ${folder}/none`)[0]?.text).toContain('ENOENT');
  expect(errors('', { OVENWARD_TOKEN: 'sixteen letters, and a space' })).toHaveLength(1);
});

test('everything wrong at once, each under the name it was given by', () => {
  const wrong = errors('--port 65536 --threads none', {
    OVENWARD_HOST: 'bakery',
    OVENWARD_MOST_SECONDS: '0',
    OVENWARD_LOG_LEVEL: 'loud',
    OVENWARD_TIME_ZONE: 'Europe/Breadland',
    OVENWARD_PLACE: '3',
  });
  expect(wrong.map(({ code, path }) => `${code} ${path}`)).toEqual([
    'SETTING_WRONG --port',
    'SETTING_WRONG OVENWARD_HOST',
    'SETTING_WRONG --threads',
    'SETTING_WRONG OVENWARD_MOST_SECONDS',
    'SETTING_WRONG OVENWARD_LOG_LEVEL',
    'SETTING_WRONG OVENWARD_TIME_ZONE',
    'SETTING_UNKNOWN OVENWARD_PLACE',
  ]);
  expect(wrong[0]?.text).toContain('from 0 to 65535');
  expect(wrong.at(-1)?.text).toContain('did you mean OVENWARD_PLACES?');
});

test.each(['0.0.0.0', '::', '192.168.1.20'])(
  '%s, which other machines reach, needs a token or a word that anyone may',
  (host) => {
    expect(errors(`--host ${host}`)).toMatchObject([{ code: 'SETTING_WRONG', path: '--host' }]);
    expect(errors('', { OVENWARD_HOST: host })).toMatchObject([{ code: 'SETTING_WRONG', path: 'OVENWARD_HOST' }]);
    expect(settings(`--host ${host}`, { OVENWARD_TOKEN: TOKEN }).host).toBe(host);
    expect(settings(`--host ${host} --open-to-anyone`).host).toBe(host);
  },
);

test('the usual seconds are never above the most', () => {
  expect(settings('--most-seconds 1')).toMatchObject({ mostSeconds: 1, usualSeconds: 1 });
});
