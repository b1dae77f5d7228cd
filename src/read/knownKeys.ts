// The keys a schema allows at a place of an input. Used to suggest a key for an unknown one.
import * as z from 'zod';
import { childOf } from './placeName.ts';

function unwrapped(schema: unknown): unknown {
  let inner = schema;
  while (inner instanceof z.ZodOptional || inner instanceof z.ZodDefault) inner = inner.unwrap();
  return inner;
}

/** The word by which an option of a choice is chosen. */
function wordOf(option: unknown, discriminator: string): unknown {
  const shape: Readonly<Record<string, unknown>> = option instanceof z.ZodObject ? option.shape : {};
  const literal = shape[discriminator];
  return literal instanceof z.ZodLiteral ? literal.value : undefined;
}

/** The option of a choice by `do` or `what` that the value chose. */
function chosen(schema: unknown, value: unknown): unknown {
  if (!(schema instanceof z.ZodDiscriminatedUnion)) return schema;
  const { discriminator } = schema.def;
  const word = childOf(value, discriminator);
  return schema.options.find((option: unknown) => wordOf(option, discriminator) === word);
}

function innerSchema(schema: unknown, segment: PropertyKey): unknown {
  if (schema instanceof z.ZodArray) return schema.element;
  if (schema instanceof z.ZodObject) return Object.getOwnPropertyDescriptor(schema.shape, segment)?.value;
  return undefined;
}

/** The schema at a place, a choice not yet made. */
function schemaAt(schema: z.ZodType, root: unknown, path: readonly PropertyKey[]): unknown {
  let value = root;
  let inner = unwrapped(schema);
  for (const segment of path) {
    inner = unwrapped(innerSchema(chosen(inner, value), segment));
    value = childOf(value, segment);
  }
  return inner;
}

/** Keys allowed in the object at a place; empty when the schema names none there. */
export function knownKeys(schema: z.ZodType, root: unknown, path: readonly PropertyKey[]): readonly string[] {
  const value = path.reduce((inner: unknown, segment) => childOf(inner, segment), root);
  const inner = chosen(schemaAt(schema, root, path), value);
  return inner instanceof z.ZodObject ? Object.keys(inner.shape) : [];
}

/** Words by which the choice at a place is made. */
export function knownWords(schema: z.ZodType, root: unknown, path: readonly PropertyKey[]): readonly string[] {
  const inner = schemaAt(schema, root, path);
  if (!(inner instanceof z.ZodDiscriminatedUnion)) return [];
  return inner.options.flatMap((option: unknown) => {
    const word = wordOf(option, inner.def.discriminator);
    return typeof word === 'string' ? [word] : [];
  });
}
