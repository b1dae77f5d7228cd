// Copies an already parsed value (JSON from the API, a plan file) into a plain one, refusing what JSON cannot hold.
import { FORBIDDEN_KEYS, PLAIN } from './forbiddenKeys.ts';
import { type CodedError, inputErrorAt } from './inputErrorAt.ts';
import { MAX_DEPTH } from './limits.ts';
import { pointerOf, type Segment } from './pointer.ts';
import { shown } from './shown.ts';

type Walk = { readonly errors: CodedError[]; readonly maxValues: number; values: number; isFull: boolean };

function refuse(walk: Walk, ...error: Parameters<typeof inputErrorAt>): undefined {
  walk.errors.push(inputErrorAt(...error));
  return undefined;
}

function isPlainObject(value: object): boolean {
  const parent: unknown = Object.getPrototypeOf(value);
  return parent === null || parent === Object.prototype;
}

function objectCopy(walk: Walk, value: object, path: readonly Segment[]): unknown {
  const copy: Record<string, unknown> = {};
  for (const [key, inner] of Object.entries(value)) {
    if (FORBIDDEN_KEYS.has(key)) {
      refuse(walk, 'FORBIDDEN_KEY', pointerOf([...path, key]), `The key ${shown(key)} may not be used.`, 'Take it out.');
    } else if (inner !== undefined) {
      copy[key] = copyOf(walk, inner, [...path, key]);
    }
    if (walk.isFull) break;
  }
  return copy;
}

function copyOf(walk: Walk, value: unknown, path: readonly Segment[]): unknown {
  walk.values += 1;
  if (walk.values > walk.maxValues) {
    walk.isFull = true;
    const says = `There are more than ${walk.maxValues} values.`;
    return refuse(walk, 'TOO_MANY_VALUES', pointerOf(path), says, 'Leave out what the day does not need.');
  }
  if (path.length > MAX_DEPTH) {
    walk.isFull = true;
    const says = `Lists and objects lie more than ${MAX_DEPTH} levels inside one another.`;
    return refuse(walk, 'TOO_DEEP', pointerOf(path), says, 'Write it flatter: a scenario needs 7.');
  }
  if (typeof value === 'number' && !Number.isFinite(value)) {
    return refuse(walk, 'NOT_A_NUMBER', pointerOf(path), 'This is no number that can be counted with.', 'Write a plain number.');
  }
  if (value === null || PLAIN.has(typeof value)) return value;
  if (Array.isArray(value)) {
    const list: unknown[] = [];
    for (let index = 0; index < value.length && !walk.isFull; index += 1) list.push(copyOf(walk, value[index], [...path, index]));
    return list;
  }
  if (typeof value === 'object' && isPlainObject(value)) return objectCopy(walk, value, path);
  return refuse(
    walk,
    'NOT_PLAIN',
    pointerOf(path),
    'JSON cannot hold this value.',
    'Use text, numbers, true, false, lists and objects.',
  );
}

/** A plain copy, and what was refused on the way. */
export function plainValue(
  value: unknown,
  maxValues: number,
): { readonly value: unknown; readonly errors: readonly CodedError[] } {
  const walk: Walk = { errors: [], maxValues, values: 0, isFull: false };
  const copy = copyOf(walk, value, []);
  return { value: copy, errors: walk.errors };
}
