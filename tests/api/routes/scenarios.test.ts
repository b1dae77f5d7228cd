// Scenarios kept under names: put, fetched, listed, their history; conditional requests by RFC 9110's rules; names that are no tricks.
import { expect, test } from 'vitest';
import { planSchema } from '../../../src/model/plan.ts';
import { ask, askJson } from '../running.ts';
import { BUNS_YAML, buns } from './bunsAlone.ts';
import { routesHere } from './routesHere.ts';

type Headers = Readonly<Record<string, string>>;

function put(url: string, body: string | Uint8Array, headers: Headers = {}) {
  return ask(url, { method: 'PUT', headers: { 'Content-Type': 'application/yaml', ...headers }, body });
}

function tagIn(headers: Readonly<Record<string, string | string[] | undefined>>): string {
  expect(headers.etag).toMatch(/^"[A-Za-z0-9_-]{43}"$/);
  return String(headers.etag);
}

test('new is 201, again is 200; what was sent comes back to the byte', async () => {
  const { url, faults } = await routesHere();
  const saturday = `${url}/v1/scenarios/saturday`;
  const first = await put(saturday, BUNS_YAML);
  expect(first.status).toBe(201);
  expect(JSON.parse(first.text)).toEqual({
    name: 'saturday',
    revision: 1,
    savedAt: '2026-04-08T03:30:00.000Z',
    mediaType: 'application/yaml',
  });
  const second = await put(saturday, BUNS_YAML.replace('pieces: 40', 'pieces: 60'));
  expect([second.status, JSON.parse(second.text).revision]).toEqual([200, 2]);
  const same = await put(saturday, BUNS_YAML.replace('pieces: 40', 'pieces: 60'));
  expect([same.status, JSON.parse(same.text).revision]).toEqual([200, 2]);
  const got = await ask(saturday);
  expect(got.text).toBe(BUNS_YAML.replace('pieces: 40', 'pieces: 60'));
  expect(got.headers).toMatchObject({
    'content-type': 'application/yaml; charset=utf-8',
    'cache-control': 'private, no-cache',
    vary: 'Accept',
  });
  expect(tagIn(got.headers)).toBe(tagIn(second.headers));
  expect((await ask(`${saturday}/history/1`)).text).toBe(BUNS_YAML);
  expect(faults).toEqual([]);
});

test('a scenario in YAML is told as JSON by Accept, with a tag of its own; one in JSON only as JSON', async () => {
  const { url, faults } = await routesHere();
  await put(`${url}/v1/scenarios/yaml`, BUNS_YAML);
  const asJson = await ask(`${url}/v1/scenarios/yaml`, { headers: { Accept: 'application/json' } });
  expect(asJson.headers['content-type']).toBe('application/json; charset=utf-8');
  expect(JSON.parse(asJson.text)).toEqual(JSON.parse(JSON.stringify(buns())));
  expect(tagIn(asJson.headers)).not.toBe(tagIn((await ask(`${url}/v1/scenarios/yaml`)).headers));
  const json = JSON.stringify(buns());
  expect((await put(`${url}/v1/scenarios/json`, json, { 'Content-Type': 'application/json' })).status).toBe(201);
  expect((await ask(`${url}/v1/scenarios/json`)).text).toBe(json);
  expect((await ask(`${url}/v1/scenarios/json`, { headers: { Accept: 'application/yaml' } })).status).toBe(406);
  expect(faults).toEqual([]);
});

test('HEAD is GET without the body (RFC 9110, section 9.3.2)', async () => {
  const { url } = await routesHere();
  await put(`${url}/v1/scenarios/saturday`, BUNS_YAML);
  const got = await ask(`${url}/v1/scenarios/saturday`);
  const head = await ask(`${url}/v1/scenarios/saturday`, { method: 'HEAD' });
  expect(head.status).toBe(200);
  expect(head.text).toBe('');
  for (const name of ['etag', 'content-type', 'content-length', 'cache-control', 'vary'])
    expect(head.headers[name], name).toBe(got.headers[name]);
});

test('the list and the history, newest first', async () => {
  const { url, clock } = await routesHere();
  expect(JSON.parse((await ask(`${url}/v1/scenarios`)).text)).toEqual({ scenarios: [] });
  await put(`${url}/v1/scenarios/b`, BUNS_YAML);
  clock.instant = '2026-04-08T04:00:00.000Z';
  await put(`${url}/v1/scenarios/a`, BUNS_YAML);
  await put(`${url}/v1/scenarios/b`, BUNS_YAML.replace('pieces: 40', 'pieces: 20'));
  const list = await ask(`${url}/v1/scenarios`);
  const entry = { mediaType: 'application/yaml', savedAt: clock.instant };
  expect(JSON.parse(list.text)).toEqual({
    scenarios: [
      { ...entry, name: 'a', revision: 1 },
      { ...entry, name: 'b', revision: 2 },
    ],
  });
  expect((await ask(`${url}/v1/scenarios`, { headers: { 'If-None-Match': tagIn(list.headers) } })).status).toBe(304);
  const history = await ask(`${url}/v1/scenarios/b/history`);
  const revisions = [2, 1].map((revision) => expect.objectContaining({ name: 'b', revision }));
  expect(JSON.parse(history.text)).toEqual({ name: 'b', revisions });
});

test.each([
  ['the tag that is here', (tag: string) => tag, 304],
  ['one of several', (tag: string) => `"x", ${tag}`, 304],
  // Section 13.1.2: If-None-Match compares weakly.
  ['the same tag, weak', (tag: string) => `W/${tag}`, 304],
  ['anything', () => '*', 304],
  ['another tag', () => '"x"', 200],
  ['the tag without its quotes, which is no tag (section 8.8.3)', (tag: string) => tag.slice(1, -1), 200],
])('GET If-None-Match %s (RFC 9110, section 13.1.2)', async (_, headerFor, status) => {
  const { url } = await routesHere();
  const tag = tagIn((await put(`${url}/v1/scenarios/saturday`, BUNS_YAML)).headers);
  const got = await ask(`${url}/v1/scenarios/saturday`, { headers: { 'If-None-Match': headerFor(tag) } });
  expect(got.status).toBe(status);
  if (status !== 304) return;
  // Section 15.4.5: no content, and the fields a 200 would have had for caches.
  expect(got.text).toBe('');
  expect(got.headers).toMatchObject({ etag: tag, 'cache-control': 'private, no-cache', vary: 'Accept' });
});

test.each([
  ['the tag that is here', (tag: string) => tag, 200],
  ['one of several', (tag: string) => `"x" , ${tag}`, 200],
  ['anything', () => '*', 200],
  ['another tag', () => '"x"', 412],
  // Section 13.1.1: If-Match compares strongly.
  ['the same tag, weak', (tag: string) => `W/${tag}`, 412],
])('PUT If-Match %s (RFC 9110, section 13.1.1)', async (_, headerFor, status) => {
  const { url, faults } = await routesHere();
  const saturday = `${url}/v1/scenarios/saturday`;
  const tag = tagIn((await put(saturday, BUNS_YAML)).headers);
  const after = await put(saturday, BUNS_YAML.replace('pieces: 40', 'pieces: 60'), { 'If-Match': headerFor(tag) });
  expect(after.status).toBe(status);
  expect(JSON.parse((await ask(`${saturday}/history`)).text).revisions.length).toBe(status === 200 ? 2 : 1);
  if (status === 412) expect(after.headers['content-type']).toMatch(/^application\/problem\+json/);
  expect(faults).toEqual([]);
});

test('the tag of its JSON names a scenario as well as that of its text does', async () => {
  const { url } = await routesHere();
  const saturday = `${url}/v1/scenarios/saturday`;
  await put(saturday, BUNS_YAML);
  const { headers } = await ask(saturday, { headers: { Accept: 'application/json' } });
  const json = JSON.stringify(buns());
  expect((await put(saturday, json, { 'Content-Type': 'application/json', 'If-Match': tagIn(headers) })).status).toBe(200);
});

test('PUT If-None-Match: * makes and never replaces; If-Match: * replaces and never makes (sections 13.1.1, 13.1.2)', async () => {
  const { url } = await routesHere();
  const saturday = `${url}/v1/scenarios/saturday`;
  expect((await put(saturday, BUNS_YAML, { 'If-Match': '*' })).status).toBe(412);
  expect((await ask(saturday)).status).toBe(404);
  expect((await put(saturday, BUNS_YAML, { 'If-None-Match': '*' })).status).toBe(201);
  expect((await put(saturday, BUNS_YAML, { 'If-None-Match': '*' })).status).toBe(412);
});

test('of two who change the same revision at once one is told so', async () => {
  const { url } = await routesHere();
  const saturday = `${url}/v1/scenarios/saturday`;
  const tag = tagIn((await put(saturday, BUNS_YAML)).headers);
  const both = [10, 20, 30, 50, 60].map((pieces) =>
    put(saturday, BUNS_YAML.replace('pieces: 40', `pieces: ${pieces}`), { 'If-Match': tag }),
  );
  expect((await Promise.all(both)).map(({ status }) => status).sort()).toEqual([200, 412, 412, 412, 412]);
  expect(JSON.parse((await ask(`${saturday}/history`)).text).revisions.length).toBe(2);
});

test('conditions are asked before what the body says, and after what is wrong without it (section 13.2.1)', async () => {
  const { url } = await routesHere();
  const saturday = `${url}/v1/scenarios/saturday`;
  expect((await put(saturday, 'nonsense', { 'If-Match': '"x"' })).status).toBe(412);
  expect((await put(saturday, BUNS_YAML, { 'If-Match': '"x"', 'Content-Type': 'text/html' })).status).toBe(415);
});

test('a condition on a date is passed over, for there are none (sections 13.1.3, 13.1.4)', async () => {
  const { url } = await routesHere();
  const saturday = `${url}/v1/scenarios/saturday`;
  const date = 'Sat, 01 Jan 2050 00:00:00 GMT';
  expect((await put(saturday, BUNS_YAML, { 'If-Unmodified-Since': 'Sat, 01 Jan 2000 00:00:00 GMT' })).status).toBe(201);
  const got = await ask(saturday, { headers: { 'If-Modified-Since': date } });
  expect(got.status).toBe(200);
  expect(got.headers['last-modified']).toBeUndefined();
});

test('every error at once, with line and column; nothing is kept', async () => {
  const { url } = await routesHere();
  const wrong = await put(`${url}/v1/scenarios/saturday`, BUNS_YAML.replace('name:', 'nam:').replace('"08:00"', '"8 sharp"'));
  expect(wrong.status).toBe(422);
  const codes = JSON.parse(wrong.text).errors.map(({ code, line }: Record<string, unknown>) => [code, typeof line]);
  expect(codes).toEqual([
    ['UNKNOWN_KEY', 'number'],
    ['BAD_TIME', 'number'],
  ]);
  expect((await put(`${url}/v1/scenarios/saturday`, '{', { 'Content-Type': 'application/json' })).status).toBe(400);
  expect((await put(`${url}/v1/scenarios/saturday`, '')).status).toBe(400);
  expect((await ask(`${url}/v1/scenarios/saturday`)).status).toBe(404);
});

test.each([
  '..%2f..%2fetc%2fpasswd',
  '%2e%2e',
  '.hidden',
  'a%00b',
  'a%20b',
  '__proto__',
  'constructor',
  '%3Cscript%3E',
  'x'.repeat(61),
  'caf%C3%A9',
])('no name: %s', async (name) => {
  const { url, faults } = await routesHere();
  const sent = await put(`${url}/v1/scenarios/${name}`, BUNS_YAML);
  // An URL with dots is made plain by whoever sends it.
  expect([400, 404, 405]).toContain(sent.status);
  expect((await ask(`${url}/v1/scenarios/${name}`, { headers: { Accept: 'application/json' } })).status).not.toBe(500);
  expect(JSON.parse((await ask(`${url}/v1/scenarios`)).text).scenarios).toEqual([]);
  expect(faults).toEqual([]);
});

test('a percent sign that stands for nothing is a 400', async () => {
  const { url, faults } = await routesHere();
  expect((await ask(`${url}/v1/scenarios/%zz`)).status).toBe(400);
  expect(faults).toEqual([]);
});

test('other methods and other revisions', async () => {
  const { url } = await routesHere();
  await put(`${url}/v1/scenarios/saturday`, BUNS_YAML);
  const deleted = await ask(`${url}/v1/scenarios/saturday`, { method: 'DELETE' });
  expect([deleted.status, deleted.headers.allow]).toEqual([405, 'GET, HEAD, PUT']);
  for (const revision of ['2', '0', '-1', '1.0', 'last', '99999999999999999999'])
    expect((await ask(`${url}/v1/scenarios/saturday/history/${revision}`)).status, revision).toBe(404);
});

test('a plan of the last revision, made as every plan is', async () => {
  const { url, faults } = await routesHere();
  await put(`${url}/v1/scenarios/saturday`, BUNS_YAML);
  await put(`${url}/v1/scenarios/saturday`, BUNS_YAML.replace('pieces: 40', 'pieces: 20'));
  const headers = { Prefer: 'wait=20' };
  const made = await ask(`${url}/v1/scenarios/saturday/plans?effort=5`, { method: 'POST', headers });
  expect(made.status).toBe(200);
  const { answer, kind } = JSON.parse(made.text);
  expect(kind).toBe('plan');
  expect(planSchema.parse(answer).tasks.filter(({ step }) => step === 'bake').length).toBe(1);
  expect(made.headers.location).toMatch(/^\/v1\/plans\/[\w-]+$/);
  expect((await ask(`${url}${made.headers.location}`)).status).toBe(200);
  expect((await ask(`${url}/v1/scenarios/sunday/plans`, { method: 'POST' })).status).toBe(404);
  expect((await ask(`${url}/v1/scenarios/saturday/plans`)).status).toBe(405);
  expect((await ask(`${url}/v1/scenarios/saturday/plans?effort=none`, { method: 'POST' })).status).toBe(400);
  const id = String(made.headers.location).split('/').at(-1);
  expect((await ask(`${url}/v1/scenarios/saturday/plans/${id}`)).status).toBe(404);
  expect((await askJson(`${url}/v1/scenarios/saturday`, {})).status).toBe(405);
  expect(faults).toEqual([]);
});
