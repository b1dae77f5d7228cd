// Every error code has an example that gives it, and a heading in docs/errors.md; and nothing else has.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ERROR_EXAMPLES } from '../../scripts/errorExamples.ts';
import { ERROR_CODES } from '../../src/read/errorCodes.ts';
import { readScenario, readScenarioValue } from '../../src/read/readScenario.ts';
import { errorsOf, expectCoded, GOOD } from './wholeScenario.ts';

const CODES = Object.keys(ERROR_CODES);

describe('error codes', () => {
  it('the scenario the examples spoil is good', () => {
    expect(errorsOf(readScenario(GOOD))).toEqual([]);
  });

  it('each has one example', () => {
    expect(ERROR_EXAMPLES.map(({ code }) => code).sort()).toEqual([...CODES].sort());
  });

  it.each(ERROR_EXAMPLES)('$code', (example) => {
    const isText = 'spoil' in example;
    const reading = isText ? readScenario(example.spoil(GOOD)) : readScenarioValue(example.value());
    expect(errorsOf(reading).map(({ code }) => code)).toContain(example.code);
    expectCoded(reading, isText);
  });

  it('each has a heading in docs/errors.md, in the same order', () => {
    const page = readFileSync(new URL('../../docs/errors.md', import.meta.url), 'utf8');
    expect([...page.matchAll(/^## (\S+)$/gm)].map((match) => match[1])).toEqual(CODES);
  });
});
