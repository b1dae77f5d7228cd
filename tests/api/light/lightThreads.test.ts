// Light work in real threads: the same answers and refusals as by a call, faults that end nothing, and health that does not wait for it.
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Crew } from '../../../src/api/jobs/crew.ts';
import { openCrew } from '../../../src/api/jobs/openCrew.ts';
import { doLightWork } from '../../../src/api/light/doLightWork.ts';
import type { Given, LightKind } from '../../../src/api/light/lightWork.ts';
import type { Plan } from '../../../src/model/plan.ts';
import { makePlan } from '../../../src/planning.ts';
import { scenarioNamed, scenarioText } from '../../scenarios/allScenarios.ts';

const scenario = scenarioNamed('two-hands-and-leaven');
const yaml = scenarioText('two-hands-and-leaven');
const limits = { seconds: 2, seed: 3 };
const faults: unknown[] = [];
let crew: Crew;
let plan: Plan;

beforeAll(async () => {
  crew = openCrew({ threads: 1, version: '1.2.3', report: (fault) => faults.push(fault) });
  await crew.warmUp();
  plan = await makePlan(scenario, { effort: 5, now: () => performance.now(), pause: () => Promise.resolve(), version: '1.2.3' });
}, 60_000);
afterAll(() => crew.close());

async function isSame<K extends LightKind>(kind: K, given: Given<K>): Promise<boolean> {
  const byThread = await crew.light(kind, given);
  expect(byThread).toEqual(doLightWork(kind, given));
  return byThread.ok;
}

test('what is right is answered as by a call', async () => {
  const whole = { scenario, plan };
  const text = JSON.stringify(whole);
  const planText = JSON.stringify(plan);
  const order = { product: scenario.orders[0]?.product, pieces: 5, readyBy: scenario.orders[0]?.readyBy };
  const now = scenario.day.from;
  const sweep = { pointer: '/orders/0/pieces', from: 10, to: 20, step: 5 };
  const event = { what: 'ordered', ...order };
  const posted = { scenario: JSON.stringify(scenario), plan: planText };
  const all = [
    await isSame('check', { text }),
    await isSame('ask', { kind: 'plan', text: yaml, from: 'YAML body', limits }),
    await isSame('ask', { kind: 'plan', text: yaml, from: 'kept scenario', limits }),
    await isSame('ask', { kind: 'plan', text: JSON.stringify(scenario), from: 'JSON body', limits }),
    await isSame('ask', { kind: 'fit', text: JSON.stringify({ ...whole, add: [order] }), limits }),
    await isSame('ask', { kind: 'comparison', text: JSON.stringify({ scenario, sweep }), limits }),
    await isSame('ask', { kind: 'replan', text: JSON.stringify({ ...whole, now, happened: { happened: [event] } }), limits }),
    await isSame('scenario', { text: yaml, isJson: false, name: 'The file' }),
    await isSame('posting', { text, date: scenario.date }),
    await isSame('posting', { text: '{"plan":"some-id"}', date: scenario.date }),
    await isSame('posting of work', { asked: JSON.stringify({ ask: { scenario } }), answer: planText, date: scenario.date }),
    await isSame('happened', { text: JSON.stringify({ happened: [event] }), instant: `${scenario.date}T03:00:00Z`, posted }),
    await isSame('pages', { plan: planText }),
    await isSame('list', { plan: planText }),
    await isSame('calendar', { plan: planText, instant: `${scenario.date}T03:00:00Z` }),
  ];
  expect(all).toEqual(all.map(() => true));
});

test('what is wrong is refused as by a call, errors, order, places and all', async () => {
  const spoiled = { ...plan, score: { ...plan.score, finishMinute: plan.score.finishMinute + 1 } };
  const wrong = JSON.stringify({
    scenario: { ...scenario, nam: 1, date: '2026-02-30' },
    plan: { ...plan, holds: 'much' },
    now: '25:00',
  });
  const all = [
    await isSame('check', { text: '{' }),
    await isSame('check', { text: wrong }),
    await isSame('ask', { kind: 'plan', text: 'a: [1', from: 'YAML body', limits }),
    await isSame('ask', { kind: 'plan', text: yaml, from: 'JSON body', limits }),
    await isSame('ask', { kind: 'plan', text: `${yaml}\nnam: 1\n`, from: 'YAML body', limits }),
    await isSame('ask', { kind: 'fit', text: wrong, limits }),
    await isSame('ask', { kind: 'comparison', text: wrong, limits }),
    await isSame('ask', { kind: 'replan', text: wrong, limits }),
    await isSame('scenario', { text: '', isJson: true, name: 'The body' }),
    await isSame('posting', { text: JSON.stringify({ scenario, plan: spoiled }), date: '2020-01-01' }),
    await isSame('posting of work', { asked: '{"ask":{}}', answer: '{}', date: scenario.date }),
    await isSame('happened', { text: '{"happened":[{"what":"lost"}]}', instant: `${scenario.date}T03:00:00Z`, posted: null }),
  ];
  expect(all).toEqual(all.map(() => false));
});

test('a fault rejects, and the threads go on', async () => {
  for (let turn = 0; turn < 4; turn += 1) await expect(crew.light('pages', { plan: 'no JSON' })).rejects.toThrow(SyntaxError);
  expect((await crew.light('list', { plan: JSON.stringify(plan) })).ok).toBe(true);
});

test('the question whether all is well does not wait for threads that judge', async () => {
  const text = JSON.stringify({ scenario, plan });
  let done = 0;
  const judged = Array.from({ length: 60 }, () => crew.light('check', { text }).then(() => (done += 1)));
  expect(await crew.planTinyDay()).toBe(true);
  expect(done).toBeLessThan(60);
  await Promise.all(judged);
  expect(done).toBe(60);
  expect(faults).toEqual([]);
});
