// Requests per minute and address: counted, told in the headers of the IETF draft, refused past the limit.
import { expect, test } from 'vitest';
import { rates } from '../../../src/api/safety/rates.ts';
import { ask } from '../running.ts';
import { smallApp } from '../smallApp.ts';

test('up to the limit in, past it 429 with Retry-After (RFC 6585, section 4)', async () => {
  const { url, faults } = await smallApp([rates(3)]);
  for (const left of [2, 1, 0]) {
    const { status, headers } = await ask(url);
    expect(status).toBe(200);
    // draft-ietf-httpapi-ratelimit-headers-08, section 4: a list of policies, each with what remains.
    expect(headers.ratelimit).toMatch(new RegExp(`^"3-in-1min"; r=${left}; t=\\d+$`));
    expect(headers['ratelimit-policy']).toMatch(/^"3-in-1min"; q=3; w=60/);
  }
  const { status, headers, text } = await ask(url);
  expect(status).toBe(429);
  expect(Number(headers['retry-after'])).toBeGreaterThan(0);
  expect(Number(headers['retry-after'])).toBeLessThanOrEqual(60);
  expect(headers['content-type']).toMatch(/^application\/problem\+json/);
  expect(JSON.parse(text)).toMatchObject({ status: 429, title: 'Too Many Requests' });
  expect(faults).toEqual([]);
});

test('/healthz is neither counted nor refused', async () => {
  const { url } = await smallApp([rates(1)]);
  for (let time = 0; time < 4; time += 1) expect((await ask(`${url}/healthz`)).status).toBe(200);
  expect((await ask(url)).status).toBe(200);
  expect((await ask(url)).status).toBe(429);
  expect((await ask(`${url}/healthz`)).status).toBe(200);
});

test.each(['X-Forwarded-For', 'Forwarded', 'X-Real-IP'])('%s makes nobody another client', async (header) => {
  const { url } = await smallApp([rates(1)]);
  expect((await ask(url, { headers: { [header]: '192.0.2.1' } })).status).toBe(200);
  expect((await ask(url, { headers: { [header]: '192.0.2.2' } })).status).toBe(429);
});
