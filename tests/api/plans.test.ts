// Plans over HTTP, made by real threads: as data, as a sheet, as a calendar, as a list; from JSON and YAML; judged.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCrew } from '../../src/api/jobs/openCrew.ts';
import { judge } from '../../src/check/judge.ts';
import { drawPlan } from '../../src/draw/drawPlan.ts';
import { type Plan, planSchema } from '../../src/model/plan.ts';
import { scenarioNamed, scenarioText } from '../scenarios/allScenarios.ts';
import { type Answer, ask, askJson, askYaml, type Running, running, WAIT } from './running.ts';

const SMALL = 'two-hands-and-leaven';
const faults: unknown[] = [];
let service: Running;
let plans: string;
beforeAll(async () => {
  const crew = openCrew({ threads: 1, version: '1.2.3', report: (fault) => faults.push(fault) });
  service = await running({}, {}, { crew });
  plans = `${service.url}/v1/plans`;
});
afterAll(() => service.stop());

function planIn({ text }: Answer): Plan {
  return planSchema.parse(JSON.parse(text).answer);
}

const timeless = (plan: Plan): Plan => ({ ...plan, solver: { ...plan.solver, seconds: 0 } });

describe('a plan', () => {
  test.each(['only-what-must-be-said', SMALL, 'more-than-the-oven-takes', 'rack-oven'])('%s passes the judge', async (name) => {
    const answer = await askYaml(`${plans}?effort=20&seconds=30`, scenarioText(name), WAIT);
    expect(answer.status).toBe(200);
    expect(answer.headers['content-type']).toBe('application/json; charset=utf-8');
    expect(answer.headers['preference-applied']).toBe('wait=60');
    const plan = planIn(answer);
    expect(judge(scenarioNamed(name), plan).breaches).toEqual([]);
    expect(plan.solver.version).toBe('1.2.3');
  });

  test('from JSON as from YAML: same scenario, seed and effort, same plan', async () => {
    const query = '?effort=20&seconds=30&seed=7';
    const fromYaml = planIn(await askYaml(plans + query, scenarioText(SMALL), WAIT));
    const fromJson = planIn(await askJson(plans + query, scenarioNamed(SMALL), WAIT));
    expect(timeless(fromJson)).toEqual(timeless(fromYaml));
    expect(fromJson.solver.seed).toBe(7);
  });

  test('202 without Prefer: an address, a state, and the plan there once it is made', async () => {
    const asked = await askYaml(`${plans}?effort=20`, scenarioText(SMALL));
    expect(asked.status).toBe(202);
    const { id, state } = JSON.parse(asked.text);
    expect(['waiting', 'running']).toContain(state);
    expect(asked.headers.location).toBe(`/v1/plans/${id}`);
    await service.parts.jobs.wait(id, 20_000, new AbortController().signal);
    const there = JSON.parse((await ask(`${plans}/${id}`)).text);
    expect(there).toMatchObject({ id, kind: 'plan', state: 'done', ahead: 0, failure: null });
    expect(JSON.parse((await ask(`${plans}/${id}.json`)).text)).toEqual(there.answer);
  });

  test('asked to stop, it ends with its best, which keeps every rule', async () => {
    const name = 'three-deliveries';
    const { id } = JSON.parse((await askYaml(`${plans}?seconds=30`, scenarioText(name))).text);
    let best: unknown = null;
    await new Promise<void>((resolve) => {
      const leave = service.parts.jobs.follow(id, (work) => {
        best = work.answer;
        if (work.answer === null) return;
        resolve();
        leave();
      });
    });
    expect(judge(scenarioNamed(name), planSchema.parse(best)).breaches).toEqual([]);
    const stopped = await ask(`${plans}/${id}`, { method: 'DELETE' });
    expect(stopped.status).toBe(200);
    expect(JSON.parse(stopped.text)).toMatchObject({ state: 'stopped', endedAt: expect.any(String) });
    const plan = planIn(stopped);
    expect(plan.stopped).toBe('cancelled');
    expect(plan.score.cost).toBeLessThanOrEqual(planSchema.parse(best).score.cost);
    expect(judge(scenarioNamed(name), plan).breaches).toEqual([]);
  });
});

describe('in other formats', () => {
  let id: string;
  let plan: Plan;
  beforeAll(async () => {
    const answer = await askYaml(`${plans}?effort=20&seconds=30`, scenarioText('more-than-the-oven-takes'), WAIT);
    id = JSON.parse(answer.text).id;
    plan = planIn(answer);
  });

  test('every page of the sheet, and no other', async () => {
    const pages = drawPlan(plan);
    expect(pages.length).toBeGreaterThan(1);
    const first = await ask(`${plans}/${id}.svg`);
    expect(first.headers['content-type']).toBe('image/svg+xml; charset=utf-8');
    expect(first.text).toBe(pages[0]);
    expect((await ask(`${plans}/${id}`, { headers: { Accept: 'image/svg+xml' } })).text).toBe(pages[0]);
    expect((await ask(`${plans}/${id}.svg?page=2`)).text).toBe(pages[1]);
    expect((await ask(`${plans}/${id}.svg?page=${pages.length + 1}`)).status).toBe(404);
    expect((await ask(`${plans}/${id}.svg?page=0`)).status).toBe(400);
  });

  test('a calendar', async () => {
    const { headers, text } = await ask(`${plans}/${id}.ics`);
    expect(headers['content-type']).toBe('text/calendar; charset=utf-8');
    expect(text).toMatch(/^BEGIN:VCALENDAR\r\n[\s\S]+END:VCALENDAR/);
  });

  test('the list of what to do, with what is left out and what to take care of', async () => {
    const { headers, text } = await ask(`${plans}/${id}.txt`);
    expect(headers['content-type']).toBe('text/plain; charset=utf-8');
    expect(text).toMatch(/^\d\d:\d\d {2}.+/m);
    expect(text.includes('\nLeft out\n')).toBe(plan.leftOut.length > 0);
    expect(plan.cautions.length).toBeGreaterThan(0);
    for (const { says } of plan.cautions) expect(text).toContain(says);
  });

  test('a night over midnight has both dates in the list, each once', async () => {
    const list = await askYaml(`${plans}?effort=5`, scenarioText('retarder-overnight'), { ...WAIT, Accept: 'text/plain' });
    const dates = [...list.text.matchAll(/^[A-Z][a-z]+day \d+ [A-Z][a-z]+ \d{4}$/gm)].map(([date]) => date);
    expect(dates.length).toBeGreaterThan(1);
    expect(new Set(dates).size).toBe(dates.length);
  });

  test.each([
    ['*/*', 'application/json'],
    ['text/calendar', 'text/calendar'],
    ['text/plain', 'text/plain'],
    ['image/svg+xml;q=0.2, text/plain;q=0.9', 'text/plain'],
  ])('who waits and accepts %s gets %s', async (accept, type) => {
    const asked = { ...WAIT, Accept: accept };
    const { status, headers } = await askYaml(`${plans}?effort=1`, scenarioText('only-what-must-be-said'), asked);
    expect(status).toBe(200);
    expect(headers['content-type']).toContain(type);
    expect(headers.vary).toContain('Accept');
    expect(headers.location).toMatch(/^\/v1\/plans\/[\w-]{22}$/);
  });

  test.each(['.pdf', '.svgz', '.html'])('%s is not made', async (suffix) => {
    expect((await ask(`${plans}/${id}${suffix}`)).status).toBe(404);
  });
});

test('/healthz plans a tiny day and answers while a search runs', async () => {
  const { id } = JSON.parse((await askYaml(`${plans}?seconds=20`, scenarioText('three-deliveries'))).text);
  const { status, text } = await ask(`${service.url}/healthz`);
  expect(status).toBe(200);
  expect(JSON.parse(text)).toEqual({ version: '1.2.3', running: 1, waiting: 0 });
  await ask(`${plans}/${id}`, { method: 'DELETE' });
});

test('no fault came to light', () => {
  expect([...service.faults, ...faults]).toEqual([]);
});
