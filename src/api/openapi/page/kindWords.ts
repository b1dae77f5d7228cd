// What kind of value a schema takes, in words: "whole number, 1 to 500". Used for parameters and fields on the page.
import type { Schema } from '../openapiShape.ts';
import { all, type Html, joined, tag, words } from './html.ts';
import { choicesOf, fieldsOf, listOf, numberOf, partOf, referredIn, textOf } from './schemaAt.ts';

/** Bounds that only say what a computer can count to say nothing to a reader. */
const COUNTABLE = 2 ** 31 - 1;

function bound(schema: Schema, key: string): number | undefined {
  const number = numberOf(schema, key);
  return number === undefined || Math.abs(number) >= COUNTABLE ? undefined : number;
}

function bounds(least: number | undefined, most: number | undefined, of = ''): string {
  if (least !== undefined && most !== undefined) return least === most ? `, ${least}${of}` : `, ${least} to ${most}${of}`;
  if (least !== undefined) return `, ${least}${of} or more`;
  return most === undefined ? '' : `, at most ${most}${of}`;
}

function numberWords(schema: Schema): string {
  const kind = schema.type === 'integer' ? 'whole number' : 'number';
  return `${kind}${bounds(bound(schema, 'minimum'), bound(schema, 'maximum'))}`;
}

function stringWords(schema: Schema): string {
  const format = textOf(schema, 'format');
  if (format === 'date') return 'date';
  if (format === 'date-time') return 'instant';
  const least = bound(schema, 'minLength');
  return `text${bounds(least === 0 ? undefined : least, bound(schema, 'maxLength'), ' letters')}`;
}

function constant(value: unknown): Html {
  return tag('code', {}, JSON.stringify(value) ?? '');
}

function listWords(schema: Schema): Html {
  // The only lists with places of their own are ranges.
  if (listOf(schema, 'prefixItems').length > 0) return words('[at least, at most]');
  const items = partOf(schema, 'items');
  const count = bounds(bound(schema, 'minItems'), bound(schema, 'maxItems'), ' entries');
  return items === undefined ? words(`list${count}`) : all(words('list of '), kindWords(items), words(count));
}

function objectWords(schema: Schema): Html {
  const values = partOf(schema, 'additionalProperties');
  if (fieldsOf(schema).length > 0 || values === undefined) return words('object');
  return all(words('object with values: '), kindWords(values));
}

const BY_TYPE: Readonly<Record<string, (schema: Schema) => Html>> = {
  array: listWords,
  object: objectWords,
  integer: (schema) => words(numberWords(schema)),
  number: (schema) => words(numberWords(schema)),
  string: (schema) => words(stringWords(schema)),
  boolean: () => words('true or false'),
  null: () => tag('code', {}, 'null'),
};

export function schemaAnchor(name: string): string {
  return `schema-${name}`;
}

export function kindWords(schema: Schema): Html {
  const referred = referredIn(schema);
  if (referred !== undefined) return tag('a', { href: `#${schemaAnchor(referred)}` }, referred);
  if ('const' in schema) return constant(schema.const);
  if (Array.isArray(schema.enum)) return joined(schema.enum.map(constant), ', ');
  const choices = choicesOf(schema);
  if (choices.length > 0) {
    const kinds = choices.map(kindWords);
    const apart = new Map(kinds.map((kind) => [kind.html, kind]));
    return joined([...apart.values()], ', or ');
  }
  return BY_TYPE[String(schema.type)]?.(schema) ?? words('anything');
}
