// The schemas of the document: JSON Schema made from the zod schemas that read requests, and from those of the answers.
import * as z from 'zod';
import type { Schema } from './openapiShape.ts';

export const SCHEMAS_AT = '#/components/schemas/';

export type Named = Readonly<Record<string, z.ZodType>>;

/** The place says which schema it is and the dialect stands at the top of the document: both need no saying again. */
function inDocument({ $schema: _dialect, $id: _place, ...schema }: Record<string, unknown>): Schema {
  return schema;
}

function named(registry: z.core.$ZodRegistry<{ id: string }>, schemas: Named): void {
  for (const [id, schema] of Object.entries(schemas)) registry.add(schema, { id });
}

/**
 * Named schemas as JSON Schema. Where one holds another of them, or one of the `others`, it refers to it. `input`: as a client may
 * write it, what has a default left out; `output`: as the service writes it.
 */
export function componentSchemas(own: Named, io: 'input' | 'output', others: Named): Readonly<Record<string, Schema>> {
  const registry = z.registry<{ id: string }>();
  named(registry, others);
  named(registry, own);
  const { schemas } = z.toJSONSchema(registry, { io, target: 'draft-2020-12', uri: (id) => `${SCHEMAS_AT}${id}` });
  return Object.fromEntries(
    Object.entries(schemas)
      .filter(([id]) => id in own)
      .map(([id, schema]) => [id, inDocument(schema)]),
  );
}
