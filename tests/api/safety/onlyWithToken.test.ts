// The token at the door, against the rules of RFC 6750 (Bearer tokens) and RFC 9110 (WWW-Authenticate).
import { expect, test } from 'vitest';
import { onlyWithToken } from '../../../src/api/safety/onlyWithToken.ts';
import { ask } from '../running.ts';
import { askPath, smallApp } from '../smallApp.ts';

const TOKEN = 'rye-and-salt_7.~+/==';

test.each([
  ['the token', `Bearer ${TOKEN}`],
  ['the scheme in small letters (RFC 9110, section 11.1)', `bearer ${TOKEN}`],
  ['more than one blank', `Bearer   ${TOKEN}`],
])('%s: in', async (_, authorization) => {
  const { url } = await smallApp([onlyWithToken(TOKEN)]);
  const { status, text } = await ask(`${url}/v1/plans`, { headers: { Authorization: authorization } });
  expect([status, text]).toEqual([200, 'in']);
});

test('nothing shown: 401 and how to ask, without a word of error (RFC 6750, section 3.1)', async () => {
  const { url } = await smallApp([onlyWithToken(TOKEN)]);
  const { status, headers, text } = await ask(`${url}/v1/plans`);
  expect(status).toBe(401);
  expect(headers['www-authenticate']).toBe('Bearer realm="ovenward"');
  expect(headers['content-type']).toMatch(/^application\/problem\+json/);
  expect(JSON.parse(text)).toMatchObject({ status: 401, title: 'Unauthorized' });
});

test.each([
  ['another token', 'Bearer rye-and-salt_7.~+/='],
  ['the beginning of it', `Bearer ${TOKEN.slice(0, -3)}`],
  ['more than it', `Bearer x${TOKEN}`],
  ['an empty one', 'Bearer '],
  ['no blank', `Bearer${TOKEN}`],
  ['another scheme', `Basic ${Buffer.from(`baker:${TOKEN}`).toString('base64')}`],
  ['the token alone', TOKEN],
  ['two tokens', `Bearer ${TOKEN}, Bearer ${TOKEN}`],
])('%s: 401, invalid_token, and the token is told to nobody', async (_, authorization) => {
  const { url, faults } = await smallApp([onlyWithToken(TOKEN)]);
  const { status, headers, text } = await ask(`${url}/v1/plans`, { headers: { Authorization: authorization } });
  expect(status).toBe(401);
  expect(headers['www-authenticate']).toBe('Bearer realm="ovenward", error="invalid_token"');
  expect(text).not.toContain('rye-and-salt');
  expect(faults).toEqual([]);
});

test('in the address or the body it counts for nothing (RFC 6750, section 5.3)', async () => {
  const { url } = await smallApp([onlyWithToken(TOKEN)]);
  expect((await ask(`${url}/v1/plans?access_token=${encodeURIComponent(TOKEN)}`)).status).toBe(401);
});

test.each([
  ['/healthz', 200],
  ['/readyz', 200],
  ['/readyz?deep', 200],
  ['/metrics', 401],
  ['/docs', 401],
  ['/healthz/', 401],
  ['//healthz', 401],
  ['/HEALTHZ', 401],
  ['/v1/../healthz', 401],
  ['/v1/plans/%2e%2e/healthz', 401],
])('without a token %s: %i', async (path, status) => {
  const { url } = await smallApp([onlyWithToken(TOKEN)]);
  expect(await askPath(url, path)).toBe(status);
});
