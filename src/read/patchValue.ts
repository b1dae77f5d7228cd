// A JSON Patch (RFC 6902) on a JSON value, as a new value; or the operation that cannot be done and why. Used by patchScenario.
// The places are looked at first, strictly: own keys only, indexes as RFC 6901 writes them. rfc6902 does the rest.
import { applyPatch, type Operation } from 'rfc6902';
import type { PatchOperation } from '../model/changes.ts';
import type { ChangeCode } from './changeCodes.ts';
import { type Found, findPlace } from './findPlace.ts';

/** Why a patch cannot be done: which operation, counted from 0, and which of its members is to blame. */
export type PatchFault = {
  readonly operation: number;
  readonly member: 'path' | 'from' | 'value' | 'op';
  readonly code: ChangeCode | 'FORBIDDEN_KEY';
  readonly says: string;
  readonly doThis: string;
};

export type Patched = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly fault: PatchFault };

type Fault = Omit<PatchFault, 'operation'>;
type Step = Fault | readonly Operation[];

/** The value stands in an object of its own while it is worked on, so that it can be replaced as a whole. */
type Holder = { it: unknown };
const HOLDER = '/it';

function isFault(step: Step): step is Fault {
  return 'code' in step;
}

function faultOf(member: 'path' | 'from', found: Exclude<Found, { readonly ok: true }>): Fault {
  const { code, says, doThis } = found;
  return { member, code, says, doThis };
}

function needsValue(operation: PatchOperation): Fault | undefined {
  if ('value' in operation) return undefined;
  const says = `The operation "${operation.op}" does not say with what value.`;
  return { member: 'op', code: 'VALUE_MISSING', says, doThis: 'Write it after the key "value".' };
}

function added(holder: Holder, path: string, value: unknown): Step {
  const found = findPlace(holder.it, path, 'to put something');
  return found.ok ? [{ op: 'add', path: HOLDER + path, value }] : faultOf('path', found);
}

function existing(holder: Holder, path: string, operation: Operation): Step {
  const found = findPlace(holder.it, path, 'that is there');
  return found.ok ? [operation] : faultOf('path', found);
}

/** A move is the removal and the addition RFC 6902 says it is the same as; a copy the addition alone. */
function fromElsewhere(holder: Holder, { op, path, from }: PatchOperation): Step {
  if (from === undefined) {
    const says = `The operation "${op}" does not say from where.`;
    return { member: 'op', code: 'FROM_MISSING', says, doThis: 'Write the place after the key "from".' };
  }
  const source = findPlace(holder.it, from, 'that is there');
  if (!source.ok) return faultOf('from', source);
  if (op === 'copy') return added(holder, path, structuredClone(source.value));
  if (path.startsWith(`${from}/`)) {
    const says = `"${path}" lies inside "${from}", which is to be moved.`;
    return { member: 'path', code: 'MOVE_INTO_ITSELF', says, doThis: 'Name a place outside of it.' };
  }
  const without: Holder = structuredClone(holder);
  const removal: Operation = { op: 'remove', path: HOLDER + from };
  applyPatch(without, [removal]);
  const addition = added(without, path, source.value);
  return isFault(addition) ? addition : [removal, ...addition];
}

function stepOf(holder: Holder, operation: PatchOperation): Step {
  const { op, path, value } = operation;
  if (op === 'remove') return existing(holder, path, { op, path: HOLDER + path });
  if (op === 'move' || op === 'copy') return fromElsewhere(holder, operation);
  const missing = needsValue(operation);
  if (missing !== undefined) return missing;
  return op === 'add' ? added(holder, path, value) : existing(holder, path, { op, path: HOLDER + path, value });
}

/** Why the library could not do what was looked at first: only a test is left to fail. */
function refused(operation: PatchOperation, error: Error): Fault {
  if (operation.op !== 'test') throw error;
  const says = `Something else stands at "${operation.path}" than the change expects.`;
  return { member: 'value', code: 'TEST_FAILED', says, doThis: 'Write what stands there, or take the test out.' };
}

/** Does the operations one after another on a copy; stops at the first that cannot be done, and nothing is changed then. */
export function patchValue(value: unknown, patch: readonly PatchOperation[]): Patched {
  const holder: Holder = { it: structuredClone(value) };
  for (const [index, operation] of patch.entries()) {
    const step = stepOf(holder, operation);
    if (isFault(step)) return { ok: false, fault: { operation: index, ...step } };
    const error = applyPatch(holder, [...step]).find((result) => result !== null);
    if (error !== undefined) return { ok: false, fault: { operation: index, ...refused(operation, error) } };
  }
  return { ok: true, value: holder.it };
}
