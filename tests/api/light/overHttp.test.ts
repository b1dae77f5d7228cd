// Light work over HTTP: too much of it is 503, what a thread fails at is 500, and one that has gone is not served.
import { request } from 'node:http';
import { expect, test } from 'vitest';
import { heldCrew } from '../jobs/heldCrew.ts';
import { ask, askJson, runningHere, until } from '../running.ts';
import { doneHere } from './doneHere.ts';

/** Threads that do light work only once they are let go. */
function slowCrew() {
  const begun: string[] = [];
  let letGo: () => void = () => {};
  const gate = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  const light: typeof doneHere = async (kind, given) => {
    begun.push(kind);
    await gate;
    return doneHere(kind, given);
  };
  return { crew: { ...heldCrew(), light }, begun, letGo };
}

test('when as many wait as may, the next is 503 with Retry-After, and the service stays well', async () => {
  const { crew, letGo } = slowCrew();
  const { url, faults, parts } = await runningHere({}, {}, { crew, lightPlaces: 3 });
  const asked = Array.from({ length: 5 }, () => askJson(`${url}/v1/checks`, {}));
  await until(() => parts.jobs.lightWaiting === 3);
  for (const path of ['/v1/plans', '/v1/replans', '/v1/checks']) {
    const { status, headers, text } = await askJson(`${url}${path}`, {});
    expect([status, headers['retry-after']]).toEqual([503, '1']);
    expect(JSON.parse(text).detail).toBe('Too many requests wait to be read. Ask again a little later.');
  }
  expect((await ask(`${url}/healthz`)).status).toBe(200);
  expect((await ask(`${url}/metrics`)).text).toContain('\novenward_light_waiting 3\n');
  letGo();
  expect((await Promise.all(asked)).map(({ status }) => status)).toEqual([422, 422, 422, 422, 422]);
  expect((await askJson(`${url}/v1/checks`, {})).status).toBe(422);
  expect(faults).toEqual([]);
});

test.each(['/v1/checks', '/v1/plans', '/v1/fits', '/v1/comparisons', '/v1/replans'])(
  '%s: a thread that fails is a fault of ours, told without detail and reported',
  async (path) => {
    const fault = new RangeError('secret: JS heap out of memory');
    const { url, faults } = await runningHere({}, {}, { crew: { ...heldCrew(), light: () => Promise.reject(fault) } });
    const { status, headers, text } = await askJson(`${url}${path}`, {});
    expect(status).toBe(500);
    expect(headers['content-type']).toContain('application/problem+json');
    expect(text).not.toMatch(/secret|heap|\bat |\.ts/);
    expect(faults).toEqual([fault]);
  },
);

test('a client that went away while it waited is not served, and is no fault', async () => {
  const { crew, begun, letGo } = slowCrew();
  const { url, faults, parts } = await runningHere({}, {}, { crew, lightPlaces: 1 });
  const served = [askJson(`${url}/v1/checks`, {}), askJson(`${url}/v1/checks`, {})];
  await until(() => begun.length === 2);
  const leaves = request(`${url}/v1/plans`, { method: 'POST', headers: { 'Content-Type': 'application/json' }, agent: false });
  const left = new Promise((resolve) => leaves.on('error', resolve));
  leaves.end('{}');
  await until(() => parts.jobs.lightWaiting === 1);
  leaves.destroy();
  await left;
  await until(() => parts.jobs.lightWaiting === 0);
  letGo();
  expect((await Promise.all(served)).map(({ status }) => status)).toEqual([422, 422]);
  expect((await askJson(`${url}/v1/fits`, {})).status).toBe(422);
  expect(begun).toEqual(['check', 'check', 'ask']);
  expect(faults).toEqual([]);
});
