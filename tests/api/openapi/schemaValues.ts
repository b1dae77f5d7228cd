// Values drawn from a schema of the document, sound ones and ones with something wrong. Used by the fuzzer.
import fc, { type Arbitrary } from 'fast-check';
import type { Schema } from '../../../src/api/openapi/openapiShape.ts';
import {
  choicesOf,
  fieldsOf,
  isNeeded,
  listOf,
  numberOf,
  partOf,
  referredIn,
  textOf,
} from '../../../src/api/openapi/page/schemaAt.ts';
import { DOCUMENT } from './documentChecks.ts';

const MOST_ENTRIES = 3;

function numbers(schema: Schema): Arbitrary<unknown> {
  const min = Math.max(numberOf(schema, 'minimum') ?? -1000, -(2 ** 31));
  const max = Math.min(numberOf(schema, 'maximum') ?? 1000, 2 ** 31 - 1);
  const whole = fc.integer({ min: Math.ceil(min), max: Math.floor(max) });
  return schema.type === 'integer' ? whole : fc.oneof(whole, fc.double({ min, max, noNaN: true }));
}

/** Patterns fast-check cannot draw from, or draws from without sense, have words of their own. */
function texts(schema: Schema): Arbitrary<unknown> {
  if (textOf(schema, 'format') === 'date') return fc.constantFrom('2026-04-08', '2026-04-09', '2024-02-29');
  const pattern = textOf(schema, 'pattern');
  const [minLength, maxLength] = [numberOf(schema, 'minLength') ?? 0, Math.min(numberOf(schema, 'maxLength') ?? 20, 20)];
  const free = fc.string({ minLength, maxLength });
  if (pattern === undefined) return free;
  return fc.oneof(fc.stringMatching(new RegExp(pattern)), fc.constantFrom('bun', 'bun-dough', '05:00'));
}

function lists(schema: Schema, depth: number): Arbitrary<unknown> {
  const places = listOf(schema, 'prefixItems');
  if (places.length > 0) return fc.tuple(...places.map((place) => soundValue(place, depth + 1)));
  const minLength = numberOf(schema, 'minItems') ?? 0;
  const maxLength = Math.max(minLength, Math.min(numberOf(schema, 'maxItems') ?? MOST_ENTRIES, depth > 6 ? 1 : MOST_ENTRIES));
  return fc.array(soundValue(partOf(schema, 'items') ?? {}, depth + 1), { minLength, maxLength });
}

function objects(schema: Schema, depth: number): Arbitrary<unknown> {
  const fields = fieldsOf(schema).filter(([name]) => depth < 8 || isNeeded(schema, name));
  const requiredKeys = fields.map(([name]) => name).filter((name) => isNeeded(schema, name));
  const model = Object.fromEntries(fields.map(([name, field]) => [name, soundValue(field, depth + 1)]));
  return fc.record(model, { requiredKeys });
}

/** Values a schema takes. */
export function soundValue(schema: Schema, depth = 0): Arbitrary<unknown> {
  const referred = referredIn(schema);
  if (referred !== undefined) return soundValue(DOCUMENT.components.schemas[referred] ?? {}, depth);
  if ('const' in schema) return fc.constant(schema.const);
  if (Array.isArray(schema.enum)) return fc.constantFrom(...schema.enum);
  const choices = choicesOf(schema);
  if (choices.length > 0) return fc.oneof(...choices.map((choice) => soundValue(choice, depth)));
  if (schema.type === 'object') return objects(schema, depth);
  if (schema.type === 'array') return lists(schema, depth);
  if (schema.type === 'string') return texts(schema);
  if (schema.type === 'boolean') return fc.boolean();
  if (schema.type === 'null') return fc.constant(null);
  if (schema.type === 'integer' || schema.type === 'number') return numbers(schema);
  return fc.jsonValue({ maxDepth: 1 });
}

/** What nobody meant to send. */
const NONSENSE: Arbitrary<unknown> = fc.oneof(
  fc.constantFrom(null, '', '<script>', '../../etc', -1, 1e308, 0.5, [], {}, [[]], '__proto__', true),
  fc.jsonValue({ maxDepth: 2 }),
);

/** The value with nonsense at one place somewhere inside, or with one key more or less. */
function spoiled(value: unknown, path: readonly number[], nonsense: unknown): unknown {
  const [turn, ...rest] = path;
  if (turn === undefined || typeof value !== 'object' || value === null) return nonsense;
  const keys = Object.keys(value);
  const key = keys[turn % (keys.length + 1)];
  if (key === undefined) return Array.isArray(value) ? [...value, nonsense] : { ...value, more: nonsense };
  if (rest.length === 0 && turn % 5 === 0 && !Array.isArray(value))
    return Object.fromEntries(Object.entries(value).filter(([name]) => name !== key));
  const entries = Object.entries(value).map(
    ([name, inside]) => [name, name === key ? spoiled(inside, rest, nonsense) : inside] as const,
  );
  return Array.isArray(value) ? entries.map(([, inside]) => inside) : Object.fromEntries(entries);
}

export function spoiledValue(sound: Arbitrary<unknown>): Arbitrary<unknown> {
  const path = fc.array(fc.nat(1000), { maxLength: 7 });
  return fc.tuple(sound, path, NONSENSE).map(([value, way, nonsense]) => spoiled(value, way, nonsense));
}
