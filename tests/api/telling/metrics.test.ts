// The figures of the service in the text format of Prometheus; and that nobody can make them grow without end.
import { expect, test } from 'vitest';
import type { Work } from '../../../src/api/jobs/work.ts';
import { Problem } from '../../../src/api/problem.ts';
import { metricsRoute } from '../../../src/api/routes/metricsRoute.ts';
import { Metrics } from '../../../src/api/telling/metrics.ts';
import { smallPlan } from '../../draw/smallPlan.ts';
import { ask, until } from '../running.ts';
import { smallApp } from '../smallApp.ts';

const JOBS = { running: 2, waiting: 5, lightWaiting: 3 };

/** The value of a sample, labels as written; undefined when there is none. */
function sample(text: string, name: string): number | undefined {
  const found = text.split('\n').find((row) => row.startsWith(`${name} `));
  return found === undefined ? undefined : Number(found.slice(name.length + 1));
}

test('requests by method, route and kind of status', async () => {
  const metrics = new Metrics();
  const { url } = await smallApp([metrics.observe], (request, response) => {
    if (request.method === 'DELETE') throw new Problem(409, 'Not now.');
    response.send('in');
  });
  for (const id of ['a', 'b', 'c']) await ask(`${url}/v1/plans/${id}?secret=1`);
  await ask(`${url}/v1/plans/a`, { method: 'DELETE' });
  await ask(`${url}/v1/plans/a/events`);
  await until(async () => sample(await metrics.text(JOBS), EVENTS) === 1);
  const text = await metrics.text(JOBS);
  expect(sample(text, 'ovenward_requests_total{method="GET",route="/v1/plans/{id}",status="2xx"}')).toBe(3);
  expect(sample(text, 'ovenward_requests_total{method="DELETE",route="/v1/plans/{id}",status="4xx"}')).toBe(1);
  expect(sample(text, 'ovenward_request_seconds_count{method="GET",route="/v1/plans/{id}",status="2xx"}')).toBe(3);
  expect(text).not.toContain('secret');
  // How long somebody followed says nothing of how fast we are.
  expect(text).not.toMatch(/ovenward_request_seconds_count.*events/);
});
const EVENTS = 'ovenward_requests_total{method="GET",route="/v1/plans/{id}/events",status="2xx"}';

test('who is turned away while the line is full is counted, beside all else; who asks whether all is well is not', async () => {
  const metrics = new Metrics();
  const { url } = await smallApp([metrics.observe], () => {
    throw new Problem(503, 'The line is full.');
  });
  for (let sent = 0; sent < 3; sent += 1) await ask(`${url}/v1/plans`, { method: 'POST' });
  await ask(`${url}/healthz`);
  await until(async () => sample(await metrics.text(JOBS), HEALTH) === 1);
  const text = await metrics.text(JOBS);
  expect(sample(text, 'ovenward_requests_refused_total{route="/v1/plans"}')).toBe(3);
  expect(sample(text, 'ovenward_requests_total{method="POST",route="/v1/plans",status="5xx"}')).toBe(3);
  expect(text).not.toContain('ovenward_requests_refused_total{route="/healthz"}');
});
const HEALTH = 'ovenward_requests_total{method="GET",route="/healthz",status="5xx"}';

test('paths and methods somebody makes up get one line together', async () => {
  const metrics = new Metrics();
  const { url } = await smallApp([metrics.observe]);
  for (let number = 0; number < 20; number += 1) await ask(`${url}/made-up-${number}/%00`);
  await ask(url, { method: 'PROPFIND' });
  const other = 'ovenward_requests_total{method="other",route="elsewhere",status="2xx"}';
  await until(async () => sample(await metrics.text(JOBS), other) === 1);
  const rows = (await metrics.text(JOBS)).split('\n').filter((row) => row.startsWith('ovenward_requests_total{'));
  expect(rows).toHaveLength(2);
  expect(rows[0]).toMatch(/route="elsewhere",status="2xx"\} 20$/);
});

const DONE: Work = {
  id: 'a',
  kind: 'plan',
  state: 'done',
  askedAt: '2026-05-16T04:03:00.000Z',
  endedAt: '2026-05-16T04:03:02.000Z',
  ahead: 0,
  news: null,
  failure: null,
  answer: smallPlan([], { holds: 'optimal' }),
};

test('work by outcome, what is at work, and the process itself', async () => {
  const metrics = new Metrics();
  metrics.workEnded(DONE);
  metrics.workEnded({ ...DONE, state: 'failed', answer: null });
  const text = await metrics.text(JOBS);
  expect(sample(text, 'ovenward_work_ended_total{kind="plan",state="done",holds="optimal"}')).toBe(1);
  expect(sample(text, 'ovenward_work_ended_total{kind="plan",state="failed",holds="none"}')).toBe(1);
  expect(sample(text, 'ovenward_work_running')).toBe(2);
  expect(sample(text, 'ovenward_work_waiting')).toBe(5);
  expect(sample(text, 'ovenward_light_waiting')).toBe(3);
  expect(sample(text, 'nodejs_eventloop_lag_p99_seconds')).toEqual(expect.any(Number));
  expect(sample(text, 'process_resident_memory_bytes')).toBeGreaterThan(1e6);
});

test('the page says which format it is in, and every line is of that format', async () => {
  const metrics = new Metrics();
  const { url } = await smallApp([metrics.observe], metricsRoute(metrics, JOBS));
  await ask(`${url}/metrics`);
  const { headers, text } = await ask(`${url}/metrics`);
  // Prometheus, Exposition formats, text-based format 0.0.4 (from memory): comments, and samples with a number at the end.
  expect(headers['content-type']).toBe('text/plain; version=0.0.4; charset=utf-8');
  const rows = text.split('\n').filter((row) => row !== '');
  expect(rows.length).toBeGreaterThan(50);
  for (const row of rows)
    expect(row).toMatch(/^(# (HELP|TYPE) |[a-z_:][\w:]*(\{([a-z_]+="[^"\\\n]*",?)*\})? ([-+\d.e]+|NaN|[+-]Inf)$)/i);
});
