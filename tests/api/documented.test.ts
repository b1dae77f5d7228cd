// docs/api.md: its examples are sent as they stand and answered as it says; its tables name what there is.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { shows } from '../../scripts/docExamples.mjs';
import { version } from '../../src/cli/version.ts';
import { scenarioNamed } from '../scenarios/allScenarios.ts';
import { type Answer, ask, askJson, type Running, running, WAIT } from './running.ts';

const root = resolve(import.meta.dirname, '../..');
const page = readFileSync(resolve(root, 'docs/api.md'), 'utf8');

type Message = { readonly first: string; readonly headers: Readonly<Record<string, string>>; readonly body: string };

function messageIn(text: string): Message {
  const [head = '', ...rest] = text.split('\n\n');
  const [first = '', ...lines] = head.trimEnd().split('\n');
  const headers = Object.fromEntries(lines.map((line) => [line.split(': ')[0] ?? '', line.slice(line.indexOf(': ') + 2)]));
  return { first, headers, body: rest.join('\n\n') };
}

const examples = [...page.matchAll(/```http request\n([\s\S]*?)```\n\n```http answer\n([\s\S]*?)```/g)].map(
  ([, request = '', answer = '']) => ({ request: messageIn(request), answer: messageIn(answer) }),
);

let service: Running;
beforeAll(async () => {
  service = await running({ version: version() });
});
afterAll(() => service.stop());

/** JSON as the page shows it: two spaces. */
function shown({ headers, text }: Answer): string {
  return headers['content-type']?.includes('json') ? JSON.stringify(JSON.parse(text), null, 2) : text;
}

test('there are examples, and none is left out here', () => {
  expect(examples.length).toBeGreaterThan(4);
  expect(examples.length).toBe(page.split('```http').length / 2 - 0.5);
});

test.each(examples)('$request.first', async ({ request, answer }) => {
  const [method = '', path = ''] = request.first.split(' ');
  const body = request.body === '' ? {} : { body: request.body };
  const real = await ask(service.url + path, { method, headers: request.headers, ...body });
  expect(`HTTP/1.1 ${real.status}`).toBe(answer.first.split(' ').slice(0, 2).join(' '));
  for (const [name, value] of Object.entries(answer.headers)) expect(real.headers[name.toLowerCase()]).toBe(value);
  expect(shows(shown(real), answer.body), shown(real)).toBe(true);
});

test('every status the service makes is in the table, and no other', () => {
  const source = readFileSync(resolve(root, 'src/api/problem.ts'), 'utf8');
  const made = /ProblemStatus = ([^;]+);/.exec(source)?.[1]?.split(' | ');
  const inTable = [...page.matchAll(/^\| (\d{3}) \|/gm)].map(([, status]) => status);
  expect(inTable).toEqual(made);
});

test('every address of the table is there', async () => {
  const addresses = [...page.matchAll(/^\| `([A-Z]+) (\/[^`]+)` \|/gm)];
  expect(addresses.length).toBe(11);
  const { id } = JSON.parse(
    (await askJson(`${service.url}/v1/plans?effort=5`, scenarioNamed('only-what-must-be-said'), WAIT)).text,
  );
  for (const [, method = '', path = ''] of addresses) {
    const { status } = await ask(service.url + path.replace('ID', id), { method });
    expect([method, path, status]).not.toEqual([method, path, 404]);
  }
});
