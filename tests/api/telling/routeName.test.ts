// Every address the service documents has a name of its own for log and metrics; what somebody makes up has none.
import { expect, test } from 'vitest';
import { openapiDocument } from '../../../src/api/openapi/openapiDocument.ts';
import { ROUTE_NAMES, routeName } from '../../../src/api/telling/routeName.ts';

const FILLED: Readonly<Record<string, string>> = { id: 'aB-9_x', date: '2026-05-16', revision: '12', name: 'saturday' };

/** Parameters of the document are called as ours are; an unknown one is left and finds no route. */
function filled(path: string): string {
  return path.replace(/\{(\w+)\}/g, (whole, name: string) => FILLED[name] ?? whole);
}

const documented = Object.keys(openapiDocument('1.2.3', 30).paths ?? {});

test('documented addresses', () => {
  expect(documented.length).toBeGreaterThan(15);
  expect(documented.filter((path) => routeName(filled(path)).route !== path)).toEqual([]);
});

test('each name is found by its own addresses', () => {
  expect(ROUTE_NAMES.map((name) => routeName(filled(name)).route)).toEqual(ROUTE_NAMES);
  expect(new Set(ROUTE_NAMES).size).toBe(ROUTE_NAMES.length);
});

test.each([
  '',
  '/',
  '//',
  '/v1',
  '/v1/plans/',
  '/v1/plans/a b',
  '/v1/plans/a/b',
  '/v1/days/soon/posted',
  '/V1/plans',
  '/v1/plans/.svg',
])('%j leads nowhere', (path) => {
  expect(routeName(path)).toEqual({ route: 'elsewhere', path: 'elsewhere' });
});

test('names of scenarios are not told', () => {
  expect(routeName('/v1/scenarios/wedding/history').path).toBe('/v1/scenarios/{name}/history');
});
