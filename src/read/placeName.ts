// Names a place of an input in words: `minutes of step 3 (bake) of product "cardamom-knot"`.
import type { Segment } from './pointer.ts';
import { shown } from './shown.ts';

const SINGULAR: ReadonlyMap<string, string> = new Map([
  ['ovens', 'oven'],
  ['decks', 'deck'],
  ['proofers', 'proofer'],
  ['retarders', 'retarder'],
  ['mixers', 'mixer'],
  ['people', 'person'],
  ['breaks', 'break'],
  ['doughs', 'dough'],
  ['products', 'product'],
  ['orders', 'order'],
  ['steps', 'step'],
  ['tasks', 'task'],
  ['batches', 'batch'],
  ['trays', 'tray'],
  ['keeps', 'word'],
  ['setPoints', 'set point'],
  ['happened', 'event'],
  ['keep', 'decision'],
  ['cannot', 'word'],
  ['allergens', 'word'],
  ['keeps', 'word'],
  ['minutes', 'number'],
  ['temperatureC', 'number'],
]);

/** Entries without a name of their own: their list is named beside them. */
const OF_A_NAMED_LIST: ReadonlySet<string | undefined> = new Set(['number', 'word']);

/** The value of a key or an index, or undefined when the value has none. */
export function childOf(value: unknown, segment: PropertyKey): unknown {
  if (typeof value !== 'object' || value === null) return undefined;
  return Object.getOwnPropertyDescriptor(value, segment)?.value;
}

/** The value at a place of an input, or undefined when there is none. */
export function valueAt(root: unknown, segments: readonly PropertyKey[]): unknown {
  return segments.reduce((value: unknown, segment) => childOf(value, segment), root);
}

function entryName(list: PropertyKey, index: number, entry: unknown): string {
  const kind = SINGULAR.get(String(list)) ?? `entry of ${String(list)}`;
  const id = childOf(entry, 'id');
  if (typeof id === 'string' && kind !== 'step') return `${kind} ${shown(id)}`;
  const doing = childOf(entry, 'do') ?? childOf(entry, 'what');
  return typeof doing === 'string' ? `${kind} ${index + 1} (${shown(doing).slice(1, -1)})` : `${kind} ${index + 1}`;
}

/** A place in words, from the inside out; "the file" for the whole. */
export function placeName(root: unknown, segments: readonly Segment[]): string {
  const names: string[] = [];
  let value = root;
  segments.forEach((segment, depth) => {
    value = childOf(value, segment);
    const before = segments[depth - 1];
    if (typeof segment === 'number' && before !== undefined) {
      const isListNamed = names.at(-1) === `"${before}"`;
      if (!OF_A_NAMED_LIST.has(SINGULAR.get(String(before))) && isListNamed) names.pop();
      names.push(entryName(before, segment, value));
    } else if (segment !== 'equipment' || segments.length === 1) {
      names.push(shown(String(segment)));
    }
  });
  return names.length === 0 ? 'the file' : names.reverse().join(' of ');
}
