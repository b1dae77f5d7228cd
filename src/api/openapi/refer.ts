// References to the shared parts of the document. Used by the files of paths; a misspelt name does not compile.
import type { HeaderName } from './answerHeaders.ts';
import { SCHEMAS_AT } from './componentSchemas.ts';
import type { Ref } from './openapiShape.ts';
import type { ParameterName } from './parameters.ts';
import type { SchemaName } from './schemas.ts';

export function schemaRef(name: SchemaName): Ref {
  return { $ref: `${SCHEMAS_AT}${name}` };
}

export function parameterRefs(...names: readonly ParameterName[]): readonly Ref[] {
  return names.map((name) => ({ $ref: `#/components/parameters/${name}` }));
}

export function headerRefs(...names: readonly HeaderName[]): Readonly<Record<string, Ref>> {
  return Object.fromEntries(names.map((name) => [name, { $ref: `#/components/headers/${name}` }]));
}
