// The kept and the posted in the whole service: their own caching and policy go before those of every other answer.
import { expect, test } from 'vitest';
import { ask, runningHere } from '../running.ts';
import { BUNS_YAML, buns } from './bunsAlone.ts';

test('a scenario is kept, planned by a thread, posted, and polled', { timeout: 60_000 }, async () => {
  const { url, faults } = await runningHere();
  const yaml = { 'Content-Type': 'application/yaml' };
  expect((await ask(`${url}/v1/scenarios/buns`, { method: 'PUT', headers: yaml, body: BUNS_YAML })).status).toBe(201);
  const headers = { Prefer: 'wait=30' };
  const made = await ask(`${url}/v1/scenarios/buns/plans?effort=5`, { method: 'POST', headers });
  expect(made.status).toBe(200);
  const day = `${url}/v1/days/${buns().date}/posted`;
  const json = { 'Content-Type': 'application/json' };
  const body = JSON.stringify({ plan: JSON.parse(made.text).id });
  expect((await ask(day, { method: 'PUT', headers: json, body })).status).toBe(201);
  const sheet = await ask(`${day}.svg`);
  expect(sheet.status).toBe(200);
  expect(sheet.headers['cache-control']).toBe('private, no-cache');
  expect(sheet.headers['content-security-policy']).toBe(
    "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  );
  const again = await ask(`${day}.svg`, { headers: { 'If-None-Match': String(sheet.headers.etag) } });
  expect([again.status, again.text]).toEqual([304, '']);
  expect((await ask(`${url}/v1/days/2026-04-10/posted`)).headers['cache-control']).toBe('no-store');
  expect(faults).toEqual([]);
});
