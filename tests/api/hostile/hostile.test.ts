// A few hundred hostile requests in the suite; 10,000 by hand with npm run hostile. Whatever is sent: a civil answer, never a fault of ours.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Running, running } from '../running.ts';
import { uncivil } from './civil.ts';
import { wrongInMarkup } from './markup.ts';
import { type RawAnswer, type RawRequest, rawBytes, sendRaw } from './rawRequest.ts';
import { otherWork, siege } from './siege.ts';
import { SMUGGLING } from './smuggling.ts';

const TIMES = 300;
const SEED = 20_260_516;
let service: Running;
let port = 0;
beforeAll(async () => {
  service = await running();
  port = Number(new URL(service.url).port);
});
afterAll(() => service.stop());

async function isThere(): Promise<number> {
  return (await fetch(`${service.url}/readyz`)).status;
}

test(`${TIMES} requests of any kind`, { timeout: 120_000 }, async () => {
  const { statuses, types, wrong } = await siege(port, await otherWork(port), TIMES, SEED);
  expect(wrong).toEqual([]);
  expect(service.faults).toEqual([]);
  // They reach every part of the service: what is refused at the door, what is read and wrong, what is planned and drawn.
  for (const status of [200, 400, 404, 405, 406, 413, 415, 421, 422]) expect(statuses.get(status) ?? 0).toBeGreaterThan(0);
  for (const type of ['image/svg+xml', 'text/plain', 'text/calendar', 'application/json'])
    expect(types.get(type) ?? 0).toBeGreaterThan(0);
  expect(await isThere()).toBe(200);
});

test.each(SMUGGLING.map((request) => ({ what: request.what, request })))('$what', async ({ request }) => {
  expect(uncivil(request, await sendRaw(port, request))).toEqual([]);
});

test('streams of events that many follow and leave', async () => {
  const { ids } = await otherWork(port);
  const headers = [
    ['Host', 'localhost'],
    ['Accept', 'text/event-stream'],
  ] as const;
  const follow: RawRequest = { what: 'follow', bytes: rawBytes('GET', `/v1/plans/${ids[0]}/events`, headers), leaveAfterMs: 50 };
  await Promise.all(Array.from({ length: 60 }, () => sendRaw(port, follow)));
  expect(await isThere()).toBe(200);
  expect(service.faults).toEqual([]);
});

test('nothing was written into what all objects share', () => {
  expect(Object.keys(Object.prototype)).toEqual([]);
  expect('polluted' in {}).toBe(false);
});

const REQUEST: RawRequest = { what: 'any', bytes: Buffer.from('GET / HTTP/1.1\r\n\r\n'), isOne: true };
const STRICT = {
  'x-request-id': 'a',
  'x-content-type-options': 'nosniff',
  'content-security-policy': "default-src 'none'",
  'content-type': 'application/problem+json',
};

function problem(status: number): RawAnswer {
  return { status, headers: STRICT, text: JSON.stringify({ status }), count: 1 };
}

test.each<readonly [string, RawAnswer]>([
  ['status 500', problem(500)],
  ['no answer', { ...problem(0), text: '' }],
  ['a stack', { ...problem(404), text: '{"status":404,"detail":"in /app/createApp.ts:3:1"}' }],
  ['2 answers to one request', { ...problem(404), count: 2 }],
  ['no nosniff', { ...problem(404), headers: { ...STRICT, 'x-content-type-options': '' } }],
  ['a problem with another status than its answer', { ...problem(404), text: '{"status":400}' }],
  [
    'the element script',
    { ...problem(200), headers: { ...STRICT, 'content-type': 'image/svg+xml' }, text: '<svg><script/></svg>' },
  ],
])('the check sees %s', (says, answer) => {
  expect(uncivil(REQUEST, answer)).toContain(says);
});

test.each([
  ['<svg onload="x"/>', ['the attribute onload']],
  ['<svg><text a="1"\n onclick="x">a</text></svg>', ['the attribute onclick']],
  ['<svg><foreignObject></foreignObject></svg>', ['the element foreignObject', 'the element foreignObject']],
  ['<a href="javascript:x">a</a>', ['href to javascript:x']],
  ['<svg><text>a < b</text></svg>', ['a < that begins no tag: < b']],
  ['<svg aria-label="x onload=&quot;y&quot;"><text>&lt;script&gt;</text></svg>', []],
])('the check of markup: %s', (text, wrong) => {
  expect(wrongInMarkup(text)).toEqual(wrong);
});
