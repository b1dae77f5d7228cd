// One search at a time, a short line behind it, and clients that go away: over HTTP, around a search that lasts until it is told.
import { request } from 'node:http';
import { expect, test } from 'vitest';
import type { PlanningOptions } from '../../src/planning.ts';
import { finePlan } from '../cli/samplePlan.ts';
import { scenarioText } from '../scenarios/allScenarios.ts';
import { ask, askYaml, runningHere, until } from './running.ts';

const body = scenarioText('only-what-must-be-said');

/** A planner whose searches end when they are let go or cancelled; it counts how many ran at once. */
function slowPlanner() {
  const seen = { begun: 0, cancelled: 0, now: 0, mostAtOnce: 0 };
  const allowed = { ends: 0 };
  const makePlan = async (_: unknown, { cancelled, pause }: PlanningOptions) => {
    seen.begun += 1;
    seen.now += 1;
    seen.mostAtOnce = Math.max(seen.mostAtOnce, seen.now);
    const number = seen.begun;
    while (allowed.ends < number && cancelled?.() !== true) await pause?.();
    if (cancelled?.() === true) seen.cancelled += 1;
    seen.now -= 1;
    return finePlan;
  };
  return { seen, allowed, makePlan };
}

/** Asks for a plan and can go away again; `gone` resolves once the connection is shut. */
function client(url: string) {
  const sent = request(url, { method: 'POST', headers: { 'Content-Type': 'application/yaml' }, agent: false });
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

async function busy(url: string): Promise<unknown> {
  const { isPlanning, waiting } = JSON.parse((await ask(`${url}/healthz`)).text);
  return `${isPlanning ? 1 : 0}+${waiting}`;
}

test('the ninth behind a search is sent away with Retry-After; the others are served one by one', async () => {
  const { seen, allowed, makePlan } = slowPlanner();
  const { url } = await runningHere({ makePlan });
  const plans = `${url}/v1/plans?seconds=2.5`;
  const served = Array.from({ length: 9 }, () => askYaml(plans, body));
  await until(async () => (await busy(url)) === '1+8');
  const refused = await askYaml(plans, body);
  expect(refused.status).toBe(503);
  expect(refused.headers['retry-after']).toBe('3');
  expect(refused.headers['content-type']).toMatch(/^application\/problem\+json/);
  allowed.ends = 9;
  expect((await Promise.all(served)).map(({ status }) => status)).toEqual(Array(9).fill(200));
  expect(seen).toEqual({ begun: 9, cancelled: 0, now: 0, mostAtOnce: 1 });
  expect(await busy(url)).toBe('0+0');
});

test('a client that goes away cancels its search and frees the line', async () => {
  const { seen, allowed, makePlan } = slowPlanner();
  const { url, faults } = await runningHere({ makePlan });
  const first = client(`${url}/v1/plans`);
  await until(async () => (await busy(url)) === '1+0');
  const second = askYaml(`${url}/v1/plans`, body);
  await until(async () => (await busy(url)) === '1+1');
  await first.leave();
  await until(() => seen.begun === 2);
  expect(seen).toMatchObject({ cancelled: 1, mostAtOnce: 1 });
  allowed.ends = 2;
  expect((await second).status).toBe(200);
  expect(await busy(url)).toBe('0+0');
  expect(faults).toEqual([]);
});

test('a client that goes away while it waits leaves its place to others, and nothing is searched for it', async () => {
  const { seen, allowed, makePlan } = slowPlanner();
  const { url, faults } = await runningHere({ makePlan });
  const first = askYaml(`${url}/v1/plans`, body);
  await until(async () => (await busy(url)) === '1+0');
  const waiting = Array.from({ length: 8 }, () => client(`${url}/v1/plans`));
  await until(async () => (await busy(url)) === '1+8');
  await Promise.all(waiting.map(({ leave }) => leave()));
  await until(async () => (await busy(url)) === '1+0');
  const last = askYaml(`${url}/v1/plans`, body);
  await until(async () => (await busy(url)) === '1+1');
  allowed.ends = 9;
  expect([(await first).status, (await last).status]).toEqual([200, 200]);
  expect(seen).toMatchObject({ begun: 2, cancelled: 0 });
  expect(faults).toEqual([]);
});

test('asked to stop, it answers the running search, sends those who wait away, and listens no more', async () => {
  const { seen, makePlan } = slowPlanner();
  const service = await runningHere({ makePlan });
  const first = askYaml(`${service.url}/v1/plans`, body);
  await until(async () => (await busy(service.url)) === '1+0');
  const second = askYaml(`${service.url}/v1/plans`, body);
  await until(async () => (await busy(service.url)) === '1+1');
  const stopped = service.stop();
  expect((await first).status).toBe(200);
  const { status, headers } = await second;
  expect({ status, retry: headers['retry-after'] }).toEqual({ status: 503, retry: '10' });
  await stopped;
  expect(seen).toMatchObject({ begun: 1, cancelled: 1 });
  await expect(ask(`${service.url}/healthz`)).rejects.toThrow('ECONNREFUSED');
});
