// The fields of a schema as rows: those of objects inside one another one after the other, each by its whole name. Used by fieldTable.ts.
import type { Schema } from '../openapiShape.ts';
import { choicesOf, fieldsOf, isNeeded, partOf, referredIn, textOf } from './schemaAt.ts';

export type FieldRow = {
  /** As one writes it: `equipment.ovens[].decks[].trays`. */
  readonly name: string;
  readonly schema: Schema;
  readonly isNeeded: boolean;
  readonly says: string;
  /** Of which kind of object it is a field where there are several, in words: `do: mix, fold`. */
  readonly when?: string;
};

/** The field that tells one choice from the other, with its word. */
function tellingField(choice: Schema): readonly [string, string] | undefined {
  const telling = fieldsOf(choice).find(([, field]) => typeof field.const === 'string');
  return telling === undefined ? undefined : [telling[0], String(telling[1].const)];
}

function objectRows(schema: Schema, before: string, when: string | undefined): readonly FieldRow[] {
  return fieldsOf(schema).flatMap(([field, inside]): readonly FieldRow[] => {
    const name = `${before}${field}`;
    const row: FieldRow = {
      name,
      schema: inside,
      isNeeded: isNeeded(schema, field),
      says: textOf(inside, 'description') ?? '',
      ...(when === undefined ? {} : { when }),
    };
    return [row, ...insideRows(inside, name)];
  });
}

/** Rows of what is inside a field: nothing for a reference, which has a section of its own. */
function insideRows(schema: Schema, name: string): readonly FieldRow[] {
  if (referredIn(schema) !== undefined) return [];
  const items = partOf(schema, 'items');
  if (items !== undefined) return insideRows(items, `${name}[]`);
  return fieldRows(schema, `${name}.`);
}

const WAYS = ['One way', 'The other way'];

/** Choices with the same fields are told together. */
function together(choices: readonly Schema[], before: string): readonly FieldRow[] {
  const byRows = new Map<string, { readonly kinds: string[]; readonly rows: readonly FieldRow[] }>();
  for (const choice of choices) {
    const telling = tellingField(choice);
    const rows = objectRows(choice, before, undefined).filter(
      ({ name, schema }) => telling === undefined || name !== before + telling[0] || !('const' in schema),
    );
    const key = JSON.stringify([telling?.[0], rows]);
    const same = byRows.get(key) ?? { kinds: [], rows };
    if (telling !== undefined) same.kinds.push(telling[1]);
    byRows.set(key, same);
  }
  return [...byRows.values()].flatMap(({ kinds, rows }, index) => {
    const field = tellingField(choices[0] ?? {})?.[0] ?? '';
    const when = kinds.length === 0 ? (WAYS[index] ?? 'Another way') : `${field}: ${kinds.join(', ')}`;
    return rows.map((row) => ({ ...row, when }));
  });
}

/** `before`: what stands before each name. */
export function fieldRows(schema: Schema, before = ''): readonly FieldRow[] {
  const objects = choicesOf(schema).filter((choice) => referredIn(choice) === undefined && fieldsOf(choice).length > 0);
  const [only] = objects;
  const inside = objects.length === 1 && only !== undefined ? objectRows(only, before, undefined) : together(objects, before);
  return [...objectRows(schema, before, undefined), ...inside];
}
