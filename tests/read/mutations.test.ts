// Whatever happens to a scenario or a plan, reading it ends in a value or in coded errors: it never throws and never hangs.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { Reading } from '../../src/model/inputError.ts';
import { ERROR_CODES } from '../../src/read/errorCodes.ts';
import { readPlan, readWrittenPlan } from '../../src/read/readPlan.ts';
import { readScenario, readScenarioValue } from '../../src/read/readScenario.ts';
import { PLAN, WRITTEN } from './plans.ts';
import { spoiledText, spoiledValue } from './spoiling.ts';
import { GOOD, readValue } from './wholeScenario.ts';

const SCENARIO = readValue(readScenario(GOOD));

/** A value, or errors that are all ours. */
function isOurs<T>(reading: Reading<T>): boolean {
  if (reading.ok) return reading.value !== undefined;
  const isCoded = reading.errors.every(
    ({ code, says, doThis, path }) => code in ERROR_CODES && says.length > 5 && doThis.length > 3 && typeof path === 'string',
  );
  return reading.errors.length > 0 && isCoded;
}

/** How many of the outcomes were values; some must be, and some not, or the spoiling does not reach far. */
function counted(runs: number, property: (count: (isValue: boolean) => void) => fc.IRawProperty<unknown>): number {
  let values = 0;
  fc.assert(
    property((isValue) => {
      values += isValue ? 1 : 0;
    }),
    { numRuns: runs },
  );
  return values;
}

describe('spoiled scenarios', () => {
  it('as text: 400 of them', () => {
    const values = counted(400, (count) =>
      fc.property(spoiledText(GOOD), (text) => {
        const reading = readScenario(text);
        count(reading.ok);
        return (
          isOurs(reading) &&
          (reading.ok || reading.errors.every(({ code, line }) => code === 'TOO_MANY_ERRORS' || (line ?? 0) > 0))
        );
      }),
    );
    expect(values).toBeGreaterThan(0);
    expect(values).toBeLessThan(400);
  });

  it('as values: 700 of them', () => {
    const good: unknown = parse(GOOD);
    const values = counted(700, (count) =>
      fc.property(spoiledValue(good), (value) => {
        const reading = readScenarioValue(value);
        count(reading.ok);
        return isOurs(reading);
      }),
    );
    expect(values).toBeGreaterThan(0);
    expect(values).toBeLessThan(700);
  });

  it('a value and its JSON text are judged alike: 150 of them', () => {
    fc.assert(
      fc.property(spoiledValue(parse(GOOD)), (value) => {
        const text = JSON.stringify(value, null, 1) ?? 'null';
        const again: unknown = JSON.parse(text);
        const [fromText, fromValue] = [readScenario(text), readScenarioValue(again)];
        if (fromText.ok || fromValue.ok) expect(fromText).toEqual(fromValue);
        else if (again !== null) {
          const codes = (errors: typeof fromText.errors): readonly string[] =>
            errors.map(({ code, path }) => `${code} ${path}`).sort();
          expect(codes(fromText.errors)).toEqual(codes(fromValue.errors));
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe('spoiled plans', () => {
  it('ours: 300 of them', () => {
    const values = counted(300, (count) =>
      fc.property(spoiledValue(PLAN), (value) => {
        const reading = readPlan(JSON.stringify(value) ?? '');
        count(reading.ok);
        return isOurs(reading);
      }),
    );
    expect(values).toBeGreaterThan(0);
    expect(values).toBeLessThan(300);
  });

  it('of anybody, as text: 300 of them', () => {
    const values = counted(300, (count) =>
      fc.property(spoiledText(WRITTEN), (text) => {
        const reading = readWrittenPlan(text, SCENARIO);
        count(reading.ok);
        return isOurs(reading);
      }),
    );
    expect(values).toBeGreaterThan(0);
    expect(values).toBeLessThan(300);
  });
});
