// Tests of tests/draw/chromium.ts: where a browser is looked for, and what is said when there is none.
import { describe, expect, test } from 'vitest';
import { chromiumPath } from './chromium.ts';

describe('chromiumPath', () => {
  test('takes the one that is named', () => {
    expect(chromiumPath({ CHROMIUM: process.execPath })).toBe(process.execPath);
  });

  test('says so when the named one is no program', () => {
    expect(() => chromiumPath({ CHROMIUM: '/nowhere/chromium' })).toThrow('CHROMIUM is set to /nowhere/chromium');
  });
});
