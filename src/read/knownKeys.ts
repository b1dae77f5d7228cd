// The keys a schema allows at a place of an input. Used to suggest a key for an unknown one.
import { z } from 'zod';
import { childOf } from './placeName.ts';

function unwrapped(schema: unknown): unknown {
  let inner = schema;
  while (inner instanceof z.ZodOptional || inner instanceof z.ZodDefault) inner = inner.unwrap();
  return inner;
}

/** The option of a choice by `do` that the value chose. */
function chosen(schema: unknown, value: unknown): unknown {
  if (!(schema instanceof z.ZodDiscriminatedUnion)) return schema;
  const doing = childOf(value, 'do');
  return schema.options.find((option: unknown) => {
    const literal: unknown = option instanceof z.ZodObject ? option.shape.do : undefined;
    return literal instanceof z.ZodLiteral && literal.value === doing;
  });
}

function innerSchema(schema: unknown, segment: PropertyKey): unknown {
  if (schema instanceof z.ZodArray) return schema.element;
  if (schema instanceof z.ZodObject) return Object.getOwnPropertyDescriptor(schema.shape, segment)?.value;
  return undefined;
}

/** Keys allowed in the object at a place; empty when the schema names none there. */
export function knownKeys(schema: z.ZodType, root: unknown, path: readonly PropertyKey[]): readonly string[] {
  let value = root;
  let inner = chosen(unwrapped(schema), value);
  for (const segment of path) {
    value = childOf(value, segment);
    inner = chosen(unwrapped(innerSchema(inner, segment)), value);
  }
  return inner instanceof z.ZodObject ? Object.keys(inner.shape) : [];
}
