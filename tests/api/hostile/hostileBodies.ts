// Bodies to do harm with: broken, of wrong types, huge, deep, in odd encodings, with keys and numbers that break programs.
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { parse } from 'yaml';
import { spoiledText, spoiledValue } from '../../read/spoiling.ts';
import { GOOD } from '../../read/wholeScenario.ts';

export type HostileBody = { readonly what: string; readonly type: string; readonly body: string | Uint8Array };

const JSON_TYPE = 'application/json';
const YAML_TYPE = 'application/yaml';
const good: unknown = parse(GOOD);

/** What the addresses that take JSON take, with the scenario where they want it. */
const WRAPPERS: readonly ((scenario: unknown) => unknown)[] = [
  (scenario) => scenario,
  (scenario) => ({ scenario, plan: { tasks: [], decks: [] } }),
  (scenario) => ({ scenario, add: [{ product: 'bun', pieces: 1, readyBy: '07:00' }] }),
  (scenario) => ({ scenario, changes: [{ title: 'x', patch: [{ op: 'add', path: '/__proto__/x', value: 1 }] }] }),
  (scenario) => ({ scenario, sweep: { pointer: '/equipment/proofers/0/shelves', from: 1, to: 2 } }),
  (scenario) => ({ scenario, plan: {}, now: '05:00', happened: [] }),
  () => ({ plan: '../../etc/passwd' }),
  () => ({ happened: [{ what: '__proto__' }] }),
];

const deep = (open: string, close: string, depth: number): string => open.repeat(depth) + close.repeat(depth);

/** The old trick with names that stand for lists of names, each ten times as long as the one before. */
const BOMB = `a0: &a0 [x]\n${[1, 2, 3, 4, 5, 6, 7, 8, 9].map((n) => `a${n}: &a${n} [${`*a${n - 1},`.repeat(10)}]`).join('\n')}\n`;

const utf16 = (text: string): Uint8Array => Buffer.from(`\ufeff${text}`, 'utf16le');

const FIXED: readonly HostileBody[] = [
  { what: 'nothing', type: JSON_TYPE, body: '' },
  { what: 'a number alone', type: JSON_TYPE, body: '1e999' },
  { what: 'deep lists', type: JSON_TYPE, body: deep('[', ']', 100_000) },
  { what: 'deep objects', type: JSON_TYPE, body: `${'{"scenario":'.repeat(40_000)}1${'}'.repeat(40_000)}` },
  { what: 'deep YAML', type: YAML_TYPE, body: deep('[', ']', 20_000) },
  { what: 'deep YAML by indents', type: YAML_TYPE, body: Array.from({ length: 400 }, (_, n) => `${' '.repeat(n)}a:`).join('\n') },
  { what: 'a bomb of names', type: YAML_TYPE, body: BOMB },
  { what: 'more than 1 MB', type: JSON_TYPE, body: `"${'x'.repeat(1_200_000)}"` },
  { what: 'a million commas', type: JSON_TYPE, body: `[${'0,'.repeat(400_000)}0]` },
  { what: 'many keys', type: JSON_TYPE, body: `{${Array.from({ length: 20_000 }, (_, n) => `"k${n}":1`).join(',')}}` },
  { what: 'prototype keys', type: JSON_TYPE, body: '{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}}}' },
  { what: 'prototype keys in YAML', type: YAML_TYPE, body: '__proto__: { polluted: 1 }\nconstructor: { prototype: { x: 1 } }\n' },
  { what: 'YAML tags', type: YAML_TYPE, body: 'a: !!js/function "function(){}"\nb: !!python/object/apply:os.system ["id"]\n' },
  { what: 'bytes of no UTF-8', type: JSON_TYPE, body: Uint8Array.of(0x7b, 0x22, 0xc3, 0x28, 0x22, 0x7d) },
  { what: 'UTF-16', type: JSON_TYPE, body: utf16(JSON.stringify(good)) },
  { what: 'UTF-16, said so', type: `${JSON_TYPE}; charset=utf-16`, body: utf16('{}') },
  { what: 'lone surrogates', type: JSON_TYPE, body: '{"name":"\\ud800\\udfff\\ud800"}' },
  { what: 'packed', type: JSON_TYPE, body: gzipSync('x'.repeat(500_000)) },
  { what: 'zeros', type: YAML_TYPE, body: new Uint8Array(1000) },
  { what: 'a form', type: 'application/x-www-form-urlencoded', body: 'scenario=1&__proto__[x]=1' },
  {
    what: 'several parts',
    type: 'multipart/form-data; boundary=x',
    body: '--x\r\nContent-Disposition: form-data; name="../../x"\r\n\r\n',
  },
];

const ABSURD = fc.constantFrom(0, -1, 1e308, 2 ** 53, 1e9, -0.5, 2 ** 31, 99_999_999);

/** A good scenario with one number in it made absurd. */
const absurdNumbers = fc.tuple(ABSURD, fc.nat(60)).map(([number, at]) => {
  let seen = 0;
  const text = JSON.stringify(good, (_, value) => (typeof value === 'number' && seen++ === at ? number : value));
  return { what: 'an absurd number', type: JSON_TYPE, body: text };
});

const wrapped = fc.tuple(fc.constantFrom(...WRAPPERS), spoiledValue(good)).map(([wrap, value]) => ({
  what: 'a spoiled value',
  type: JSON_TYPE,
  body: JSON.stringify(wrap(value)),
}));

export const hostileBody: fc.Arbitrary<HostileBody> = fc.oneof(
  { weight: 3, arbitrary: spoiledText(GOOD).map((body) => ({ what: 'a spoiled text', type: YAML_TYPE, body })) },
  { weight: 4, arbitrary: wrapped },
  { weight: 2, arbitrary: absurdNumbers },
  { weight: 3, arbitrary: fc.constantFrom(...FIXED) },
  { weight: 1, arbitrary: fc.json({ maxDepth: 6 }).map((body) => ({ what: 'any JSON', type: JSON_TYPE, body })) },
  { weight: 1, arbitrary: fc.uint8Array({ maxLength: 300 }).map((body) => ({ what: 'any bytes', type: YAML_TYPE, body })) },
);
