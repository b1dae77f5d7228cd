// The line of work around searches that last until they are told: turns, bounds, keys, stops, and a service that was killed.
import { expect, onTestFinished, test } from 'vitest';
import type { Jobs } from '../../../src/api/jobs/jobs.ts';
import { type JobsOptions, openJobs } from '../../../src/api/jobs/openJobs.ts';
import type { Ask, Work } from '../../../src/api/jobs/work.ts';
import { Problem } from '../../../src/api/problem.ts';
import { openStore } from '../../../src/store/openStore.ts';
import type { Store } from '../../../src/store/store.ts';
import { finePlan } from '../../cli/samplePlan.ts';
import { scenarioNamed } from '../../scenarios/allScenarios.ts';
import { until } from '../running.ts';
import { type HeldCrew, heldCrew } from './heldCrew.ts';

const scenario = scenarioNamed('only-what-must-be-said');
const planFor = (seconds = 2): Ask => ({ kind: 'plan', scenario, limits: { seconds } });
const nobodyLeaves = new AbortController().signal;
const news = { progress: null, says: 'better', seconds: 1 };

type Here = { readonly jobs: Jobs; readonly crew: HeldCrew; readonly store: Store; readonly faults: readonly unknown[] };

async function here(over: Partial<JobsOptions> = {}, crew = heldCrew()): Promise<Here> {
  const faults: unknown[] = [];
  const store = over.store ?? (await openStore(':memory:'));
  const jobs = await openJobs({
    store,
    now: () => performance.now(),
    instant: () => new Date().toISOString(),
    threads: 1,
    mostSeconds: 30,
    version: '1.2.3',
    report: (fault) => faults.push(fault),
    crew,
    ...over,
  });
  onTestFinished(() => jobs.close(0));
  return { jobs, crew, store, faults };
}

async function problemOf(promise: Promise<unknown>): Promise<Problem> {
  const error = await promise.catch((thrown: unknown) => thrown);
  if (error instanceof Problem) return error;
  throw new Error(`no problem but ${JSON.stringify(error)}`);
}

async function ended(jobs: Jobs, { id }: Work): Promise<Work | null> {
  return jobs.wait(id, 20_000, nobodyLeaves);
}

test('clients take turns, and one client is served first come, first served', async () => {
  const { jobs, crew } = await here();
  const first = await jobs.add(planFor(1), 'till', '{}');
  const asked = ['till 2', 'till 3', 'till 4', 'tablet 5', 'laptop 6', 'tablet 7'];
  const works: Work[] = [];
  for (const name of asked) works.push(await jobs.add(planFor(Number(name.slice(-1))), name.slice(0, -2), '{}'));
  // Of three clients with 3, 2 and 1 waiting.
  expect(works.map(({ ahead }) => ahead)).toEqual([0, 1, 2, 1, 2, 4]);
  expect((await jobs.find(works[2]?.id ?? ''))?.ahead).toBe(5);
  expect([jobs.running, jobs.waiting]).toEqual([1, 6]);
  for (const work of [first, ...works.keys()]) {
    const number = typeof work === 'number' ? work + 1 : 0;
    await until(() => crew.held.length > number);
    crew.held[number]?.letGo();
  }
  await until(() => jobs.running === 0);
  expect(crew.held.map(({ ask }) => ask.limits.seconds)).toEqual([1, 2, 5, 6, 3, 7, 4]);
});

test('past the line 503, and Retry-After is the time between two ends', async () => {
  const { jobs, crew, store } = await here({ places: 2, threads: 2, now: () => 0 });
  for (const seconds of [4, 4, 8, 8]) await jobs.add(planFor(seconds), 'till', '{}');
  const problem = await problemOf(jobs.add(planFor(), 'tablet', '{}'));
  expect(problem.status).toBe(503);
  expect(problem.headers).toEqual({ 'Retry-After': '3' });
  expect((await store.openWork()).length).toBe(4);
  crew.held[0]?.letGo();
  await until(() => jobs.waiting === 1);
  expect((await jobs.add(planFor(), 'tablet', '{}')).state).toBe('waiting');
});

test('many at once hold a place each while they are written down', async () => {
  const { jobs } = await here({ places: 3 });
  const asked = await Promise.allSettled(Array.from({ length: 10 }, () => jobs.add(planFor(), 'till', '{}')));
  expect(asked.filter(({ status }) => status === 'fulfilled').length).toBe(4);
});

test('no search is longer than the service allows', async () => {
  const { jobs, crew } = await here({ mostSeconds: 5 });
  await jobs.add(planFor(100), 'till', '{}');
  expect(crew.held[0]?.ask.limits.seconds).toBe(5);
});

test('done: the answer is in the store before anybody hears of it, and nothing is kept in memory', async () => {
  const { jobs, crew, store } = await here();
  const work = await jobs.add(planFor(), 'till', '{}');
  const states: string[] = [];
  const records: unknown[] = [];
  jobs.follow(work.id, ({ state }) => {
    states.push(state);
    if (state === 'done') records.push(store.work(work.id));
  });
  crew.held[0]?.letGo();
  expect(await ended(jobs, work)).toMatchObject({ state: 'done', answer: { plan: 1 } });
  expect(states).toEqual(['running', 'done']);
  expect(await records[0]).toMatchObject({ state: 'done', answer: JSON.stringify(finePlan) });
  expect(await jobs.find(work.id)).toMatchObject({ state: 'done', answer: finePlan, news: null });
});

test('stop takes work out of the line, or ends its search and keeps its best', async () => {
  const { jobs, crew, store } = await here();
  const [running, waiting] = [await jobs.add(planFor(), 'till', '{}'), await jobs.add(planFor(), 'till', '{}')];
  expect(await jobs.stop(waiting.id)).toMatchObject({ state: 'stopped', answer: null });
  expect(await jobs.stop(running.id)).toMatchObject({ state: 'stopped', answer: { plan: 1 } });
  expect(crew.held.length).toBe(1);
  expect((await store.work(running.id))?.state).toBe('stopped');
  expect(await store.openWork()).toEqual([]);
  expect(await jobs.stop('nothing-of-this-name')).toBe(null);
});

test('abandoned work frees its thread for the next', async () => {
  const { jobs, crew } = await here();
  const first = await jobs.add(planFor(), 'till', '{}');
  await jobs.add(planFor(), 'till', '{}');
  jobs.abandon(first.id);
  await until(() => crew.held.length === 2);
  expect(crew.held.map(({ isStopped }) => isStopped)).toEqual([true, false]);
});

test('who waits is let go when the time is over, and when nobody waits any more', async () => {
  const { jobs } = await here();
  const { id } = await jobs.add(planFor(), 'till', '{}');
  expect((await jobs.wait(id, 5, nobodyLeaves))?.state).toBe('running');
  const gone = new AbortController();
  const waiting = jobs.wait(id, 60_000, gone.signal);
  gone.abort();
  expect((await waiting)?.state).toBe('running');
});

test('news and the best so far reach those who follow, and the store', async () => {
  const { jobs, crew, store } = await here();
  const work = await jobs.add(planFor(), 'till', '{}');
  const heard: Work[] = [];
  const leave = jobs.follow(work.id, (told) => heard.push(told));
  crew.held[0]?.tell({ news, best: JSON.stringify(finePlan) });
  expect(heard.map((one) => [one.state, one.news?.says, one.answer !== null])).toEqual([
    ['running', undefined, false],
    ['running', 'better', true],
  ]);
  await until(async () => (await store.work(work.id))?.answer !== null);
  leave();
  crew.held[0]?.tell({ news, best: null });
  expect(heard.length).toBe(2);
});

test('a search that fails: the work says so without detail, and the fault is reported', async () => {
  const told: unknown[] = [];
  const { jobs, crew } = await here({ report: (fault, of) => told.push({ fault, ...of }) });
  const work = await jobs.add(planFor(), 'till', '{}');
  const fault = new Error('secret');
  crew.held[0]?.fail(fault);
  const after = await ended(jobs, work);
  expect(after).toMatchObject({ state: 'failed', answer: null, failure: { errors: [] } });
  expect(after?.failure?.says).not.toContain('secret');
  expect(await jobs.find(work.id)).toMatchObject({ state: 'failed', answer: null, failure: after?.failure });
  expect(told).toEqual([{ fault, work: work.id }]);
  expect([jobs.running, jobs.waiting]).toEqual([0, 0]);
});

test('a search whose input was to blame fails with its errors', async () => {
  const { jobs, crew, faults } = await here();
  const work = await jobs.add(planFor(), 'till', '{}');
  const errors = [{ code: 'X', path: '/happened/0', says: 'It cannot be.', doThis: 'Say what was.' }];
  crew.held[0]?.letGo({ ok: false, errors });
  await ended(jobs, work);
  expect(await jobs.find(work.id)).toMatchObject({ state: 'failed', failure: { errors } });
  expect(faults).toEqual([]);
});

test('the same key and request again is the work of then; another request under it is refused', async () => {
  const { jobs, crew } = await here();
  const first = await jobs.add(planFor(), 'till', 'one', 'key');
  expect((await jobs.add(planFor(), 'till', 'one', 'key')).id).toBe(first.id);
  expect((await problemOf(jobs.add(planFor(), 'till', 'two', 'key'))).status).toBe(409);
  crew.held[0]?.letGo();
  await ended(jobs, first);
  expect(await jobs.add(planFor(), 'till', 'one', 'key')).toMatchObject({ id: first.id, state: 'done' });
  const raced = await Promise.all([1, 2, 3].map(() => jobs.add(planFor(), 'till', 'three', 'other')));
  expect(new Set(raced.map(({ id }) => id)).size).toBe(1);
});

test('closing: no new work, what runs ends with its best, what waits is taken up by the next start', async () => {
  const { jobs, store } = await here();
  const [running, waiting] = [await jobs.add(planFor(), 'till', '{}'), await jobs.add(planFor(7), 'till', '{}')];
  const waited = ended(jobs, waiting);
  await jobs.close(10_000);
  expect((await waited)?.state).toBe('waiting');
  expect((await problemOf(jobs.add(planFor(), 'till', '{}'))).status).toBe(503);
  expect((await store.work(running.id))?.state).toBe('stopped');
  const next = await here({ store });
  expect(next.crew.held.map(({ ask }) => ask)).toEqual([planFor(7)]);
  next.crew.held[0]?.letGo();
  expect(await ended(next.jobs, waiting)).toMatchObject({ id: waiting.id, state: 'done' });
});

test('a search that does not end when the service does is ended with its thread, and its best is kept', async () => {
  const { jobs, crew, store } = await here({}, heldCrew(true));
  const work = await jobs.add(planFor(), 'till', '{}');
  crew.held[0]?.tell({ news, best: JSON.stringify(finePlan) });
  await jobs.close(10);
  expect(crew.held[0]).toMatchObject({ isStopped: true, isKilled: true });
  expect(await store.work(work.id)).toMatchObject({ state: 'stopped', answer: JSON.stringify(finePlan) });
});

test('after a kill work is asked again, from the best that was kept; what cannot be is failed with a reason', async () => {
  const store = await openStore(':memory:');
  const before = await here({ store });
  const [running, waiting] = [await before.jobs.add(planFor(), 'till', '{}'), await before.jobs.add(planFor(3), 'till', '{}')];
  before.crew.held[0]?.tell({ news, best: JSON.stringify(finePlan) });
  await until(async () => (await store.work(running.id))?.answer !== null);
  const foreign = { id: 'of-another-version', kind: 'plan', state: 'waiting', endedAt: null, answer: null } as const;
  await store.addWork({ ...foreign, askedAt: '2026-01-01T00:00:00.000Z', asked: '{"version":"0.0.1"}' });
  const next = await here({ store });
  expect(await next.jobs.find(foreign.id)).toMatchObject({
    state: 'failed',
    failure: { says: expect.stringContaining('Ask again') },
  });
  expect(next.crew.held[0]?.ask).toEqual({ ...planFor(), startFrom: finePlan });
  expect(await next.jobs.find(running.id)).toMatchObject({ state: 'running', answer: finePlan });
  expect(await next.jobs.find(waiting.id)).toMatchObject({ state: 'waiting', ahead: 0 });
});

test('health: one question at a time, what was found a moment ago is told again, and what failed is asked again', async () => {
  const clock = { ms: 10_000 };
  const { jobs, crew } = await here({ now: () => clock.ms });
  expect(await Promise.all([jobs.isWell(1000), jobs.isWell(1000)])).toEqual([true, true]);
  expect(await jobs.isWell(1000)).toBe(true);
  expect(crew.tinyDays).toBe(1);
  clock.ms += 1_500;
  crew.isWell = false;
  // Told at once what was found before; the next who asks hears what is found meanwhile.
  expect(await jobs.isWell(1000)).toBe(true);
  await until(() => crew.tinyDays === 2);
  expect(await jobs.isWell(1000)).toBe(false);
  clock.ms += 60_000;
  crew.planTinyDay = () => new Promise(() => {});
  expect(await jobs.isWell(5)).toBe(false);
});
