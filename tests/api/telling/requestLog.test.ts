// What the log says of requests, and above all what it does not.
import type { RequestHandler } from 'express';
import { expect, test } from 'vitest';
import { Problem } from '../../../src/api/problem.ts';
import { reportTo } from '../../../src/api/telling/report.ts';
import { requestLog } from '../../../src/api/telling/requestLog.ts';
import { type LogLevel, serviceLog } from '../../../src/api/telling/serviceLog.ts';
import { ask, runningHere, until } from '../running.ts';
import { askPath, type SmallApp, smallApp } from '../smallApp.ts';

const UUID = /^[\da-f]{8}-[\da-f]{4}-4[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/;

type Logged = SmallApp & { readonly lines: readonly string[] };

async function logged(last?: RequestHandler, level: LogLevel = 'debug'): Promise<Logged> {
  const lines: string[] = [];
  const log = serviceLog({ level, to: { write: (line) => lines.push(line) } });
  return { ...(await smallApp([requestLog(log)], last, reportTo(log))), lines };
}

async function line({ lines }: Logged): Promise<Record<string, unknown>> {
  await until(() => lines.length > 0);
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(/^[^\n]+\n$/);
  return JSON.parse(lines[0] ?? '');
}

test('which request, what came of it, how long it took: and nothing else', async () => {
  const app = await logged();
  const { headers } = await ask(`${app.url}/v1/plans/abc_DEF-1?seconds=secret`, {
    method: 'POST',
    headers: { Authorization: 'Bearer secret', 'Content-Type': 'application/json', Cookie: 'secret', 'User-Agent': 'secret' },
    body: '{"name": "secret"}',
  });
  const told = await line(app);
  expect(told).toEqual({
    level: 'info',
    time: expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/),
    id: expect.stringMatching(UUID),
    method: 'POST',
    route: '/v1/plans/{id}',
    path: '/v1/plans/abc_DEF-1',
    status: 200,
    ms: expect.any(Number),
    msg: 'answered',
  });
  expect(headers['x-request-id']).toBe(told.id);
});

test.each([
  ['/v1/scenarios/secret', '/v1/scenarios/{name}'],
  ['/v1/scenarios/secret%20day/history', '/v1/scenarios/{name}/history'],
  ['/secret', 'elsewhere'],
  ['/v1/plans/secret%00', 'elsewhere'],
  ['/v1/days/2026-05-16/posted.svg?secret', '/v1/days/2026-05-16/posted.svg'],
])('of %s only %s', async (path, told) => {
  const app = await logged();
  await askPath(app.url, path);
  expect(await line(app)).toMatchObject({ path: told });
  expect(app.lines.join('')).not.toContain('secret');
});

test('a request keeps the name its client gave it, beside ours', async () => {
  const app = await logged();
  const { headers } = await ask(app.url, { headers: { 'X-Request-Id': 'till-42.a' } });
  expect(headers['x-request-id']).toBe('till-42.a');
  expect(await line(app)).toMatchObject({ called: 'till-42.a', id: expect.stringMatching(UUID) });
});

test.each(['', 'a b', '{"level":"error"}', 'x'.repeat(65), '<script>', 'a,b', 'ö'])('but not %j', async (name) => {
  const app = await logged();
  const { headers } = await ask(app.url, { headers: { 'X-Request-Id': Buffer.from(name).toString('latin1') } });
  expect(headers['x-request-id']).toMatch(UUID);
  expect(await line(app)).not.toHaveProperty('called');
});

test('a problem names the occurrence the log has: instance of RFC 9457, section 3.1.5', async () => {
  const app = await logged(() => {
    throw new Problem(409, 'Something is there already.');
  });
  const { text } = await ask(app.url);
  const told = await line(app);
  expect(told).toMatchObject({ level: 'warn', status: 409 });
  expect(told).not.toHaveProperty('err');
  expect(JSON.parse(text).instance).toBe(`urn:uuid:${told.id}`);
});

test('a fault of ours has its stack in the log, once, and nowhere else; what hangs on it is told nowhere', async () => {
  const fault = Object.assign(new RangeError('too far'), { body: 'secret' });
  const app = await logged(() => {
    throw fault;
  });
  const { status, text } = await ask(app.url);
  expect(status).toBe(500);
  expect(text).not.toMatch(/too far|\.ts/);
  await until(() => app.lines.length === 2);
  const [told, request] = app.lines.map((one) => JSON.parse(one));
  const instance = JSON.parse(text).instance;
  expect(told).toEqual({
    level: 'error',
    time: expect.any(String),
    id: instance.replace('urn:uuid:', ''),
    err: { type: 'RangeError', message: 'too far', stack: expect.stringMatching(/requestLog\.test\.ts/) },
    msg: 'a fault of ovenward',
  });
  expect(request).toMatchObject({ level: 'warn', id: told.id, status: 500, msg: 'answered' });
  expect(request).not.toHaveProperty('err');
  expect(app.lines.join('')).not.toContain('secret');
  expect(app.faults).toEqual([fault]);
});

test('busy is nothing that somebody has to look after, unwell is; a client that leaves is told of', async () => {
  const busy = await logged(() => {
    throw new Problem(503, 'The line is full.');
  });
  await ask(busy.url);
  expect(await line(busy)).toMatchObject({ level: 'info', status: 503 });
  const unwell = await logged(() => {
    throw new Problem(503, 'A day of one tray could not be planned.');
  });
  await ask(`${unwell.url}/healthz`);
  expect(await line(unwell)).toMatchObject({ level: 'warn', status: 503 });
  const leave = new AbortController();
  const app = await logged(() => leave.abort());
  await expect(fetch(app.url, { signal: leave.signal })).rejects.toThrow('aborted');
  expect(await line(app)).toMatchObject({ msg: 'given up' });
});

test('those who watch the service fill no log', async () => {
  const app = await logged(undefined, 'info');
  for (const path of ['/healthz', '/readyz', '/metrics']) await ask(app.url + path);
  await ask(`${app.url}/docs`);
  expect(await line(app)).toMatchObject({ path: '/docs' });
});

test('silent is silent', async () => {
  const app = await logged(() => {
    throw new Error('a fault');
  }, 'silent');
  await ask(app.url);
  expect(app.faults).toHaveLength(1);
  expect(app.lines).toEqual([]);
});

test('a store that cannot be read is told with the id of the request that asked', async () => {
  const { parts } = await runningHere();
  const lines: string[] = [];
  const log = serviceLog({ to: { write: (said) => lines.push(said) } });
  const store = { ...parts.store, isReady: () => Promise.reject(new Error('the disk is gone')) };
  const { url } = await runningHere({ log, report: reportTo(log), store });
  const { status, text } = await ask(`${url}/readyz`);
  expect(status).toBe(503);
  await until(() => lines.length === 2);
  const [told, request] = lines.map((one) => JSON.parse(one));
  expect(told).toMatchObject({ level: 'error', err: { message: 'the disk is gone' } });
  expect(request).toMatchObject({ level: 'warn', id: told.id, route: '/readyz', status: 503 });
  expect(JSON.parse(text).instance).toBe(`urn:uuid:${told.id}`);
});
