// Verdicts over HTTP: a plan from HTTP keeps every rule, a spoiled one does not, and errors name the place in the whole body.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { planSchema } from '../../src/model/plan.ts';
import { scenarioNamed } from '../scenarios/allScenarios.ts';
import { ask, askJson, type Running, running } from './running.ts';

const scenario = scenarioNamed('two-hands-and-leaven');
let service: Running;
let checks: string;
beforeAll(async () => {
  service = await running();
  checks = `${service.url}/v1/checks`;
});
afterAll(() => service.stop());

test('a plan from the service keeps every rule, and its figures are the recount', async () => {
  const made = await askJson(`${service.url}/v1/plans?effort=20`, scenario, { Prefer: 'wait=30' });
  const plan = planSchema.parse(JSON.parse(made.text).answer);
  const { status, text } = await askJson(checks, { scenario, plan });
  expect(status).toBe(200);
  expect(JSON.parse(text)).toMatchObject({ breaches: [], figures: { cost: plan.score.cost } });
  const tasks = plan.tasks.map((task) => (task.step === 'bake' ? { ...task, end: task.end + 60 } : task));
  const spoiled = await askJson(checks, { scenario, plan: { tasks, decks: plan.decks } });
  expect(spoiled.status).toBe(200);
  expect(JSON.parse(spoiled.text).breaches.length).toBeGreaterThan(0);
});

test.each([
  ['no object', [1, 2], '', 'NOT_AN_OBJECT'],
  ['no plan', { scenario }, '/plan', 'MISSING'],
  ['a plan that is text', { scenario, plan: 'tomorrow' }, '/plan', 'WRONG_TYPE'],
  ['a key too many', { scenario, plan: {}, plans: {} }, '/plans', 'UNKNOWN_KEY'],
  ['a scenario that is wrong', { scenario: { ...scenario, date: '2026-02-30' }, plan: {} }, '/scenario/date', 'BAD_DATE'],
  ['a plan that is wrong', { scenario, plan: { tasks: 3, decks: [] } }, '/plan/tasks', 'WRONG_TYPE'],
])('%s: 422 with its place', async (_, body, path, code) => {
  const { status, text } = await askJson(checks, body);
  expect(status).toBe(422);
  const { errors } = JSON.parse(text);
  expect(errors).toContainEqual(expect.objectContaining({ path, code }));
  expect(Object.keys(errors[0]).sort()).toEqual(['code', 'doThis', 'path', 'says']);
});

test.each([
  ['depth that would end a careless reader', `{"scenario":{},"plan":${'['.repeat(400_000)}${']'.repeat(400_000)}}`, 'TOO_DEEP'],
  ['a key that may not be', '{"scenario":{"__proto__":{"name":1}},"plan":{}}', 'FORBIDDEN_KEY'],
  ['many of them', `{"scenario":{},"plan":{"a":[${Array(20_000).fill('{"__proto__":1}').join()}]}}`, 'TOO_MANY_ERRORS'],
])('%s is refused', async (_, body, code) => {
  const { status, text } = await ask(checks, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body });
  expect(status).toBe(422);
  expect(JSON.parse(text).errors).toContainEqual(expect.objectContaining({ code }));
});

test('no fault came to light', () => {
  expect(service.faults).toEqual([]);
});
