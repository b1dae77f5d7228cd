// Plans over HTTP: as data, as a sheet, as a list; from JSON and YAML; judged.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { judge } from '../../src/check/judge.ts';
import { drawPlan } from '../../src/draw/drawPlan.ts';
import { planSchema } from '../../src/model/plan.ts';
import { scenarioNamed, scenarioText } from '../scenarios/allScenarios.ts';
import { ask, askJson, askYaml, type Running, running } from './running.ts';

const SMALL = 'two-hands-and-leaven';
let service: Running;
let plans: string;
beforeAll(async () => {
  service = await running();
  plans = `${service.url}/v1/plans`;
});
afterAll(() => service.stop());

describe('a plan', () => {
  test.each(['only-what-must-be-said', SMALL, 'more-than-the-oven-takes', 'rack-oven'])('%s passes the judge', async (name) => {
    const { status, headers, text } = await askYaml(`${plans}?effort=20&seconds=30`, scenarioText(name));
    expect(status).toBe(200);
    expect(headers['content-type']).toBe('application/json; charset=utf-8');
    const plan = planSchema.parse(JSON.parse(text));
    expect(judge(scenarioNamed(name), plan).breaches).toEqual([]);
    expect(plan.solver.version).toBe('1.2.3');
  });

  test('from JSON as from YAML: same scenario, seed and effort, same plan', async () => {
    const [fromYaml, fromJson] = [
      await askYaml(`${plans}?effort=20&seconds=30&seed=7`, scenarioText(SMALL)),
      await askJson(`${plans}?effort=20&seconds=30&seed=7`, scenarioNamed(SMALL)),
    ];
    const timeless = (text: string) => {
      const plan = planSchema.parse(JSON.parse(text));
      return { ...plan, solver: { ...plan.solver, seconds: 0 } };
    };
    expect(timeless(fromJson.text)).toEqual(timeless(fromYaml.text));
    expect(timeless(fromJson.text).solver.seed).toBe(7);
  });

  test('seconds bound the search', async () => {
    const startedAt = performance.now();
    const { status } = await askYaml(`${plans}?seconds=0.5`, scenarioText(SMALL));
    expect(status).toBe(200);
    expect(performance.now() - startedAt).toBeLessThan(4000);
  });
});

describe('by Accept', () => {
  test('the first page of the sheet', async () => {
    const sheet = await askYaml(`${plans}?effort=20&seconds=30`, scenarioText(SMALL), { Accept: 'image/svg+xml' });
    const data = await askYaml(`${plans}?effort=20&seconds=30`, scenarioText(SMALL));
    expect(sheet.headers['content-type']).toBe('image/svg+xml; charset=utf-8');
    const withoutSeconds = (svg: string | undefined) => svg?.replaceAll(/\d+(\.\d+)? s\b/g, '');
    expect(withoutSeconds(sheet.text)).toBe(withoutSeconds(drawPlan(planSchema.parse(JSON.parse(data.text)))[0]));
  });

  test('the list of what to do, with what is left out and what to take care of', async () => {
    const list = await askYaml(`${plans}?effort=20&seconds=30`, scenarioText('more-than-the-oven-takes'), {
      Accept: 'text/plain',
    });
    expect(list.headers['content-type']).toBe('text/plain; charset=utf-8');
    expect(list.text).toMatch(/^\d\d:\d\d {2}.+/m);
    const data = await askYaml(`${plans}?effort=20&seconds=30`, scenarioText('more-than-the-oven-takes'));
    const plan = planSchema.parse(JSON.parse(data.text));
    expect(list.text.includes('\nLeft out\n')).toBe(plan.leftOut.length > 0);
    expect(plan.cautions.length).toBeGreaterThan(0);
    for (const { says } of plan.cautions) expect(list.text).toContain(says);
  });

  test('a night over midnight has both dates in the list, each once', async () => {
    const list = await askYaml(`${plans}?effort=5`, scenarioText('retarder-overnight'), { Accept: 'text/plain' });
    const dates = [...list.text.matchAll(/^[A-Z][a-z]+day \d+ [A-Z][a-z]+ \d{4}$/gm)].map(([date]) => date);
    expect(dates.length).toBeGreaterThan(1);
    expect(new Set(dates).size).toBe(dates.length);
  });

  test.each([
    ['*/*', 'application/json'],
    ['text/*', 'text/plain'],
    ['image/svg+xml;q=0.2, text/plain;q=0.9', 'text/plain'],
  ])('%s gives %s', async (accept, type) => {
    const { status, headers } = await askYaml(`${plans}?effort=1`, scenarioText('only-what-must-be-said'), { Accept: accept });
    expect(status).toBe(200);
    expect(headers['content-type']).toContain(type);
    expect(headers.vary).toContain('Accept');
  });
});

test('/healthz answers while a search runs, and says that it does', { timeout: 60_000 }, async () => {
  let isDone = false;
  const plan = askYaml(`${plans}?seconds=3`, scenarioText('three-deliveries')).finally(() => {
    isDone = true;
  });
  const busy: number[] = [];
  while (!isDone) {
    const startedAt = performance.now();
    const { status, text } = await ask(`${service.url}/healthz`);
    expect(status).toBe(200);
    if (JSON.parse(text).isPlanning === true) busy.push(performance.now() - startedAt);
  }
  expect((await plan).status).toBe(200);
  expect(busy.length).toBeGreaterThan(10);
  expect(Math.max(...busy)).toBeLessThan(2000);
});

test('no fault came to light', () => {
  expect(service.faults).toEqual([]);
});
