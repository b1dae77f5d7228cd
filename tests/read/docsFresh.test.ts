// The written pages and schemas are those the code gives now, and docs/scenario.md has a table for every object.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { tablePlaces } from '../../scripts/fieldTables.ts';
import { readDocs } from '../../scripts/readDocs.ts';
import { scenarioSchema } from '../../src/model/scenario.ts';
import { SCENARIO_PAGE } from './wholeScenario.ts';

const ROOT = new URL('../../', import.meta.url);

function unwrapped(schema: unknown): unknown {
  return schema instanceof z.ZodOptional || schema instanceof z.ZodDefault ? unwrapped(schema.unwrap()) : schema;
}

/** Every object of a schema with its place, and the keys it allows. */
function objectsOf(schema: unknown, place: string): readonly (readonly [string, readonly string[]])[] {
  const inner = unwrapped(schema);
  if (inner instanceof z.ZodObject) {
    const shape: Readonly<Record<string, unknown>> = inner.shape;
    return [[place, Object.keys(shape)], ...Object.entries(shape).flatMap(([key, value]) => objectsOf(value, `${place}.${key}`))];
  }
  if (inner instanceof z.ZodArray) return objectsOf(inner.element, `${place}[]`);
  if (!(inner instanceof z.ZodDiscriminatedUnion)) return [];
  return inner.options.flatMap((option: unknown) => {
    const step: unknown = option instanceof z.ZodObject ? option.shape.do : undefined;
    const name = step instanceof z.ZodLiteral ? String(step.value) : '';
    return objectsOf(option, place.replace(/\[\]$/, `[${name}]`));
  });
}

/** Keys in the first column of the table at a place. */
function keysInPage(place: string): readonly string[] {
  const start = SCENARIO_PAGE.indexOf(`<!-- table: ${place} -->`);
  const table = SCENARIO_PAGE.slice(start, SCENARIO_PAGE.indexOf('<!-- end -->', start));
  return [...table.matchAll(/^\| `(\w+)` \|/gm)].map((match) => match[1] ?? '');
}

/** The steps at the bench take the same keys and share one table. */
function tableOf(place: string): string {
  return place.replace(/\[(divide|finish)\]$/, '[shape]');
}

const OBJECTS = objectsOf(scenarioSchema, 'scenario');

describe('what is written from the code', () => {
  it.each([...readDocs(SCENARIO_PAGE)])('%s is fresh: else run npx tsx scripts/writeSchemas.ts', (path, text) => {
    expect(readFileSync(new URL(path, ROOT), 'utf8')).toBe(text);
  });

  it.each(OBJECTS)('docs/scenario.md has every key of %s', (place, keys) => {
    expect(keysInPage(tableOf(place))).toEqual(keys);
  });

  it('docs/scenario.md has no table of a scenario that is none', () => {
    const places = tablePlaces(SCENARIO_PAGE).filter((place) => place.startsWith('scenario'));
    expect([...places].sort()).toEqual([...new Set(OBJECTS.map(([place]) => tableOf(place)))].sort());
  });

  it('every key has a meaning', () => {
    const rows = SCENARIO_PAGE.split('\n').filter((line) => line.startsWith('| `'));
    expect(rows.length).toBeGreaterThan(100);
    expect(rows.filter((row) => /\|\s*\|$/.test(row))).toEqual([]);
  });
});
