// Ways to spoil a scenario at random: its text by letters and lines, its value by keys and entries. Used by the property tests.
import fc from 'fast-check';

const PIECES = [
  '',
  ' ',
  '\t',
  '"',
  "'",
  '[',
  ']',
  '{',
  '}',
  ':',
  ': ',
  ',',
  '- ',
  '? ',
  '#',
  '&a ',
  '*a',
  '!!js ',
  '!',
  '|',
  '>',
  '%',
  '@',
  '\\',
  '\n',
  '\n\n---\n',
  '...\n',
  '\u0000',
  '\u2028',
  '\ud800',
  '\ufeff',
  '__proto__: 1\n',
  '<<: *a\n',
  '.nan',
  '-.inf',
  '1e400',
  '-1',
  '0',
  '99999999999999999999',
  '0x7fffffff',
  'null',
  'true',
  '~',
  '"24:00"',
  '"-9d 99:99"',
  'flour',
];

const VALUES: readonly unknown[] = [
  null,
  true,
  false,
  0,
  -1,
  0.5,
  1e9,
  1e308,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  -0,
  '',
  '05:30',
  '-7d 00:00',
  '+7d 23:59',
  '24:00',
  '2026-02-30',
  '9999-12-31',
  '0000-01-01',
  'Antarctica/Troll',
  'UTC',
  '+25:00',
  'constructor',
  'x'.repeat(5000),
  [],
  [[]],
  [1, 2],
  [2, 1],
  [1, 2, 3],
  {},
  { __proto__: null },
  { do: 'bake' },
  { do: 'mix', minutes: [1, 2] },
  { id: 'a', steps: [] },
];

type Cut = { readonly how: number; readonly at: number; readonly length: number; readonly piece: string };

const cut = fc.record({
  how: fc.nat({ max: 6 }),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.nat({ max: 40 }),
  piece: fc.constantFrom(...PIECES),
});

function cutLines(text: string, { how, at, length }: Cut): string {
  const lines = text.split('\n');
  const line = Math.floor(at * lines.length);
  if (how === 3) lines.splice(line, 1 + (length % 3));
  else if (how === 4) lines.splice(line, 0, ...lines.slice(line, line + 1 + (length % 3)));
  else lines.splice(line, 1, `${' '.repeat(length % 9)}${(lines[line] ?? '').trimStart()}`);
  return lines.join('\n');
}

function applyCut(text: string, way: Cut): string {
  const { how, at, length, piece } = way;
  const from = Math.floor(at * text.length);
  switch (how) {
    case 0:
      return text.slice(0, from) + text.slice(from + length);
    case 1:
      return text.slice(0, from) + piece + text.slice(from);
    case 2:
      return text.slice(0, from) + piece + text.slice(from + length);
    case 6:
      return text.slice(0, from) + text.slice(from, from + length) + text.slice(from);
    default:
      return cutLines(text, way);
  }
}

/** The text after one to four random cuts. */
export function spoiledText(good: string): fc.Arbitrary<string> {
  return fc.array(cut, { minLength: 1, maxLength: 4 }).map((cuts) => cuts.reduce(applyCut, good));
}

type Swap = { readonly how: number; readonly path: readonly number[]; readonly value: unknown };

const swap = fc.record({
  how: fc.nat({ max: 3 }),
  path: fc.array(fc.nat({ max: 20 }), { minLength: 1, maxLength: 7 }),
  value: fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...VALUES) }, { weight: 1, arbitrary: fc.jsonValue() }),
});

function changedList(list: readonly unknown[], step: number, rest: Swap): readonly unknown[] {
  const index = list.length === 0 ? 0 : step % list.length;
  if (rest.path.length > 0) return list.map((item, each) => (each === index ? applySwap(item, rest) : item));
  if (rest.how === 0) return list.filter((_, each) => each !== index);
  if (rest.how === 1) return [...list, ...list.slice(index)];
  return list.map((item, each) => (each === index ? rest.value : item));
}

/** The value with one thing in it deleted, doubled, renamed or replaced; the path walks as deep as the value goes. */
function applySwap(value: unknown, { how, path, value: other }: Swap): unknown {
  const [step = 0, ...deeper] = path;
  const rest = { how, path: deeper, value: other };
  if (Array.isArray(value)) return changedList(value, step, rest);
  if (typeof value !== 'object' || value === null) return other;
  const entries: (readonly [string, unknown])[] = Object.entries(value);
  const index = entries.length === 0 ? 0 : step % entries.length;
  const changed = entries.flatMap(([key, inner], each): (readonly [string, unknown])[] => {
    if (each !== index) return [[key, inner]];
    if (deeper.length > 0) return [[key, applySwap(inner, rest)]];
    if (how === 0) return [];
    return how === 1 ? [[`${key}s`, inner]] : [[key, other]];
  });
  return Object.fromEntries(changed);
}

/** The value after one to four random swaps. */
export function spoiledValue(good: unknown): fc.Arbitrary<unknown> {
  return fc.array(swap, { minLength: 1, maxLength: 4 }).map((swaps) => swaps.reduce<unknown>(applySwap, good));
}
