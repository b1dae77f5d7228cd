// What the document promises, asked of real answers: an answer has a documented status and media type, and its body fits the schema.
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { openapiDocument } from '../../../src/api/openapi/openapiDocument.ts';
import { METHODS, type Method, type Operation, type Schema, type Answer as Told } from '../../../src/api/openapi/openapiShape.ts';
import { answerOf } from '../../../src/api/openapi/page/lookUp.ts';
import type { Answer } from '../running.ts';

export const VERSION = '1.2.3';
export const DOCUMENT = openapiDocument(VERSION, 30);

export type Placed = { readonly method: Method; readonly path: string; readonly operation: Operation };

export const OPERATIONS: readonly Placed[] = Object.entries(DOCUMENT.paths).flatMap(([path, item]) =>
  METHODS.flatMap((method) => {
    const operation = item[method];
    return operation === undefined ? [] : [{ method, path, operation }];
  }),
);

// Formats stand beside patterns that say the same; zod's own are checked by those.
const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: false, validateFormats: false });
ajv.addVocabulary(['components']);
ajv.addSchema({ $id: 'document', components: { schemas: DOCUMENT.components.schemas } });

const compiled = new Map<string, ValidateFunction>();

function validatorOf(schema: Schema): ValidateFunction {
  const text = JSON.stringify(schema).replaceAll('"#/components', '"document#/components');
  const known = compiled.get(text) ?? ajv.compile(JSON.parse(text));
  compiled.set(text, known);
  return known;
}

/** What is wrong with a value, in words; empty when it fits. */
export function misfits(schema: Schema, value: unknown): readonly string[] {
  const fits = validatorOf(schema);
  if (fits(value)) return [];
  return (fits.errors ?? []).map(({ instancePath, message = '' }) => `${instancePath} ${message}`);
}

function mediaTypeOf({ headers }: Answer): string {
  const [type = ''] = String(headers['content-type'] ?? '').split(';');
  return type;
}

function contentFaults(told: Told, answer: Answer): readonly string[] {
  const type = mediaTypeOf(answer);
  if (told.content === undefined) return answer.text === '' ? [] : ['a body where none is documented'];
  const media = told.content[type];
  if (media === undefined) return [`media type "${type}" is not documented`];
  const value: unknown = type.endsWith('json') ? JSON.parse(answer.text) : answer.text;
  return misfits(media.schema, value);
}

/** Headers that come only with some answers of a status. */
const SOMETIMES: ReadonlySet<string> = new Set(['Preference-Applied', 'Retry-After']);

function headerFaults(told: Told, { headers }: Answer): readonly string[] {
  return Object.keys(told.headers ?? {})
    .filter((name) => !SOMETIMES.has(name) && headers[name.toLowerCase()] === undefined)
    .map((name) => `no ${name}`);
}

/** Where an answer is not as the document says; empty when it is. */
export function answerFaults({ operation }: Placed, answer: Answer): readonly string[] {
  const told = operation.responses[answer.status];
  if (told === undefined) return [`status ${answer.status} is not documented`];
  const here = answerOf(DOCUMENT, told);
  return [...contentFaults(here, answer), ...headerFaults(here, answer)];
}
