// SHA-256 as the standard's own examples have it (FIPS 180-2, appendix B.1 and B.2).
import { expect, test } from 'vitest';
import { fingerprintOf } from '../../src/store/fingerprintOf.ts';

test.each([
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
])('%s', (text, digits) => {
  expect(fingerprintOf(text)).toBe(digits);
});
