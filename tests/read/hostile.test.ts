// Input made to harm: each is refused with a coded error, soon, without ending the process.
import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/read/readPlan.ts';
import { readScenario, readScenarioValue } from '../../src/read/readScenario.ts';
import { errorsOf, expectCoded, GOOD, goodWith, wrongIn } from './wholeScenario.ts';

const TEXTS: readonly (readonly [string, string, string])[] = [
  ['open lists without end', 'TOO_DEEP', '['.repeat(900_000)],
  ['open objects without end', 'TOO_DEEP', '{a: '.repeat(200_000)],
  ['JSON nested without end', 'TOO_DEEP', `${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}`],
  ['dashes without end', 'TOO_DEEP', '- '.repeat(400_000)],
  ['question marks without end', 'TOO_DEEP', '? '.repeat(400_000)],
  ['colons without end', 'TOO_DEEP', ': '.repeat(400_000)],
  ['steps of indentation', 'TOO_DEEP', Array.from({ length: 1000 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n')],
  ['closing brackets without end', 'TOO_MANY_VALUES', ']'.repeat(900_000)],
  ['documents without end', 'SEVERAL_DOCUMENTS', '---\n'.repeat(200_000)],
  ['a list without end', 'TOO_MANY_VALUES', `a: [${'1,'.repeat(450_000)}1]`],
  ['more than 1 MB', 'TOO_LARGE', ' '.repeat(1_000_001)],
  ['more than 1 MB in bytes, not letters', 'TOO_LARGE', `# ${'ä'.repeat(500_000)}`],
  ['a program file', 'BINARY_TEXT', '\u007fELF\u0002\u0001\u0001\u0000\u0000'],
  ['letters that are broken', 'BINARY_TEXT', 'name: caf\ufffd'],
  ['nothing', 'EMPTY', ''],
  ['blanks', 'EMPTY', ' \n\n  \n'],
  ['a null', 'EMPTY', 'null'],
  ['a word', 'NOT_AN_OBJECT', 'bread'],
  ['a number', 'NOT_AN_OBJECT', '42'],
  ['a list', 'NOT_AN_OBJECT', '[]'],
  ['a directive and nothing else', 'SYNTAX', '%YAML 1.1\n'],
];

describe('a whole text', () => {
  it.each(TEXTS)('%s', (_, code, text) => {
    const reading = readScenario(text);
    expect(errorsOf(reading).map((error) => error.code)).toContain(code);
    expectCoded(reading, true);
  });

  it('aliases that double at every level are refused before they are written out', () => {
    const levels = Array.from({ length: 30 }, (_, level) => `a${level + 1}: &a${level + 1} [*a${level}, *a${level}]`);
    expect(wrongIn(`a0: &a0 [x]\n${levels.join('\n')}`).some((line) => line.startsWith('TOO_MANY_VALUES'))).toBe(true);
    const wide = Array.from({ length: 8 }, (_, level) => `b${level + 1}: &b${level + 1} [${`*b${level},`.repeat(9)}*b${level}]`);
    expect(wrongIn(`b0: &b0 [x]\n${wide.join('\n')}`).some((line) => line.startsWith('TOO_MANY_VALUES'))).toBe(true);
  });

  it('a chain of aliases, each one level deeper, is refused at the same depth as plain lists', () => {
    const chain = Array.from({ length: 40 }, (_, level) => `a${level + 1}: &a${level + 1} [*a${level}]`);
    expect(wrongIn(`a0: &a0 [x]\n${chain.join('\n')}`).some((line) => line.startsWith('TOO_DEEP'))).toBe(true);
  });

  it('thousands of wrong orders are told as 200 errors and a count', () => {
    const orders = Array.from({ length: 9000 }, (_, index) => `  - { product: x${index}, pieces: 1, readyBy: "07:00" }`);
    const errors = errorsOf(readScenario(GOOD.replace(/orders:\n(?: {2}- .*\n)+/, `orders:\n${orders.join('\n')}\n`)));
    expect(errors).toHaveLength(201);
    expect(errors.at(-1)).toMatchObject({ code: 'TOO_MANY_ERRORS', says: 'There are 8800 more errors after these 200.' });
  });
});

describe('keys with a meaning of their own', () => {
  const forbidden = ['__proto__', 'constructor', 'prototype'];

  it.each(forbidden)('%s is refused everywhere, in text and in values', (key) => {
    for (const place of ['scenario: 1', 'id: stone', 'flour: 100', 'do: mix, minutes: 12', 'lateTrayMinute: 20']) {
      const inner = place.includes('stone')
        ? `\n      ${key}: { admin: true }`
        : `${place.includes(',') || place.includes('0') ? ',' : '\n'} ${key}: { admin: true }`;
      const text = goodWith(place, place === 'scenario: 1' ? `scenario: 1\n${key}: { admin: true }` : `${place}${inner}`);
      expect(errorsOf(readScenario(text)).map((error) => `${error.code} ${error.path.split('/').at(-1)}`)).toEqual([
        `FORBIDDEN_KEY ${key}`,
      ]);
    }
    const value: unknown = JSON.parse(`{"doughs":[{"formula":{"${key}":{"admin":true}}}]}`);
    expect(errorsOf(readScenarioValue(value)).map(({ code, path }) => `${code} ${path}`)).toContain(
      `FORBIDDEN_KEY /doughs/0/formula/${key}`,
    );
    expect('admin' in {}).toBe(false);
  });

  it.each(forbidden)('%s is no id', (key) => {
    expect(wrongIn(goodWith('id: spiral', `id: ${key}`))).toEqual(['BAD_ID /equipment/mixers/0/id']);
    expect(errorsOf(readScenario(goodWith('product: harbour-loaf', `product: ${key}`)))[0]?.code).toBe('BAD_ID');
  });

  it('keys that are lists, objects or aliases are refused', () => {
    expect(wrongIn(`${GOOD}\n? [a, b]\n: 1\n`)).toEqual(['FORBIDDEN_KEY ']);
    expect(wrongIn(`${GOOD}\n? { a: 1 }\n: 1\n`)).toEqual(['FORBIDDEN_KEY ']);
  });
});

describe('single values', () => {
  it.each([
    ['bowlKg: .nan', 'NOT_A_NUMBER'],
    ['bowlKg: -.inf', 'NOT_A_NUMBER'],
    ['bowlKg: 1e999', 'NOT_A_NUMBER'],
    ['bowlKg: 1e300', 'OUT_OF_BOUNDS'],
    ['bowlKg: !!js/regexp /x/', 'TAG_REFUSED'],
    ['bowlKg: !!binary aGk=', 'TAG_REFUSED'],
    ['bowlKg: !<tag:example.org,2026:x> 3', 'TAG_REFUSED'],
    ['bowlKg: *nobody', 'ALIAS_UNKNOWN'],
  ])('%s', (wrong, code) => {
    expect(errorsOf(readScenario(goodWith('bowlKg: 20', wrong))).map((error) => error.code)).toEqual([code]);
  });

  it('a billion trays', () => {
    expect(wrongIn(goodWith('pieces: 18', 'pieces: 1000000000'))).toEqual(['OUT_OF_BOUNDS /orders/0/pieces']);
    expect(wrongIn(goodWith('trays: 16', 'trays: 1000000000'))).toEqual(['OUT_OF_BOUNDS /equipment/coolingRack/trays']);
    const errors = errorsOf(
      readScenario(goodWith('pieces: 18', 'pieces: 1000000').replace('piecesPerTray: 5', 'piecesPerTray: 1')),
    );
    expect(errors.map(({ code, says }) => `${code} ${says}`)).toEqual([
      'TOO_MANY_TRAYS The orders make 1000003 trays; a day may hold 2000.',
    ]);
  });

  it('control characters and direction marks never reach a sentence', () => {
    const [error] = errorsOf(readScenario(goodWith('id: spiral', 'id: "\\u001b[31m\\u202espiral"')));
    expect(error?.code).toBe('BAD_ID');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: looking for them is the point.
    expect(`${error?.says} ${error?.doThis}`).not.toMatch(/[\u0000-\u001f\u202e]/);
  });

  it('long words are cut in sentences', () => {
    const [error] = errorsOf(readScenario(goodWith('dough: orange', `dough: ${'o'.repeat(60)}`)));
    expect(error?.says.length).toBeLessThan(200);
    expect(errorsOf(readScenario(`${GOOD}\n${'k'.repeat(100_000)}: 1\n`))[0]?.says.length).toBeLessThan(200);
  });
});

describe('values JSON cannot hold', () => {
  const loop: Record<string, unknown> = { scenario: 1 };
  loop.doughs = [loop, loop];
  const values: readonly (readonly [string, unknown, string])[] = [
    ['a function', { name: (): string => 'bread' }, 'NOT_PLAIN'],
    ['a symbol', { name: Symbol('bread') }, 'NOT_PLAIN'],
    ['a date', { date: new Date(0) }, 'NOT_PLAIN'],
    ['a map', new Map([['scenario', 1]]), 'NOT_PLAIN'],
    ['not a number', { scenario: Number.NaN }, 'NOT_A_NUMBER'],
    ['an object inside itself', loop, 'TOO_DEEP'],
    ['nothing', undefined, 'NOT_PLAIN'],
    ['null', null, 'NOT_AN_OBJECT'],
  ];

  it.each(values)('%s', (_, value, code) => {
    const reading = readScenarioValue(value);
    expect(errorsOf(reading).map((error) => error.code)).toContain(code);
    expectCoded(reading, false);
  });
});

describe('plans made to harm', () => {
  it.each([
    ['nested without end', 'TOO_DEEP', '['.repeat(900_000)],
    ['JSON nested without end', 'TOO_DEEP', `${'['.repeat(100_000)}${']'.repeat(100_000)}`],
    ['large JSON nested without end', 'TOO_DEEP', `${'['.repeat(600_000)}${']'.repeat(600_000)}`],
    ['large and no JSON', 'SYNTAX', `plan: 1 # ${'x'.repeat(1_000_001)}`],
    ['nothing', 'EMPTY', ''],
    ['a list', 'NOT_AN_OBJECT', '[]'],
  ])('%s', (_, code, text) => {
    const reading = readPlan(text);
    expect(errorsOf(reading).map((error) => error.code)).toContain(code);
    expectCoded(reading, false);
  });
});
