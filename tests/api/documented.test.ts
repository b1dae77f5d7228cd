// docs/api.md: its examples are sent as they stand and answered as it says; its tables name what there is.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { version } from '../../src/cli/version.ts';
import { scenarioNamed } from '../scenarios/allScenarios.ts';
import { ask, askJson, type Running, running, WAIT } from './running.ts';
import { answeredAsShown, docsPage, shownRequests } from './shownRequests.ts';

const root = resolve(import.meta.dirname, '../..');
const page = docsPage('api.md');

const examples = shownRequests(page);

let service: Running;
beforeAll(async () => {
  service = await running({ version: version() });
});
afterAll(() => service.stop());

test('there are examples', () => {
  expect(examples.length).toBeGreaterThan(4);
});

test.each(examples)('$request.first', async (example) => {
  await answeredAsShown(service.url, example);
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
