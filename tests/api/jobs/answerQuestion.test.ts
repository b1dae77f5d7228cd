// Questions as a thread answers them: the answer, or why what is told cannot be; told on the way what is looked for; ended with its best.
import { expect, test } from 'vitest';
import { answerQuestion } from '../../../src/api/jobs/answerQuestion.ts';
import type { Ask } from '../../../src/api/jobs/work.ts';
import { happenedSchema } from '../../../src/model/happened.ts';
import { makePlan } from '../../../src/planning.ts';
import { addOrders } from '../../../src/read/readAddition.ts';
import { buns } from '../routes/bunsAlone.ts';

const now = (): number => performance.now();
const pause = (): Promise<void> => Promise.resolve();
const limits = { seconds: 5, effort: 3 };

function asking(cancelled = () => false) {
  return { seed: 1, workers: 1, now, untilMs: now() + 5000, cancelled, pause, version: '1.2.3' };
}

function fitAsk(): Extract<Ask, { readonly kind: 'fit' }> {
  const before = buns();
  const reading = addOrders([{ product: 'bun', pieces: 20, readyBy: '08:30' }], before);
  if (!reading.ok) throw new Error('the order does not read');
  return { kind: 'fit', before, after: reading.value, limits };
}

test('a fit, told step by step', async () => {
  const steps: string[] = [];
  const answered = await answerQuestion(fitAsk(), asking(), (says) => steps.push(says));
  expect(answered).toMatchObject({ ok: true, answer: { fits: true } });
  expect(steps.slice(0, 2)).toEqual(['the day without it', 'the day with it']);
});

test('asked to stop, it answers with what it has', async () => {
  const answered = await answerQuestion(
    fitAsk(),
    asking(() => true),
    () => {},
  );
  expect(answered).toMatchObject({ ok: true, answer: { added: [{ product: 'bun' }] } });
});

test('a comparison, told how many are done', async () => {
  const steps: string[] = [];
  const days = [
    { title: 'One tray', value: null, scenario: buns({ orders: [{ product: 'bun', pieces: 20, readyBy: '08:00' }] }) },
  ];
  const ask: Ask = { kind: 'comparison', question: { base: buns(), days, sweep: null }, limits };
  const answered = await answerQuestion(ask, asking(), (says) => steps.push(says));
  expect(answered).toMatchObject({ ok: true, answer: { comparison: 1, days: [{ title: 'One tray' }] } });
  expect(steps.length).toBeGreaterThan(1);
  expect(steps.every((says) => /\(\d+ of \d+ done\)$/.test(says))).toBe(true);
});

test('a re-plan after which nobody is left to shape is told as errors of what was told', async () => {
  const scenario = buns();
  const plan = await makePlan(scenario, { effort: 3, now, pause, version: '1.2.3' });
  const happened = happenedSchema.parse({ happened: [{ what: 'away', person: 'ida', from: '04:00' }] });
  const answered = await answerQuestion({ kind: 'replan', scenario, plan, now: 1, happened, limits }, asking(), () => {});
  expect(answered.ok).toBe(false);
  if (answered.ok) return;
  expect(answered.errors.length).toBeGreaterThan(0);
  for (const { says } of answered.errors) expect(says).toMatch(/^After what has happened: /);
});
