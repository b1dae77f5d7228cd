// JSON Patch as RFC 6902 shows it: the examples of its appendix A (P. Bryan, M. Nottingham, "JavaScript Object Notation (JSON)
// Patch", RFC 6902, April 2013), and the strictness of JSON Pointer (RFC 6901) about indexes and keys.
import { describe, expect, it } from 'vitest';
import type { PatchOperation } from '../../src/model/changes.ts';
import { changesSchema } from '../../src/model/changes.ts';
import { patchValue } from '../../src/read/patchValue.ts';
import { readChanges } from '../../src/read/readChanges.ts';
import { readScenario } from '../../src/read/readScenario.ts';
import { GOOD } from './wholeScenario.ts';

type Example = { name: string; before: unknown; patch: readonly PatchOperation[]; after: unknown };

const EXAMPLES: readonly Example[] = [
  {
    name: 'A.1 adding an object member',
    before: { foo: 'bar' },
    patch: [{ op: 'add', path: '/baz', value: 'qux' }],
    after: { baz: 'qux', foo: 'bar' },
  },
  {
    name: 'A.2 adding an array element',
    before: { foo: ['bar', 'baz'] },
    patch: [{ op: 'add', path: '/foo/1', value: 'qux' }],
    after: { foo: ['bar', 'qux', 'baz'] },
  },
  {
    name: 'A.3 removing an object member',
    before: { baz: 'qux', foo: 'bar' },
    patch: [{ op: 'remove', path: '/baz' }],
    after: { foo: 'bar' },
  },
  {
    name: 'A.4 removing an array element',
    before: { foo: ['bar', 'qux', 'baz'] },
    patch: [{ op: 'remove', path: '/foo/1' }],
    after: { foo: ['bar', 'baz'] },
  },
  {
    name: 'A.5 replacing a value',
    before: { baz: 'qux', foo: 'bar' },
    patch: [{ op: 'replace', path: '/baz', value: 'boo' }],
    after: { baz: 'boo', foo: 'bar' },
  },
  {
    name: 'A.6 moving a value',
    before: { foo: { bar: 'baz', waldo: 'fred' }, qux: { corge: 'grault' } },
    patch: [{ op: 'move', from: '/foo/waldo', path: '/qux/thud' }],
    after: { foo: { bar: 'baz' }, qux: { corge: 'grault', thud: 'fred' } },
  },
  {
    name: 'A.7 moving an array element',
    before: { foo: ['all', 'grass', 'cows', 'eat'] },
    patch: [{ op: 'move', from: '/foo/1', path: '/foo/3' }],
    after: { foo: ['all', 'cows', 'eat', 'grass'] },
  },
  {
    name: 'A.8 testing a value: success',
    before: { baz: 'qux', foo: ['a', 2, 'c'] },
    patch: [
      { op: 'test', path: '/baz', value: 'qux' },
      { op: 'test', path: '/foo/1', value: 2 },
    ],
    after: { baz: 'qux', foo: ['a', 2, 'c'] },
  },
  {
    name: 'A.10 adding a nested member object',
    before: { foo: 'bar' },
    patch: [{ op: 'add', path: '/child', value: { grandchild: {} } }],
    after: { foo: 'bar', child: { grandchild: {} } },
  },
  {
    name: 'A.14 ~ escape ordering',
    before: { '/': 9, '~1': 10 },
    patch: [{ op: 'test', path: '/~01', value: 10 }],
    after: { '/': 9, '~1': 10 },
  },
  {
    name: 'A.16 adding an array value',
    before: { foo: ['bar'] },
    patch: [{ op: 'add', path: '/foo/-', value: ['abc', 'def'] }],
    after: { foo: ['bar', ['abc', 'def']] },
  },
];

function codeOf(before: unknown, ...patch: readonly PatchOperation[]): string {
  const patched = patchValue(before, patch);
  return patched.ok ? `it works: ${JSON.stringify(patched.value)}` : patched.fault.code;
}

describe('RFC 6902, appendix A', () => {
  it.each(EXAMPLES)('$name', ({ before, patch, after }) => {
    const untouched = structuredClone(before);
    expect(patchValue(before, patch)).toEqual({ ok: true, value: after });
    expect(before).toEqual(untouched);
  });

  it('A.9 testing a value: error', () => {
    expect(codeOf({ baz: 'qux' }, { op: 'test', path: '/baz', value: 'bar' })).toBe('TEST_FAILED');
  });

  it('A.11 ignoring unrecognized elements', () => {
    const read = changesSchema.parse({
      changes: [{ title: 'A.11', patch: [{ op: 'add', path: '/baz', value: 'qux', xyz: 123 }] }],
    });
    const patched = patchValue({ foo: 'bar' }, read.changes[0]?.patch ?? []);
    expect(patched).toEqual({ ok: true, value: { foo: 'bar', baz: 'qux' } });
  });

  it('A.12 adding to a nonexistent target', () => {
    expect(codeOf({ foo: 'bar' }, { op: 'add', path: '/baz/bat', value: 'qux' })).toBe('NO_SUCH_PLACE');
  });

  it('A.13 invalid JSON Patch document', () => {
    const scenario = readScenario(GOOD);
    if (!scenario.ok) throw new Error('the scenario is good');
    const text = '{"changes":[{"title":"A.13","patch":[{"op":"add","path":"/baz","value":"qux","op":"remove"}]}]}';
    const reading = readChanges(text, scenario.value);
    expect(reading.ok ? [] : reading.errors.map(({ code }) => code)).toEqual(['DUPLICATE_KEY']);
  });

  it('A.15 comparing strings and numbers', () => {
    expect(codeOf({ '/': 9, '~1': 10 }, { op: 'test', path: '/~01', value: '10' })).toBe('TEST_FAILED');
  });
});

describe('places, strictly', () => {
  const before = { list: [1, 2], text: 'bread', inner: { a: 1 } };

  it.each<[string, PatchOperation, string]>([
    ['an index with a nought before it', { op: 'remove', path: '/list/01' }, 'NO_SUCH_PLACE'],
    ['an index behind the last', { op: 'remove', path: '/list/2' }, 'NO_SUCH_PLACE'],
    ['an index two behind the last', { op: 'add', path: '/list/3', value: 3 }, 'NO_SUCH_PLACE'],
    ['the place behind the last holds nothing', { op: 'replace', path: '/list/-', value: 3 }, 'NO_SUCH_PLACE'],
    ['a word in a list', { op: 'add', path: '/list/first', value: 3 }, 'NO_SUCH_PLACE'],
    ['a key in a text', { op: 'add', path: '/text/length', value: 3 }, 'NO_SUCH_PLACE'],
    ['a key every object inherits', { op: 'test', path: '/toString', value: 3 }, 'NO_SUCH_PLACE'],
    ['a key that may not be used', { op: 'add', path: '/__proto__', value: 3 }, 'FORBIDDEN_KEY'],
    ['no slash at the beginning', { op: 'remove', path: 'list' }, 'BAD_POINTER'],
    ['a lonely ~', { op: 'remove', path: '/li~st' }, 'BAD_POINTER'],
    ['no value', { op: 'add', path: '/list/-' }, 'VALUE_MISSING'],
    ['no from', { op: 'move', path: '/list/-' }, 'FROM_MISSING'],
    ['a move into itself', { op: 'move', from: '/inner', path: '/inner/b' }, 'MOVE_INTO_ITSELF'],
    ['a move behind the list it shortens', { op: 'move', from: '/list/0', path: '/list/2' }, 'NO_SUCH_PLACE'],
  ])('%s', (_, operation, code) => {
    expect(codeOf(before, operation)).toBe(code);
  });

  it('the target of a move is that of the value after the removal', () => {
    const nested = { list: [{ n: 0 }, { n: 1 }, { n: 2 }] };
    const patched = patchValue(nested, [{ op: 'move', from: '/list/0', path: '/list/1/first' }]);
    expect(patched).toEqual({ ok: true, value: { list: [{ n: 1 }, { n: 2, first: { n: 0 } }] } });
  });

  it('the whole can be replaced, and a copy is a thing of its own', () => {
    expect(patchValue(before, [{ op: 'replace', path: '', value: 7 }])).toEqual({ ok: true, value: 7 });
    const copied = patchValue(before, [
      { op: 'copy', from: '/inner', path: '/twin' },
      { op: 'replace', path: '/twin/a', value: 2 },
    ]);
    expect(copied).toEqual({ ok: true, value: { ...before, twin: { a: 2 } } });
  });
});
