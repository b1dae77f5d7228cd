// Reads JSON Schema as the page needs it: what a part of one holds, and which component a reference names.
import { SCHEMAS_AT } from '../componentSchemas.ts';
import type { Schema } from '../openapiShape.ts';

export function isSchema(value: unknown): value is Schema {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The schema under a key of another: `items`, `additionalProperties`. */
export function partOf(schema: Schema, key: string): Schema | undefined {
  const part = schema[key];
  return isSchema(part) ? part : undefined;
}

/** The schemas listed under a key of another: `anyOf`, `prefixItems`. */
export function listOf(schema: Schema, key: string): readonly Schema[] {
  const list = schema[key];
  return Array.isArray(list) ? list.filter(isSchema) : [];
}

/** What it may be, one or the other. */
export function choicesOf(schema: Schema): readonly Schema[] {
  return [...listOf(schema, 'anyOf'), ...listOf(schema, 'oneOf')];
}

/** Fields of an object, in their order. */
export function fieldsOf(schema: Schema): readonly (readonly [string, Schema])[] {
  const fields = partOf(schema, 'properties') ?? {};
  return Object.entries(fields).filter((field): field is [string, Schema] => isSchema(field[1]));
}

export function isNeeded(schema: Schema, field: string): boolean {
  return Array.isArray(schema.required) && schema.required.includes(field);
}

/** Name of the component a schema refers to. */
export function referredIn(schema: Schema): string | undefined {
  const { $ref } = schema;
  return typeof $ref === 'string' && $ref.startsWith(SCHEMAS_AT) ? $ref.slice(SCHEMAS_AT.length) : undefined;
}

export function textOf(schema: Schema, key: string): string | undefined {
  const text = schema[key];
  return typeof text === 'string' ? text : undefined;
}

export function numberOf(schema: Schema, key: string): number | undefined {
  const number = schema[key];
  return typeof number === 'number' ? number : undefined;
}
