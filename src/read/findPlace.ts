// The place a JSON Pointer (RFC 6901) names in a JSON value, or in words why there is none. Used by changes and sweeps.
import type { ChangeCode } from './changeCodes.ts';
import { didYouMean } from './didYouMean.ts';
import { FORBIDDEN_KEYS } from './forbiddenKeys.ts';
import { childOf, placeName } from './placeName.ts';
import { type Segment, segmentsOf } from './pointer.ts';
import { shown } from './shown.ts';

export type Found =
  | { readonly ok: true; readonly value: unknown; readonly segments: readonly Segment[] }
  | { readonly ok: false; readonly code: ChangeCode | 'FORBIDDEN_KEY'; readonly says: string; readonly doThis: string };

/** Whether something must stand at the place already, or only where it would be put. */
export type Wanted = 'that is there' | 'to put something';

const POINTER = /^(?:\/(?:[^~/]|~[01])*)*$/;
const INDEX = /^(?:0|[1-9]\d*)$/;

function badPointer(pointer: string): Found {
  const says = `${shown(pointer)} is no JSON Pointer.`;
  const doThis =
    'Begin each key or number with "/", lists counted from 0: /equipment/proofers/0/shelves. Write ~0 for ~ and ~1 for /.';
  return { ok: false, code: 'BAD_POINTER', says, doThis };
}

function missing(says: string, doThis: string): Found {
  return { ok: false, code: 'NO_SUCH_PLACE', says, doThis };
}

function inList(list: readonly unknown[], segment: string, name: string, isNew: boolean): Segment | Found {
  if (isNew && segment === '-') return list.length;
  const most = isNew ? list.length : list.length - 1;
  if (INDEX.test(segment) && Number(segment) <= most) return Number(segment);
  const behind = isNew ? ' "-" puts it behind the last.' : '';
  const doThis = list.length === 0 ? `The list is empty.${behind}` : `Write a number from 0 to ${list.length - 1}.${behind}`;
  return missing(`There is no entry ${shown(segment)} in ${name}; entries are counted from 0.`, doThis);
}

function inObject(object: object, segment: string, name: string, isNew: boolean): Segment | Found {
  if (FORBIDDEN_KEYS.has(segment))
    return { ok: false, code: 'FORBIDDEN_KEY', says: `The key ${shown(segment)} may not be used.`, doThis: 'Take it out.' };
  if (isNew || Object.hasOwn(object, segment)) return segment;
  const keys = Object.keys(object);
  const close = didYouMean(segment, keys);
  const choice = keys.length === 0 ? 'Nothing stands there.' : `There are: ${keys.join(', ')}.`;
  return missing(
    `There is no ${shown(segment)} in ${name}.`,
    close === undefined ? choice : `Did you mean "${close}"? ${choice}`,
  );
}

function innerSegment(value: unknown, segment: string, name: string, isNew: boolean): Segment | Found {
  if (Array.isArray(value)) return inList(value, segment, name, isNew);
  if (typeof value === 'object' && value !== null) return inObject(value, segment, name, isNew);
  return missing(`${shown(segment)} cannot be in ${name}, which is ${shown(value)}.`, 'Name a list or something with keys.');
}

/** Finds the place. Where something is to be put, its last part may be new. */
export function findPlace(root: unknown, pointer: string, wanted: Wanted): Found {
  if (!POINTER.test(pointer)) return badPointer(pointer);
  const names = segmentsOf(pointer);
  const segments: Segment[] = [];
  let value = root;
  for (const [depth, name] of names.entries()) {
    const isNew = wanted === 'to put something' && depth === names.length - 1;
    const where = segments.length === 0 ? 'the scenario' : placeName(root, segments);
    const segment = innerSegment(value, name, where, isNew);
    if (typeof segment === 'object') return segment;
    segments.push(segment);
    value = childOf(value, segment);
  }
  return { ok: true, value, segments };
}
