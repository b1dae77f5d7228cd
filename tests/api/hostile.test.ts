// Whatever is sent, in whatever shape: an answer that says what is wrong, never a fault of ours and never a stack.
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { parse } from 'yaml';
import { spoiledText, spoiledValue } from '../read/spoiling.ts';
import { GOOD } from '../read/wholeScenario.ts';
import { type Answer, ask, type Running, running } from './running.ts';

const STATUSES = [200, 400, 404, 405, 406, 413, 415, 422];
const good: unknown = parse(GOOD);
let service: Running;
beforeAll(async () => {
  service = await running();
});
afterAll(() => service.stop());

function expectCivil({ status, headers, text }: Answer): void {
  expect(STATUSES).toContain(status);
  expect(text).not.toMatch(/\n\s+at |node_modules|\.ts:\d/);
  if (status !== 200) {
    expect(headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(JSON.parse(text).status).toBe(status);
  }
  expect(service.faults).toEqual([]);
}

async function post(path: string, type: string, body: string | Uint8Array): Promise<Answer> {
  const answer = await ask(service.url + path, { method: 'POST', headers: { 'Content-Type': type }, body });
  expectCivil(answer);
  return answer;
}

const PLANS = '/v1/plans?effort=1&seconds=0.2';
const isBad = ({ status }: Answer): boolean => status === 400 || status === 422;

test('scenarios spoiled as text', { timeout: 120_000 }, async () => {
  let bad = 0;
  const property = fc.asyncProperty(spoiledText(GOOD), async (text) => {
    if (isBad(await post(PLANS, 'application/yaml', text))) bad += 1;
  });
  await fc.assert(property, { numRuns: 150 });
  expect(bad).toBeGreaterThan(20);
});

test('scenarios spoiled as values', { timeout: 120_000 }, async () => {
  let bad = 0;
  const property = fc.asyncProperty(spoiledValue(good), async (value) => {
    if (isBad(await post(PLANS, 'application/json', JSON.stringify(value)))) bad += 1;
  });
  await fc.assert(property, { numRuns: 150 });
  expect(bad).toBeGreaterThan(20);
});

test('plans to be judged, spoiled', { timeout: 120_000 }, async () => {
  const made = await post(PLANS, 'application/json', JSON.stringify(good));
  expect(made.status).toBe(200);
  const seen = new Set<number>();
  const whole = { scenario: good, plan: JSON.parse(made.text) };
  const property = fc.asyncProperty(spoiledValue(whole), async (value) => {
    seen.add((await post('/v1/checks', 'application/json', JSON.stringify(value))).status);
  });
  await fc.assert(property, { numRuns: 150 });
  expect([...seen].sort()).toEqual([200, 422]);
});

const word = fc.oneof(fc.constantFrom('seconds', 'effort', 'seed', '__proto__', 'seconds[]', ''), fc.string({ maxLength: 8 }));
const asked = fc.record({
  method: fc.constantFrom('POST', 'POST', 'POST', 'GET', 'PUT', 'PATCH', 'DELETE', 'OPTIONS', 'HEAD'),
  path: fc.oneof(
    fc.constantFrom('/v1/plans', '/v1/checks', '/healthz', '/', '//', '/%', '/v1/%00', '/v1/plans/../../etc'),
    fc.webPath(),
  ),
  query: fc.array(fc.tuple(word, word), { maxLength: 3 }),
  type: fc.oneof(
    fc.constantFrom(
      'application/json',
      'application/yaml',
      'application/json; charset=utf-8',
      'text/plain',
      'multipart/form-data',
    ),
    fc.stringMatching(/^[\x20-\x7e]{0,30}$/),
  ),
  accept: fc.oneof(fc.constantFrom('*/*', 'application/json', 'text/plain', 'image/*'), fc.stringMatching(/^[\x20-\x7e]{0,30}$/)),
  body: fc.oneof(
    fc.uint8Array({ maxLength: 200 }),
    fc.json().map((text) => Buffer.from(text)),
    fc.string().map((text) => Buffer.from(text)),
  ),
});

test('requests of any shape', { timeout: 120_000 }, async () => {
  const property = fc.asyncProperty(asked, async ({ method, path, query, type, accept, body }) => {
    const words = query.map(([key, value]) => `${encodeURIComponent(key)}=${encodeURIComponent(value)}`).join('&');
    const headers = { 'Content-Type': type, Accept: accept, 'Content-Length': String(body.length) };
    const answer = await ask(`${service.url}${path}?${words}`, { method, headers, body });
    if (method === 'HEAD') expect(STATUSES).toContain(answer.status);
    else expectCivil(answer);
  });
  await fc.assert(property, { numRuns: 300 });
});
