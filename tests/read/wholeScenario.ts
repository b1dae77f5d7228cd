// The whole scenario of docs/scenario.md, which the tests of reading start from, and ways to see what reading it gives.
import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { wholeScenario } from '../../scripts/readDocs.ts';
import type { InputError, Reading } from '../../src/model/inputError.ts';
import { ERROR_CODES } from '../../src/read/errorCodes.ts';
import { readScenario } from '../../src/read/readScenario.ts';

export const SCENARIO_PAGE = readFileSync(new URL('../../docs/scenario.md', import.meta.url), 'utf8');
export const GOOD = wholeScenario(SCENARIO_PAGE);

/** The good text with one piece replaced; fails when the piece is not there. */
export function goodWith(from: string, to: string): string {
  expect(GOOD).toContain(from);
  return GOOD.replace(from, to);
}

export function errorsOf<T>(reading: Reading<T>): readonly InputError[] {
  return reading.ok ? [] : reading.errors;
}

/** Codes and paths of what is wrong with a text. */
export function wrongIn(text: string): readonly string[] {
  return errorsOf(readScenario(text)).map(({ code, path }) => `${code} ${path}`);
}

export function readValue<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new Error(reading.errors.map(({ code, path, says }) => `${code} ${path} ${says}`).join('\n'));
  return reading.value;
}

/** What must hold of every outcome: a value, or coded errors in order that say something, placed when there is a text. */
export function expectCoded<T>(reading: Reading<T>, isPlaced: boolean): void {
  if (reading.ok) return;
  expect(reading.errors.length).toBeGreaterThan(0);
  for (const error of reading.errors) {
    expect(Object.keys(ERROR_CODES)).toContain(error.code);
    expect(error.says).toMatch(/\S.*[.!?]$/s);
    expect(error.doThis).toMatch(/\S.*[.?)]$/s);
    expect(error.path === '' || error.path.startsWith('/')).toBe(true);
    if (isPlaced && error.code !== 'TOO_MANY_ERRORS') {
      expect(error.line).toBeGreaterThan(0);
      expect(error.column).toBeGreaterThan(0);
    }
  }
}
