// Requests drawn from the document, sound and spoiled: never a 500, never an answer the document does not know. FUZZ_REQUESTS draws more.
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ask, askJson, type Running } from '../running.ts';
import { ANY_REQUEST } from './anyRequest.ts';
import { answerFaults, OPERATIONS } from './documentChecks.ts';
import { wholeApp } from './wholeApp.ts';

const REQUESTS = Number(process.env.FUZZ_REQUESTS ?? 250);

let app: Running;
beforeAll(async () => {
  app = await wholeApp();
  const posted = OPERATIONS.find(({ operation }) => operation.operationId === 'postedPut')?.operation;
  const example = posted?.requestBody?.content['application/json']?.examples?.whole?.value;
  await ask(`${app.url}/v1/days/2026-04-08/posted`, {
    method: 'PUT',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(example),
  });
});
afterAll(() => app.stop());

test(`${REQUESTS} requests drawn from the document are answered as it says`, { timeout: 20_000 + REQUESTS * 200 }, async () => {
  const statuses = new Map<number, number>();
  const property = fc.asyncProperty(ANY_REQUEST, async ({ placed, address, asked }) => {
    const answer = await ask(app.url + address, asked);
    statuses.set(answer.status, (statuses.get(answer.status) ?? 0) + 1);
    expect(answer.status, answer.text).not.toBe(500);
    expect(answerFaults(placed, answer), `${answer.status} ${answer.text}`).toEqual([]);
  });
  await fc.assert(property, { numRuns: REQUESTS, endOnFailure: REQUESTS > 1000 });
  expect(app.faults).toEqual([]);
  // The drawing reaches both sides of the door.
  for (const status of [200, 400, 404, 406, 422]) expect([...statuses.keys()]).toContain(status);
  const still = await askJson(`${app.url}/v1/checks`, {});
  expect(still.status).toBe(422);
  if (process.env.FUZZ_REQUESTS !== undefined) console.info([...statuses].sort());
});
