// The document: valid for a validator that is not ours, made of the schemas that read, and of the same addresses as the app.
import { Validator } from '@seriousme/openapi-schema-validator';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ROUTE_NAMES } from '../../../src/api/telling/routeName.ts';
import { readScenarioValue } from '../../../src/read/readScenario.ts';
import { scenarioNamed } from '../../scenarios/allScenarios.ts';
import { ask, type Running, runningHere } from '../running.ts';
import { DOCUMENT, misfits, OPERATIONS } from './documentChecks.ts';
import { mountedRoutes } from './mountedRoutes.ts';
import { wholeApp } from './wholeApp.ts';

let app: Running;
beforeAll(async () => {
  app = await wholeApp();
});
afterAll(() => app.stop());

describe('the document', () => {
  test('is valid OpenAPI 3.1', async () => {
    const validator = new Validator();
    const { valid, errors } = await validator.validate(JSON.parse(JSON.stringify(DOCUMENT)));
    expect(errors).toBeUndefined();
    expect(valid).toBe(true);
    expect(validator.version).toBe('3.1');
  });

  test('a document with a fault is not', async () => {
    const { valid } = await new Validator().validate({ ...JSON.parse(JSON.stringify(DOCUMENT)), info: { title: 'no version' } });
    expect(valid).toBe(false);
  });

  test('every operation has an id of its own, a group that is there, and every reference leads somewhere', () => {
    const ids = OPERATIONS.map(({ operation }) => operation.operationId);
    expect(new Set(ids).size).toBe(ids.length);
    const groups = DOCUMENT.tags.map(({ name }) => name);
    for (const { operation } of OPERATIONS) expect(groups).toContain(operation.tags[0]);
    const refs = [...JSON.stringify(DOCUMENT).matchAll(/"\$ref":"#\/components\/(\w+)\/([^"]+)"/g)];
    expect(refs.length).toBeGreaterThan(100);
    const { components } = DOCUMENT;
    const there = new Set(
      Object.entries(components).flatMap(([kind, parts]) => Object.keys(parts).map((name) => `${kind}/${name}`)),
    );
    for (const [, kind, name] of refs) expect(there).toContain(`${kind}/${name}`);
  });

  test('every component is used', () => {
    const text = JSON.stringify(DOCUMENT);
    const unused = (['schemas', 'parameters', 'headers', 'responses'] as const).flatMap((kind) =>
      Object.keys(DOCUMENT.components[kind]).filter((name) => !text.includes(`"#/components/${kind}/${name}"`)),
    );
    expect(unused).toEqual([]);
  });

  test('its schema of a scenario takes what the reader takes and refuses what has a wrong key', () => {
    const schema = { $ref: '#/components/schemas/Scenario' };
    const scenario = scenarioNamed('two-hands-and-leaven');
    expect(misfits(schema, scenario)).toEqual([]);
    const wrong = { ...scenario, ovens: [] };
    expect(misfits(schema, wrong)).not.toEqual([]);
    expect(readScenarioValue(wrong).ok).toBe(false);
  });

  test('every request with a body has an example, and examples fit their schemas', () => {
    const bodies = OPERATIONS.flatMap(({ operation }) => Object.values(operation.requestBody?.content ?? {}));
    expect(bodies.length).toBeGreaterThan(6);
    for (const { schema, examples = {} } of bodies) {
      expect(Object.keys(examples).length).toBeGreaterThan(0);
      for (const { value } of Object.values(examples)) expect(misfits(schema, value)).toEqual([]);
    }
    for (const { name, schema, example } of Object.values(DOCUMENT.components.parameters))
      if (example !== undefined) expect(misfits(schema, example), name).toEqual([]);
  });
});

describe('document and app have the same addresses', () => {
  const documented = OPERATIONS.map(({ method, path }) => `${method} ${path}`).sort();

  test('every route of the app is in the document, and the reverse', () => {
    // One route answers an id with and without its suffix.
    const withoutSuffixes = documented.map((line) => line.replace(/\{id\}\.\w+$/, '{id}'));
    expect(mountedRoutes(app.parts)).toEqual([...new Set(withoutSuffixes)].sort());
  });

  test('the log and the metrics know every address', () => {
    for (const path of Object.keys(DOCUMENT.paths)) expect(ROUTE_NAMES).toContain(path);
  });

  test.each(Object.entries(DOCUMENT.paths))('%s refuses other methods and names its own', async (path, item) => {
    const url =
      app.url +
      path.replace('{id}', 'n0SuchW0rk').replace('{date}', '2026-04-08').replace('{name}', 'buns').replace('{revision}', '1');
    const { status, headers } = await ask(url, { method: 'PATCH' });
    expect(status).toBe(405);
    const methods = Object.keys(item).flatMap((method) => (method === 'get' ? ['GET', 'HEAD'] : [method.toUpperCase()]));
    expect(String(headers.allow).split(', ').sort()).toEqual(methods.sort());
  });
});

describe('/openapi.json', () => {
  test('is the document, and 304 for those who have it', async () => {
    const { status, headers, text } = await ask(`${app.url}/openapi.json`);
    expect(status).toBe(200);
    expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(DOCUMENT)));
    expect(headers['cache-control']).toBe('private, max-age=3600');
    const again = await ask(`${app.url}/openapi.json`, { headers: { 'If-None-Match': String(headers.etag) } });
    expect(again).toMatchObject({ status: 304, text: '' });
    const other = await ask(`${app.url}/openapi.json`, { headers: { 'If-None-Match': '"another"' } });
    expect(other.status).toBe(200);
  });
});

describe('who is refused, as the document says', () => {
  const answeredBare = OPERATIONS.filter(({ method, path }) => method === 'get' && !path.includes('{'));

  test.each(answeredBare)('$path without the token', async ({ path, operation }) => {
    const service = await runningHere({ token: 'a-token-of-sixteen-or-more' });
    const { status } = await ask(service.url + path);
    expect(status === 401).toBe(Object.hasOwn(operation.responses, '401'));
    expect(status === 401).toBe(operation.security === undefined);
  });

  test.each(answeredBare)('$path asked too often', async ({ path, operation }) => {
    const limits = { mostSeconds: 30, usualSeconds: 2, requestsPerMinute: 1, bodyKb: 1000 };
    const service = await runningHere({ limits });
    await ask(service.url + path);
    const { status } = await ask(service.url + path);
    expect(status === 429).toBe(Object.hasOwn(operation.responses, '429'));
  });
});
