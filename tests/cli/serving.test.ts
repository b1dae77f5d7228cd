// `serve` as the real program: what it refuses before it starts, a token, posting through it, one service on a store, a clean stop.
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { build } from '../../scripts/build.mjs';
import { run } from '../../src/cli/run.ts';
import { openStore } from '../../src/store/openStore.ts';
import { ask } from '../api/running.ts';
import { partsFor, surroundingsFor } from './fakes.ts';

const root = resolve(import.meta.dirname, '../..');
const script = join(root, 'scripts/ovenward.mjs');
const TOKEN = 'rosemary-and-sea-salt';
const DAY = `scenario: 1
name: Rolls alone
date: 2026-05-16
timeZone: Europe/Lisbon
day: { from: "03:00", until: "12:00" }
equipment:
  ovens: [{ id: oven, heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks: [{ id: top, trays: 2 }] }]
doughs: [{ id: white, steps: [{ do: mix, minutes: 10 }] }]
products: [{ id: roll, dough: white, pieceG: 60, piecesPerTray: 24, steps: [{ do: bake, minutes: 15, temperatureC: 200 }] }]
orders: [{ product: roll, pieces: 24, readyBy: "07:00" }]
`;

let folder: string;
const at = (name: string): string => join(folder, name);
beforeAll(() => {
  build();
  folder = mkdtempSync(join(tmpdir(), 'serving-'));
  writeFileSync(at('day.yaml'), DAY);
  writeFileSync(at('token'), `${TOKEN}\n`);
});
afterAll(() => rmSync(folder, { recursive: true }));

const env = () => ({ ...process.env, OVENWARD_STORE: at('data/ovenward.db'), OVENWARD_PORT: '0' });

function ovenward(words: readonly string[], more: NodeJS.ProcessEnv = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, ...words], {
    env: { ...env(), ...more },
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

async function served(words: readonly string[]) {
  const child: ChildProcess = spawn(process.execPath, [script, 'serve', ...words], { env: env() });
  const ended = new Promise<number | null>((done) => child.on('close', done));
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  let out = '';
  let err = '';
  child.stderr?.on('data', (text) => {
    err += text;
  });
  const url = await new Promise<string>((found, failed) => {
    child.stdout?.on('data', (text) => {
      out += text;
      const address = /^Answering at (\S+)\. /.exec(out)?.[1];
      if (address !== undefined) found(address);
    });
    void ended.then(() => failed(new Error(err)));
  });
  return { url, child, ended, err: () => err };
}

test('wrong settings: all at once, exit code 2, and no store is made', () => {
  const { status, stdout, stderr } = ovenward(['serve', '--port', 'x', '--host', '0.0.0.0'], { OVENWARD_TREADS: '2' });
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr.match(/SETTING_/g)).toHaveLength(3);
  expect(statSync(at('data'), { throwIfNoEntry: false })).toBeUndefined();
});

test('a token, posting through it, a copy meanwhile, one service on a store, and a clean stop', {
  timeout: 180_000,
}, async () => {
  const service = await served(['--token-file', at('token'), '--time-zone', 'Europe/Lisbon']);
  expect(service.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
  expect(statSync(at('data')).mode % 0o1000).toBe(0o700);
  const day = `${service.url}/v1/days/2026-05-16/posted.svg`;
  expect((await fetch(day)).status).toBe(401);
  const words = ['post', at('day.yaml'), '--effort', '1', '--url', service.url];
  const refused = ovenward(words);
  expect(refused.status).toBe(2);
  expect(refused.stderr).toContain('SERVICE_REFUSED');
  const posted = ovenward([...words, '--token-file', at('token')]);
  expect(posted).toMatchObject({ status: 0 });
  expect(posted.stdout).toContain('as plan 1 of that day');
  const headers = { Authorization: `Bearer ${TOKEN}` };
  const sheet = await fetch(day, { headers });
  expect(await sheet.text()).toMatch(/^<svg[\s\S]*Rolls alone/);
  const second = ovenward(['serve']);
  expect(second.status).toBe(2);
  expect(second.stderr).toContain('STORE_REFUSED');
  // Into the file, while the service has it open: the service shows the new one.
  expect(ovenward(['post', at('day.yaml'), '--effort', '1']).status).toBe(0);
  // On a new connection: the commands above held this process up for longer than the service keeps an idle one.
  const entry = await ask(`${service.url}/v1/days/2026-05-16/posted/history`, { headers });
  expect(JSON.parse(entry.text)).toMatchObject({ revisions: [{ revision: 2 }, { revision: 1 }] });
  expect(ovenward(['backup', at('copy.db')]).stdout).toContain('1 posted day.');
  service.child.kill('SIGTERM');
  expect(await service.ended).toBe(0);
  expect(service.err()).toContain('Stopping');
  expect(service.err()).not.toContain(TOKEN);
  const copy = await openStore(at('copy.db'));
  expect((await copy.posted('2026-05-16'))?.revision).toBe(2);
  await copy.close();
});

test('a disk that takes no more: exit code 2, and what was posted stays', { timeout: 180_000 }, async () => {
  const words = `post ${at('day.yaml')} --effort 1 --svg ${at('wall/sheet.svg')}`;
  expect(ovenward(words.split(' ')).status).toBe(0);
  const before = statSync(at('wall/sheet.svg'));
  // No file of more than 4 kB can be written: the page is longer.
  const limited = `trap '' XFSZ; ulimit -f 4; exec "${process.execPath}" "${script}" ${words}`;
  const { status, stderr } = spawnSync('bash', ['-c', limited], { env: env(), encoding: 'utf8' });
  expect({ status, code: /FILE_UNWRITABLE|STORE_REFUSED/.test(stderr) }).toEqual({ status: 2, code: true });
  expect(statSync(at('wall/sheet.svg'))).toMatchObject({ ino: before.ino, mtimeMs: before.mtimeMs });
});

/** A service that answers as it is told, and what it was asked. */
async function answering(answers: readonly { status: number; headers?: Record<string, string>; body?: unknown }[]) {
  const asked: { method: string | undefined; headers: NodeJS.Dict<string | string[]> }[] = [];
  const server: Server = createServer((request, response) => {
    const answer = answers[asked.length];
    asked.push({ method: request.method, headers: request.headers });
    request.resume();
    request.on('end', () => {
      response.writeHead(answer?.status ?? 500, { Connection: 'close', ...answer?.headers });
      response.end(JSON.stringify(answer?.body ?? {}));
    });
  });
  await new Promise<void>((listens) => server.listen(0, '127.0.0.1', listens));
  onTestFinished(() => {
    server.close();
  });
  const address = server.address();
  return { url: `http://127.0.0.1:${typeof address === 'object' && address !== null ? address.port : 0}`, asked };
}

async function posting(url: string, token?: string) {
  const surroundings = surroundingsFor({ env: token === undefined ? {} : { OVENWARD_TOKEN: token } });
  const code = await run(['post', at('day.yaml'), '--url', url], async () => partsFor(), surroundings);
  return { code, out: surroundings.out.text(), err: surroundings.err.text() };
}

test('through a service: on the condition that nothing is posted, or that what was there still is', async () => {
  const first = await answering([{ status: 404 }, { status: 201, body: { revision: 1 } }]);
  expect(await posting(first.url, TOKEN)).toMatchObject({ code: 0 });
  expect(first.asked.map(({ method }) => method)).toEqual(['GET', 'PUT']);
  expect(first.asked[1]?.headers).toMatchObject({ 'if-none-match': '*', authorization: `Bearer ${TOKEN}` });
  const again = await answering([{ status: 200, headers: { ETag: '"a"' } }, { status: 412 }]);
  const refused = await posting(again.url);
  expect(again.asked[1]?.headers).toMatchObject({ 'if-match': '"a"' });
  expect(refused.code).toBe(2);
  expect(refused.err).toContain('POSTED_MEANWHILE');
});

test('what the service says of a plan it does not take is told', async () => {
  const errors = [{ code: 'OTHER_DATE', path: '/plan', says: 'The plan is for another day.', doThis: 'Plan this one.' }];
  const { url } = await answering([{ status: 404 }, { status: 422, body: { detail: 'no', errors } }]);
  const { code, err } = await posting(url);
  expect(code).toBe(2);
  expect(err).toContain('OTHER_DATE');
  expect((await posting('http://127.0.0.1:9')).err).toContain('SERVICE_UNREACHED');
  expect((await posting('bakery')).err).toContain('SETTING_WRONG');
});
