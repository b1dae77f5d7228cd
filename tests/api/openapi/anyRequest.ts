// Requests drawn from the document: every operation, with parameters, headers and bodies as it says or with something wrong. Used by the
// fuzzer.
import fc, { type Arbitrary } from 'fast-check';
import type { Parameter, Schema } from '../../../src/api/openapi/openapiShape.ts';
import { parameterOf } from '../../../src/api/openapi/page/lookUp.ts';
import type { Asked } from '../running.ts';
import { DOCUMENT, OPERATIONS, type Placed } from './documentChecks.ts';
import { soundValue, spoiledValue } from './schemaValues.ts';

export type Drawn = { readonly placed: Placed; readonly address: string; readonly asked: Asked };

type Named = readonly (readonly [string, string])[];

/** Texts a header can carry: the client in between refuses others. */
function asHeader(text: string): string {
  return text.replace(/[^\x20-\x7e]/g, '').trim();
}

/** A parameter most often as its schema or example has it; else any text, or left out where it may be. */
function parameterValue({ schema, example, required }: Parameter): Arbitrary<string | undefined> {
  const sound = fc.oneof(soundValue(schema), ...(example === undefined ? [] : [fc.constant(example)])).map(String);
  const wrong = fc.oneof(fc.string(), fc.constantFrom('', '-1', 'wait=x', '..', '%00', "';--", '<script>', 'W/"x", *'));
  const absent = required === true ? [] : [{ weight: 3, arbitrary: fc.constant(undefined) }];
  return fc.oneof({ weight: 4, arbitrary: sound }, { weight: 1, arbitrary: wrong }, ...absent);
}

function drawn(parameters: readonly Parameter[], place: Parameter['in']): Arbitrary<Named> {
  const own = parameters.filter((parameter) => parameter.in === place);
  return fc
    .tuple(...own.map(parameterValue))
    .map((values) => own.flatMap(({ name }, index) => (values[index] === undefined ? [] : [[name, values[index]] as const])));
}

type Body = { readonly type: string; readonly body: string | Uint8Array };

function written(type: string, values: Arbitrary<unknown>): Arbitrary<Body> {
  return values.map((value) => ({
    type,
    body: typeof value === 'string' && type !== 'application/json' ? value : JSON.stringify(value),
  }));
}

const NO_TYPE = fc.constantFrom('text/plain', 'application/xml', 'application/json; charset=latin1', '');

function bodies({ operation: { requestBody } }: Placed): Arbitrary<Body | undefined> {
  if (requestBody === undefined) return fc.constant(undefined);
  const kinds = Object.entries(requestBody.content).flatMap(
    ([type, { schema, examples = {} }]: [
      string,
      { schema: Schema; examples?: Readonly<Record<string, { readonly value: unknown }>> },
    ]) => {
      const example = fc.constantFrom(...Object.values(examples).map(({ value }) => value));
      return [
        written(type, example),
        written(type, spoiledValue(example)),
        written(type, soundValue(schema)),
        written(type, spoiledValue(soundValue(schema))),
      ];
    },
  );
  const broken = fc.record({
    type: fc.constantFrom(...Object.keys(requestBody.content)),
    body: fc.oneof(fc.string(), fc.uint8Array({ maxLength: 40 })),
  });
  const mistyped = fc.tuple(fc.oneof(...kinds), NO_TYPE).map(([{ body }, type]) => ({ type, body }));
  return fc.oneof(
    { weight: 8, arbitrary: fc.oneof(...kinds) },
    { weight: 1, arbitrary: broken },
    { weight: 1, arbitrary: mistyped },
    { weight: 1, arbitrary: fc.constant(undefined) },
  );
}

const ACCEPTS = fc.constantFrom(
  undefined,
  undefined,
  undefined,
  '*/*',
  'application/json',
  'text/plain',
  'image/svg+xml',
  'text/*;q=0.5',
  'video/mp4',
  ';;',
);

/** Work asked for here is done with little effort, so that many requests are asked in a short time. */
function isCheap(query: Named): Named {
  const effort = query.filter(([name]) => name === 'effort' || name === 'seconds');
  return effort.length > 0 ? query : [...query, ['effort', '1']];
}

function requestOf(placed: Placed): Arbitrary<Drawn> {
  const parameters = (placed.operation.parameters ?? []).map((ref) => parameterOf(DOCUMENT, ref));
  const takesEffort = parameters.some(({ name }) => name === 'effort');
  return fc
    .tuple(drawn(parameters, 'path'), drawn(parameters, 'query'), drawn(parameters, 'header'), bodies(placed), ACCEPTS)
    .map(([path, asks, headers, body, accept]) => {
      const query = takesEffort ? isCheap(asks) : asks;
      // An empty or dotted name leads to another address, which is another operation's affair.
      const filled = path.reduce(
        (text, [name, value]) => text.replace(`{${name}}`, encodeURIComponent(/^\.*$/.test(value) ? 'x' : value)),
        placed.path,
      );
      const search = new URLSearchParams(Object.fromEntries(query)).toString();
      return {
        placed,
        address: search === '' ? filled : `${filled}?${search}`,
        asked: {
          method: placed.method.toUpperCase(),
          headers: Object.fromEntries([
            ...headers.map(([name, value]) => [name, asHeader(value)]),
            ...(accept === undefined ? [] : [['Accept', accept]]),
            ...(body === undefined || body.type === '' ? [] : [['Content-Type', body.type]]),
          ]),
          ...(body === undefined ? {} : { body: body.body }),
        },
      };
    });
}

export const ANY_REQUEST: Arbitrary<Drawn> = fc.oneof(...OPERATIONS.map(requestOf));
