// Prefer, Idempotency-Key and clients that go away, over HTTP, around searches that last until they are told.
import { request } from 'node:http';
import { expect, test } from 'vitest';
import { scenarioText } from '../scenarios/allScenarios.ts';
import { heldCrew } from './jobs/heldCrew.ts';
import { ask, askYaml, runningHere, until, WAIT } from './running.ts';

const body = scenarioText('only-what-must-be-said');

async function held() {
  const crew = heldCrew();
  const service = await runningHere({}, {}, { crew, places: 2 });
  return { crew, service, plans: `${service.url}/v1/plans`, jobs: service.parts.jobs };
}

/** Asks for a plan and can go away again; `gone` resolves once the connection is shut. */
function client(url: string, headers: Readonly<Record<string, string>> = WAIT) {
  const sent = request(url, { method: 'POST', headers: { 'Content-Type': 'application/yaml', ...headers }, agent: false });
  const gone = new Promise<void>((resolve) => sent.once('close', () => resolve()));
  sent.once('error', () => sent.destroy());
  sent.end(body);
  return {
    leave: async () => {
      sent.destroy();
      await gone;
    },
  };
}

test.each([
  ['wait=60', 200, 'wait=60'],
  ['Wait="60"', 200, 'wait=60'],
  ['respond-async, wait=60', 200, 'wait=60'],
  ['handling="a, wait=0"; x=y , wait = 60; strict', 200, 'wait=60'],
  ['wait=60, wait=0', 200, 'wait=60'],
  ['wait=0', 202, 'wait=0'],
  ['wait=soon', 202, undefined],
  ['wait', 202, undefined],
  ['respond-async', 202, undefined],
  ['"""', 202, undefined],
])('Prefer: %s', async (prefer, status, applied) => {
  const { crew, plans, jobs } = await held();
  const asked = askYaml(plans, body, { Prefer: prefer });
  await until(() => jobs.running === 1);
  if (status === 200) crew.held[0]?.letGo();
  const answer = await asked;
  expect(answer.status).toBe(status);
  expect(answer.headers['preference-applied']).toBe(applied);
  expect(answer.headers.location).toMatch(/^\/v1\/plans\/[\w-]{22}$/);
});

test('who has waited as long as preferred gets an address, and the search goes on', async () => {
  const { crew, plans, service } = await held();
  const { status, headers, text } = await askYaml(plans, body, { Prefer: 'wait=1' });
  expect(status).toBe(202);
  expect(headers['preference-applied']).toBe('wait=1');
  expect(JSON.parse(text)).toMatchObject({ state: 'running', answer: null });
  expect(crew.held[0]?.isStopped).toBe(false);
  crew.held[0]?.letGo();
  const address = `${service.url}${headers.location}`;
  await until(async () => JSON.parse((await ask(address)).text).state === 'done');
});

test('no plan yet: 404 and when to ask again, for its formats', async () => {
  const { plans } = await held();
  const { id } = JSON.parse((await askYaml(plans, body)).text);
  for (const path of [`${id}.svg`, `${id}.txt`, `${id}.json`]) {
    const { status, headers } = await ask(`${plans}/${path}`);
    expect([path, status, headers['retry-after']]).toEqual([path, 404, '1']);
  }
});

test.each(['nothing-of-this-name', '%2e%2e', 'a b', `${'x'.repeat(101)}`])('no work of the id %s', async (id) => {
  const { plans } = await held();
  for (const method of ['GET', 'DELETE']) expect((await ask(`${plans}/${encodeURI(id)}`, { method })).status).toBe(404);
  expect((await ask(`${plans}/${encodeURI(id)}/events`)).status).toBe(404);
});

test('work of another kind is not found here', async () => {
  const { plans, service } = await held();
  const { id } = JSON.parse((await askYaml(plans, body)).text);
  expect((await ask(`${service.url}/v1/fits/${id}`)).status).toBe(404);
});

test('a client that goes away while it waits ends its search and frees the thread', async () => {
  const { crew, plans, jobs, service } = await held();
  const first = client(plans);
  await until(() => jobs.running === 1);
  const second = askYaml(plans, body, WAIT);
  await until(() => jobs.waiting === 1);
  await first.leave();
  await until(() => crew.held.length === 2);
  expect(crew.held.map(({ isStopped }) => isStopped)).toEqual([true, false]);
  crew.held[1]?.letGo();
  expect((await second).status).toBe(200);
  expect(service.faults).toEqual([]);
});

test('a client that goes away leaves its place in the line, and nothing is searched for it', async () => {
  const { crew, plans, jobs } = await held();
  const first = askYaml(plans, body, WAIT);
  await until(() => jobs.running === 1);
  const others = [client(plans), client(plans)];
  await until(() => jobs.waiting === 2);
  const refused = await askYaml(plans, body);
  expect(refused.status).toBe(503);
  expect(refused.headers['retry-after']).toMatch(/^[1-9]\d*$/);
  expect(refused.headers['content-type']).toMatch(/^application\/problem\+json/);
  for (const { leave } of others) await leave();
  await until(() => jobs.waiting === 0);
  crew.held[0]?.letGo();
  expect((await first).status).toBe(200);
  expect(crew.held.length).toBe(1);
});

test('who sent a key may go away and ask again: the search went on', async () => {
  const { crew, plans, jobs } = await held();
  const keyed = { ...WAIT, 'Idempotency-Key': 'saturday-1' };
  const first = client(plans, keyed);
  await until(() => jobs.running === 1);
  await first.leave();
  const again = askYaml(plans, body, keyed);
  const other = await askYaml(`${plans}?seed=2`, body, keyed);
  expect(other.status).toBe(409);
  expect(crew.held.map(({ isStopped }) => isStopped)).toEqual([false]);
  crew.held[0]?.letGo();
  expect(JSON.parse((await again).text)).toMatchObject({ state: 'done' });
  expect(crew.held.length).toBe(1);
});

test.each(['', 'two words', 'x'.repeat(201)])('%j is no Idempotency-Key', async (key) => {
  const { plans } = await held();
  expect((await askYaml(plans, body, { 'Idempotency-Key': key })).status).toBe(400);
});

test('asked to stop, it answers the running search, lets those in the line go, and listens no more', async () => {
  const { crew, plans, jobs, service } = await held();
  const first = askYaml(plans, body, WAIT);
  await until(() => jobs.running === 1);
  const second = askYaml(plans, body, WAIT);
  await until(() => jobs.waiting === 1);
  const stopped = service.stop();
  expect(JSON.parse((await first).text)).toMatchObject({ state: 'stopped', answer: { plan: 1 } });
  expect(await second).toMatchObject({ status: 202 });
  await stopped;
  expect(crew.held.length).toBe(1);
  await expect(ask(`${service.url}/healthz`)).rejects.toThrow('ECONNREFUSED');
});

test('health and readiness', async () => {
  const { crew, service } = await held();
  expect(JSON.parse((await ask(`${service.url}/healthz`)).text)).toEqual({ version: '1.2.3', running: 0, waiting: 0 });
  expect(JSON.parse((await ask(`${service.url}/readyz`)).text)).toEqual({ isReady: true });
  await service.parts.store.close();
  expect((await ask(`${service.url}/readyz`)).status).toBe(503);
  const sick = heldCrew();
  sick.isWell = false;
  const other = await runningHere({}, {}, { crew: sick });
  expect((await ask(`${other.url}/healthz`)).status).toBe(503);
  expect(crew.tinyDays).toBe(1);
});
