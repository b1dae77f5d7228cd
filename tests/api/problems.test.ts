// Every status that is an error, as problem details; and that the service is shut where it should be.
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { OwnFault } from '../../src/model/ownFault.ts';
import { scenarioText } from '../scenarios/allScenarios.ts';
import { heldCrew } from './jobs/heldCrew.ts';
import { type Answer, type Asked, ask, askJson, askYaml, type Running, running, runningHere, until, WAIT } from './running.ts';

const JSON_TYPE = { 'Content-Type': 'application/json' };
const good = scenarioText('only-what-must-be-said');
let service: Running;
beforeAll(async () => {
  service = await running();
});
afterAll(() => service.stop());

function problemIn({ status, headers, text }: Answer) {
  expect(headers['content-type']).toMatch(/^application\/problem\+json/);
  const problem = JSON.parse(text);
  expect(problem).toMatchObject({ type: 'about:blank', status, title: expect.any(String), detail: expect.any(String) });
  return problem;
}

const post = (body: string | Uint8Array, headers: Asked['headers'] = JSON_TYPE): Asked => ({ method: 'POST', headers, body });
const withType = (type: string) => ({ 'Content-Type': type });
type Case = readonly [what: string, path: string, asked: Asked, status: number, code?: string];
const CASES: readonly Case[] = [
  ['broken JSON', '/v1/plans', post('{"scenario": 1,'), 400, 'SYNTAX'],
  ['YAML sent as JSON', '/v1/plans', post(good), 400, 'SYNTAX'],
  ['broken YAML', '/v1/plans', post('a: [1', withType('application/yaml')), 400, 'SYNTAX'],
  ['an empty body', '/v1/plans', post(''), 400, 'EMPTY'],
  ['bytes that are no UTF-8', '/v1/plans', post(Uint8Array.of(0x7b, 0xff, 0x7d)), 400, 'BINARY_TEXT'],
  ['broken JSON to be judged', '/v1/checks', post('{"scenario"'), 400, 'SYNTAX'],
  ['seconds out of bounds', '/v1/plans?seconds=31', post('{}'), 400, 'OUT_OF_BOUNDS'],
  ['seconds in words', '/v1/plans?seconds=soon', post('{}'), 400, 'WRONG_TYPE'],
  ['seconds twice', '/v1/plans?seconds=1&seconds=2', post('{}'), 400, 'WRONG_TYPE'],
  ['a seed that is not whole', '/v1/plans?seed=1.5', post('{}'), 400, 'NOT_WHOLE'],
  ['an unknown word in the query', '/v1/plans?secnds=3', post('{}'), 400, 'UNKNOWN_KEY'],
  ['nothing there', '/', {}, 404],
  ['nothing there under /v1', '/v1/breads', post('{}'), 404],
  ['a file of the house', '/package.json', {}, 404],
  ['a path out of the house', '/..%2f..%2fetc/passwd', {}, 404],
  ['a media type nobody makes', '/v1/plans', post('{}', { ...JSON_TYPE, Accept: 'application/pdf' }), 406],
  ['a verdict as a picture', '/v1/checks', post('{}', { ...JSON_TYPE, Accept: 'image/svg+xml' }), 406],
  ['a body over 1 MB', '/v1/plans', post('x'.repeat(1_000_001)), 413, 'TOO_LARGE'],
  ['a form', '/v1/plans', post('a=b', withType('application/x-www-form-urlencoded')), 415],
  ['text, as any web page may send', '/v1/plans', post('{}', withType('text/plain')), 415],
  ['no content type', '/v1/plans', post('{}', {}), 415],
  ['another charset', '/v1/plans', post('{}', withType('application/json; charset=utf-16')), 415],
  ['YAML to be judged', '/v1/checks', post('a: 1', withType('application/yaml')), 415],
  ['a compressed body', '/v1/plans', post(gzipSync('{}'), { ...JSON_TYPE, 'Content-Encoding': 'gzip' }), 415],
  ['another host', '/healthz', { headers: { Host: 'bakery.example' } }, 421],
  ['a scenario that is wrong', '/v1/plans', post('{"scenario": 1}'), 422, 'MISSING'],
  ['JSON with a key twice', '/v1/plans', post('{"scenario": 1, "scenario": 1}'), 422, 'DUPLICATE_KEY'],
];

test.each(CASES.map((one) => ({ what: one[0], one })))('$what', async ({ one: [, path, asked, status, code] }) => {
  const answer = await ask(service.url + path, asked);
  expect(answer.status).toBe(status);
  const { errors } = problemIn(answer);
  if (code === undefined) expect(errors).toBeUndefined();
  else expect(errors).toContainEqual(expect.objectContaining({ code, says: expect.any(String), doThis: expect.any(String) }));
});

test.each([
  ['GET', '/v1/plans', 'POST'],
  ['PUT', '/v1/plans', 'POST'],
  ['OPTIONS', '/v1/plans', 'POST'],
  ['DELETE', '/v1/checks', 'POST'],
  ['PUT', '/v1/plans/some-id', 'GET, HEAD, DELETE'],
  ['POST', '/v1/plans/some-id/events', 'GET, HEAD'],
  ['POST', '/healthz', 'GET, HEAD'],
  ['POST', '/readyz', 'GET, HEAD'],
])('%s %s: 405, and Allow says %s', async (method, path, allow) => {
  const answer = await ask(service.url + path, { method });
  expect(answer.status).toBe(405);
  expect(answer.headers.allow).toBe(allow);
  problemIn(answer);
});

test('415 says what would be read', async () => {
  const { headers } = await ask(`${service.url}/v1/plans`, post('x', withType('text/csv')));
  expect(headers.accept).toBe('application/json, application/yaml');
});

test('all errors of a scenario at once, each with its line, in YAML and in JSON', async () => {
  const spoiled = good.replace('heatUpCPerMinute', 'heatUpCPerMinut').replace('shelves: 4', 'shelves: many');
  const { errors } = problemIn(await askYaml(`${service.url}/v1/plans`, spoiled));
  expect(errors.length).toBeGreaterThan(1);
  for (const error of errors) expect(error).toMatchObject({ line: expect.any(Number), column: expect.any(Number) });
  const inJson = problemIn(await ask(`${service.url}/v1/plans`, post('{\n  "scenario": 1,\n  "nam": "x"\n}')));
  expect(inJson.errors).toContainEqual(expect.objectContaining({ path: '/nam', line: 3, column: 3 }));
});

test('headers: shut tight, and no word of what it is built with', async () => {
  const { status, headers } = await ask(`${service.url}/healthz`);
  expect(status).toBe(200);
  expect(headers['content-security-policy']).toContain("default-src 'none'");
  expect(headers['x-content-type-options']).toBe('nosniff');
  expect(headers['cache-control']).toBe('no-store');
  expect(headers['x-powered-by']).toBeUndefined();
  expect(headers['access-control-allow-origin']).toBeUndefined();
});

describe('a fault of ours', () => {
  test.each([
    ['while planning', new OwnFault('The plan broke a rule', ['secret detail'])],
    ['of any kind', new TypeError('secret detail')],
    ['thrown as text', 'secret detail'],
  ])('%s: 500, told to the log and to nobody else', async (_, fault) => {
    const crew = { ...heldCrew(), search: () => ({ answer: Promise.reject(fault), stop: () => {}, kill: () => {} }) };
    const broken = await runningHere({}, {}, { crew });
    const says = 'This is a fault of ovenward, not of your request.';
    const work = await askYaml(`${broken.url}/v1/plans`, good, WAIT);
    expect(JSON.parse(work.text)).toMatchObject({ state: 'failed', answer: null, failure: { says, errors: [] } });
    const answer = await ask(`${broken.url}/v1/plans/${JSON.parse(work.text).id}.svg`);
    expect(answer.status).toBe(500);
    expect(problemIn(answer).detail).toBe(says);
    expect(work.text + answer.text).not.toMatch(/secret|\bat |\.ts/);
    expect(broken.faults).toEqual([fault]);
    // The thread is free again.
    await until(() => broken.parts.jobs.running === 0);
  });

  test('in a thread that judges', async () => {
    const fault = new RangeError('secret detail');
    const broken = await runningHere({}, {}, { crew: { ...heldCrew(), light: () => Promise.reject(fault) } });
    const answer = await askJson(`${broken.url}/v1/checks`, { scenario: {}, plan: {} });
    expect(answer.status).toBe(500);
    expect(answer.text).not.toMatch(/secret|\bat |\.ts/);
    expect(broken.faults).toEqual([fault]);
  });
});

test('none of these was a fault of ours', () => {
  expect(service.faults).toEqual([]);
});
