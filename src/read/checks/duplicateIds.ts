// DUPLICATE_ID: within one kind of things, and within the decks of one oven, every id stands once.
import { type CodedError, inputErrorAt } from '../inputErrorAt.ts';
import type { Parts } from '../parts.ts';
import { childOf, placeName } from '../placeName.ts';
import type { Segment } from '../pointer.ts';
import { pointerOf } from '../pointer.ts';
import { shown } from '../shown.ts';

const LISTS: readonly (readonly Segment[])[] = [
  ['equipment', 'ovens'],
  ['equipment', 'proofers'],
  ['equipment', 'retarders'],
  ['equipment', 'mixers'],
  ['people'],
  ['doughs'],
  ['products'],
  ['underway', 'batches'],
  ['underway', 'decks'],
];

function entriesAt(root: unknown, path: readonly Segment[]): readonly unknown[] {
  const list = path.reduce(childOf, root);
  return Array.isArray(list) ? list : [];
}

function duplicatesIn(root: unknown, path: readonly Segment[]): readonly CodedError[] {
  const firstOf = new Map<string, number>();
  const errors: CodedError[] = [];
  for (const [index, entry] of entriesAt(root, path).entries()) {
    const id = childOf(entry, 'id');
    if (typeof id !== 'string') continue;
    const first = firstOf.get(id);
    if (first === undefined) firstOf.set(id, index);
    else {
      const says = `${placeName(root, path)} has the id ${shown(id)} twice: entries ${first + 1} and ${index + 1}.`;
      errors.push(inputErrorAt('DUPLICATE_ID', pointerOf([...path, index, 'id']), says, 'Give one of them another id.'));
    }
  }
  return errors;
}

export function duplicateIds({ root }: Parts): readonly CodedError[] {
  const ovens = entriesAt(root, ['equipment', 'ovens']);
  const decks = ovens.map((_, index): readonly Segment[] => ['equipment', 'ovens', index, 'decks']);
  return [...LISTS, ...decks].flatMap((path) => duplicatesIn(root, path));
}
