// How large a body may be is a setting of the service.
import { expect, test } from 'vitest';
import { ask, runningHere } from '../running.ts';

test.each(['Content-Length', 'chunks'])('bodyKb counts with %s', async (how) => {
  const limits = { mostSeconds: 30, usualSeconds: 2, requestsPerMinute: 1000, bodyKb: 2 };
  const { url } = await runningHere({ limits });
  const sent = (bytes: number) => {
    const body = `"${'x'.repeat(bytes - 2)}"`;
    const length = how === 'chunks' ? { 'Transfer-Encoding': 'chunked' } : { 'Content-Length': String(bytes) };
    return ask(`${url}/v1/checks`, { method: 'POST', headers: { 'Content-Type': 'application/json', ...length }, body });
  };
  expect((await sent(2000)).status).toBe(422);
  const { status, text } = await sent(2001);
  expect(status).toBe(413);
  expect(JSON.parse(text)).toMatchObject({ detail: 'The body is larger than 2 kB.', errors: [{ code: 'TOO_LARGE' }] });
});
