// Every example of the document sent for real, one after another as a client would: what follows from an answer is asked by its links.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parameterOf } from '../../../src/api/openapi/page/lookUp.ts';
import { type Answer, ask, type Running } from '../running.ts';
import { answerFaults, DOCUMENT, OPERATIONS, type Placed } from './documentChecks.ts';
import { wholeApp } from './wholeApp.ts';

let app: Running;
beforeAll(async () => {
  app = await wholeApp();
  // What the examples of addresses name.
  for (const id of ['scenarioPut', 'postedPut']) await sent(operation(id));
});
afterAll(() => app.stop());

type Sample = { readonly type: string; readonly says: string; readonly body: string };

function operation(id: string): Placed {
  const found = OPERATIONS.find(({ operation: { operationId } }) => operationId === id);
  if (found === undefined) throw new Error(`There is no operation ${id}`);
  return found;
}

function samplesOf({ operation: { requestBody } }: Placed): readonly Sample[] {
  return Object.entries(requestBody?.content ?? {}).flatMap(([type, { examples = {} }]) =>
    Object.values(examples).map(({ summary, value }) => ({
      type,
      says: `${type}: ${summary}`,
      body: typeof value === 'string' ? value : JSON.stringify(value),
    })),
  );
}

function examplesOf(placed: Placed, place: 'path' | 'header'): readonly (readonly [string, string])[] {
  const parameters = (placed.operation.parameters ?? []).map((ref) => parameterOf(DOCUMENT, ref));
  return parameters
    .filter((parameter) => parameter.in === place && parameter.example !== undefined)
    .map(({ name, example }) => [name, String(example)]);
}

type More = {
  readonly path?: Readonly<Record<string, string>>;
  readonly headers?: Readonly<Record<string, string>>;
  readonly query?: string;
};

/** Work of the examples ends soon, so that what is asked after it does not wait long. */
function shortly({ operation: { operationId } }: Placed): string {
  return operationId.endsWith('Ask') || operationId === 'scenarioPlan' ? '?effort=1&seconds=1' : '';
}

function sent(
  placed: Placed,
  sample = samplesOf(placed)[0],
  { path = {}, headers = {}, query = shortly(placed) }: More = {},
): Promise<Answer> {
  const named = { ...Object.fromEntries(examplesOf(placed, 'path')), ...path };
  const address = Object.entries(named).reduce((text, [name, value]) => text.replace(`{${name}}`, value), placed.path);
  const own = sample === undefined ? {} : { 'Content-Type': sample.type };
  const body = sample === undefined ? {} : { body: sample.body };
  return ask(`${app.url}${address}${query}`, { method: placed.method.toUpperCase(), headers: { ...own, ...headers }, ...body });
}

describe.each(OPERATIONS)('$method $path', (placed) => {
  const [first, ...others] = samplesOf(placed);

  test('as it stands', async () => {
    const answer = await sent(placed, first);
    expect(answerFaults(placed, answer), answer.text).toEqual([]);
    // Work of an id nobody was given is not there; everything else is.
    if (placed.path.includes('{id}')) expect(answer.status).toBe(404);
    else expect(answer.status, answer.text).toBeLessThan(300);
  });

  for (const sample of others)
    test(sample.says, async () => {
      const answer = await sent(placed, sample);
      expect(answerFaults(placed, answer), answer.text).toEqual([]);
      expect(answer.status, answer.text).toBeLessThan(300);
    });

  test.each(examplesOf(placed, 'header'))('with %s: %s', async (name, value) => {
    // A key belongs to one request: the same on another is a 409.
    const own = name === 'Idempotency-Key' ? `${value}-${placed.operation.operationId}` : value;
    const answer = await sent(placed, first, { headers: { [name]: own } });
    expect(answerFaults(placed, answer), answer.text).toEqual([]);
    expect(answer.status).toBeLessThan(500);
  });
});

const ASKED = OPERATIONS.filter(({ operation: { operationId } }) => operationId.endsWith('Ask'));

describe.each(ASKED)('$path, followed by its links', (placed) => {
  test.each(samplesOf(placed))('$says', async (sample) => {
    const answer = await sent(placed, sample, { headers: { Prefer: 'wait=30' }, query: '?effort=5&seconds=3' });
    expect(answer.status, answer.text).toBe(200);
    expect(answerFaults(placed, answer)).toEqual([]);
    const told = placed.operation.responses[answer.status];
    const links = told !== undefined && 'links' in told ? Object.values(told.links ?? {}) : [];
    expect(links.length).toBe(3);
    const { id, state } = JSON.parse(answer.text);
    expect(state).toBe('done');
    for (const link of links) {
      expect(link.parameters).toEqual({ id: '$response.body#/id' });
      const next = operation(link.operationId);
      const followed = await sent(next, undefined, { path: { id } });
      expect(followed.status).toBe(200);
      expect(answerFaults(next, followed), followed.text).toEqual([]);
    }
    for (const form of OPERATIONS.filter(({ path }) => path.startsWith(`${placed.path}/{id}.`))) {
      const fetched = await sent(form, undefined, { path: { id } });
      expect(fetched.status, form.path).toBe(200);
      expect(answerFaults(form, fetched)).toEqual([]);
    }
  });
});

test('a plan is posted by its id', async () => {
  const asked = await sent(operation('planAsk'), samplesOf(operation('planAsk'))[0], {
    headers: { Prefer: 'wait=30' },
    query: '?effort=5',
  });
  const { id } = JSON.parse(asked.text);
  const put = operation('postedPut');
  const answer = await sent(put, { type: 'application/json', says: '', body: JSON.stringify({ plan: id }) });
  expect(answer.status, answer.text).toBe(200);
  expect(answerFaults(put, answer)).toEqual([]);
});

test('no fault came to light', () => {
  expect(app.faults).toEqual([]);
});
