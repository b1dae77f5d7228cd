// A key written twice is seen wherever it stands, and what only looks like one is not.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { repeatsKeys } from '../../src/read/repeatsKeys.ts';

test.each([
  ['{"a":1,"a":2}', true],
  ['{"a":1,"b":{"c":[{"d":1, "d" :2}]}}', true],
  ['{"a":1,"\\u0061":2}', true],
  ['{"a":"\\"a\\":","b":":"}', false],
  ['[{"a":1},{"a":2}]', false],
  ['"a"', false],
  ['{}', false],
])('%s', (text, isRepeating) => {
  expect(repeatsKeys(text, JSON.parse(text))).toBe(isRepeating);
});

test('never in what JSON.stringify writes', () => {
  fc.assert(fc.property(fc.json(), (text) => !repeatsKeys(text, JSON.parse(text))));
});
