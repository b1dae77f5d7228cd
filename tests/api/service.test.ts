// Where the service listens, how long it waits for a request, and that making the app listens to nothing.
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { expect, test } from 'vitest';
import { isLoopback } from '../../src/api/loopback.ts';
import { ask, running, runningHere } from './running.ts';

test.each([
  ['127.0.0.1', true],
  ['127.8.9.1', true],
  ['::1', true],
  ['0.0.0.0', false],
  ['::', false],
  ['192.168.1.20', false],
  ['128.0.0.1', false],
  ['localhost', false],
  ['', false],
])('only this machine reaches %s: %s', (address, expected) => {
  expect(isLoopback(address)).toBe(expected);
});

test('by default only this machine reaches it', async () => {
  const { url } = await runningHere();
  expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
  const port = Number(new URL(url).port);
  const outside = Object.values(networkInterfaces())
    .flatMap((all) => all ?? [])
    .filter(({ internal, family }) => !internal && family === 'IPv4');
  for (const { address } of outside) await expect(ask(`http://${address}:${port}/healthz`)).rejects.toThrow();
});

test('an address that others reach is refused until somebody says it may be open', async () => {
  await expect(running({}, { host: '0.0.0.0' })).rejects.toThrow('nobody said it may be');
  const { url } = await runningHere({}, { host: '0.0.0.0', isOpenToAnyone: true });
  const port = new URL(url).port;
  expect((await ask(`http://127.0.0.1:${port}/healthz`, { headers: { Host: 'bakery.example' } })).status).toBe(200);
});

test.each(['localhost', 'LOCALHOST:80', '127.0.0.1:9', '[::1]:80'])('it answers to the name %s', async (host) => {
  const { url } = await runningHere();
  expect((await ask(`${url}/healthz`, { headers: { Host: host } })).status).toBe(200);
});

test.each(['localhost.bakery.example', '127.0.0.1.bakery.example', '10.0.0.1', '[::2]'])('not to the name %j', async (host) => {
  const { url } = await runningHere();
  expect((await ask(`${url}/healthz`, { headers: { Host: host } })).status).toBe(421);
});

test('a port that is taken is an error for whoever starts it', async () => {
  const { url } = await runningHere();
  await expect(running({}, { port: Number(new URL(url).port) })).rejects.toThrow('EADDRINUSE');
});

test.each([
  ['headers', 'POST /v1/plans HTTP/1.1\r\nHost: localhost\r\n'],
  ['body', 'POST /v1/plans HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 9\r\n\r\n{'],
])('a request cut short in its %s is not waited for', async (_, text) => {
  const { url, faults } = await runningHere({}, { arrivalSeconds: 0.5 });
  const socket = connect(Number(new URL(url).port), '127.0.0.1');
  let heard = '';
  socket.on('data', (chunk) => {
    heard += chunk;
  });
  const closed = new Promise((resolve) => socket.on('close', resolve));
  socket.write(text);
  await closed;
  expect(heard).toContain('408 Request Timeout');
  expect(faults).toEqual([]);
});

test('a connection kept alive does not hold up the stop', async () => {
  const service = await running();
  const socket = connect(Number(new URL(service.url).port), '127.0.0.1');
  const answered = new Promise((resolve) => socket.once('data', resolve));
  socket.write('GET /healthz HTTP/1.1\r\nHost: localhost\r\n\r\n');
  await answered;
  const startedAt = performance.now();
  await service.stop();
  expect(performance.now() - startedAt).toBeLessThan(2000);
});
