// Tests of tests/draw/goldenText.ts: a golden that does not match is reported, and the new text lies beside it.
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { compareGolden, normalised } from './goldenText.ts';

test('a difference is reported and written beside the golden', () => {
  const changed = fileURLToPath(new URL('goldens/no-such-golden-changed.txt', import.meta.url));
  const answer = compareGolden('no-such-golden.txt', 'x 1.25\n');
  expect(answer).toEqual({ same: false, says: expect.stringContaining(changed) });
  expect(readFileSync(changed, 'utf8')).toBe('x 1.3\n');
  rmSync(changed);
  expect(existsSync(changed)).toBe(false);
});

test('decimals are rounded to one place, whole numbers kept', () => {
  expect(normalised('M1.04 2 L-0.04 12.37 05:31')).toBe('M1 2 L0 12.4 05:31');
});
