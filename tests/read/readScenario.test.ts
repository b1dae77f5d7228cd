// Reading a scenario: what comes out, where errors stand, how they are said, that all come at once.
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readScenario, readScenarioValue } from '../../src/read/readScenario.ts';
import { errorsOf, GOOD, goodWith, readValue, wrongIn } from './wholeScenario.ts';

function first(text: string): string {
  const error = errorsOf(readScenario(text))[0];
  return error === undefined ? '' : `${error.line}:${error.column} ${error.code} ${error.says} ${error.doThis}`;
}

describe('a good scenario', () => {
  it('comes out with its defaults', () => {
    const scenario = readValue(readScenario(GOOD));
    expect(scenario.equipment.ovens[0]?.decks[0]).toEqual({
      id: 'upper',
      trays: 2,
      minC: 20,
      maxC: 280,
      startsAtC: 20,
      steam: true,
    });
    expect(scenario.doughs[0]?.shapeWithin).toBe(30);
    expect(scenario.goals).toEqual({
      lateTrayMinute: 20,
      leftOutTray: 5000,
      finishMinute: 1,
      temperatureChange: 10,
      aim: 'start-late',
    });
  });

  it('is the same in YAML, in JSON text however indented, and as a parsed value', () => {
    const scenario = readValue(readScenario(GOOD));
    const value: unknown = parse(GOOD);
    for (const indent of [0, 1, 2, '\t']) {
      expect(readValue(readScenario(JSON.stringify(value, null, indent)))).toEqual(scenario);
    }
    expect(readValue(readScenarioValue(value))).toEqual(scenario);
    expect(readValue(readScenarioValue(scenario))).toEqual(scenario);
  });

  it('may begin with a byte order mark, hold Windows line ends, and repeat a few things by alias', () => {
    const scenario = readValue(readScenario(GOOD));
    expect(readValue(readScenario(`\ufeff${GOOD}`))).toEqual(scenario);
    expect(readValue(readScenario(GOOD.replaceAll('\n', '\r\n')))).toEqual(scenario);
    const repeated = goodWith('allergens: [gluten]', 'allergens: &wheat [gluten]').replace(
      'coldFilling: true',
      'allergens: *wheat',
    );
    expect(readValue(readScenario(repeated)).products[1]?.allergens).toEqual(['gluten']);
  });
});

describe('errors', () => {
  it('come all at once, sorted by place, those of the schema and those of the checks together', () => {
    const text = GOOD.replace('date: 2026-05-16', 'date: tomorrow')
      .replace('trays: 2, maxC: 280', 'trays: none, maxC: 280')
      .replace('handsOn: 4', 'handsOn: 40')
      .replace('dough: orange', 'dough: orage')
      .replace('product: harbour-loaf', 'product: harbour')
      .replace('aim: start-late', 'aims: start-late');
    const errors = errorsOf(readScenario(text));
    expect(errors.map(({ code }) => code)).toEqual([
      'BAD_DATE',
      'WRONG_TYPE',
      'HANDS_ON_TOO_LONG',
      'UNKNOWN_DOUGH',
      'UNKNOWN_PRODUCT',
      'UNKNOWN_KEY',
    ]);
    const lines = errors.map(({ line }) => line ?? 0);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
  });

  it('have the same codes and paths without a text, and no line', () => {
    const text = goodWith('bowlKg: 20', 'bowlKg: 0').replace('dough: orange', 'dough: orage');
    const placed = errorsOf(readScenario(text));
    const unplaced = errorsOf(readScenarioValue(parse(text)));
    const keys = (errors: typeof placed): readonly string[] => errors.map(({ code, path }) => `${code} ${path}`).sort();
    expect(keys(unplaced)).toEqual(keys(placed));
    expect(placed.length).toBe(2);
    expect(unplaced.some((error) => 'line' in error)).toBe(false);
  });

  it.each([
    [
      'peiceG: 850',
      'pieceG: 850',
      '50:5 UNKNOWN_KEY Product "harbour-loaf" has a key "peiceG", which means nothing there. Did you mean "pieceG"?',
    ],
    [
      'minutes: 6',
      'minutesPerTray: 6',
      'UNKNOWN_KEY Step 2 (shape) of product "harbour-loaf" has a key "minutes", which means nothing there. Did you mean "minutesPerTray"?',
    ],
    ['readyBy: 530', 'readyBy: "07:00"', 'BAD_TIME "readyBy" of order 1 is 530, which is no clock time. Did you mean "05:30"?'],
    ['readyBy: 7:30', 'readyBy: "07:30"', 'Did you mean "07:30"?'],
    ['readyBy: "24:00"', 'readyBy: "07:30"', 'Did you mean "+1d 00:00"?'],
    ['readyBy: 6pm', 'readyBy: "07:30"', 'Did you mean "18:00"?'],
    ['from: "-1 20:00"', 'from: "-1d 20:00"', 'Did you mean "-1d 20:00"?'],
    ['readyBy: early', 'readyBy: "07:30"', '"readyBy" of order 2 is "early", which is no clock time. Write a time as'],
    [
      'do: prof,',
      'do: proof,',
      'UNKNOWN_STEP "do" of step 2 (prof) of product "orange-bun" is "prof", which is no step. Did you mean "proof"?',
    ],
    ['do: bulk,', 'do: proof,', 'which is a step of a dough. Move it to the steps of the dough.'],
    [
      'minutes: [70, 95, 99]',
      'minutes: [70, 95]',
      'BAD_RANGE "minutes" of step 2 (proof) of product "orange-bun" is [70, 95, 99], neither',
    ],
    [
      'minutes: [70, x]',
      'minutes: [70, 95]',
      'WRONG_TYPE Number 2 of "minutes" of step 2 (proof) of product "orange-bun" is "x", not a number.',
    ],
    ['minutes: [70, 9500]', 'minutes: [70, 95]', 'OUT_OF_BOUNDS Number 2 of "minutes" of step 2 (proof)'],
    ['minutes: 70.5', 'minutes: [70, 95]', 'NOT_WHOLE "minutes" of step 2 (proof) of product "orange-bun" is 70.5.'],
    ['mintes: [70, 95]', 'minutes: [70, 95]', 'UNKNOWN_KEY Step 2 (proof) of product "orange-bun" has a key "mintes"'],
    [
      'cannot: [backe]',
      'cannot: [bake]',
      'UNKNOWN_WORD Word 1 of "cannot" of person "duarte" is "backe", which is none of the choices. Did you mean "bake"?',
    ],
    ['name: 7', 'name: Harbour loaf', 'WRONG_TYPE "name" of product "harbour-loaf" is 7, not a text. Put it in quotes: "7".'],
    ['steam: "true"', 'steam: true', 'WRONG_TYPE "steam" of deck "upper" of oven "stone" is "true", not true or false.'],
    ['egg: much', 'egg: 10', 'WRONG_TYPE "egg" of "formula" of dough "orange" is "much", not a number.'],
    ['id:', 'id: spiral', 'MISSING "id" of mixer 1 has nothing after it.'],
  ])('%s', (wrong, right, says) => {
    expect(first(goodWith(right, wrong))).toContain(says);
  });

  it('suggest nothing when nothing is close', () => {
    expect(first(goodWith('pieceG: 850', 'colour: brown\n    pieceG: 850'))).not.toContain('Did you mean');
  });

  it('give line and column of broken YAML, one for each place', () => {
    const errors = errorsOf(readScenario('scenario: 1\nname: @home\nday: { from: "1\n'));
    expect(errors.length).toBeGreaterThan(1);
    expect(errors[0]).toMatchObject({ code: 'SYNTAX', line: 2, column: 7 });
  });

  it('name the file when one is given', () => {
    expect(errorsOf(readScenario('', 'sunday.yaml'))[0]?.says).toBe('sunday.yaml holds nothing.');
  });

  it('do not repeat one mistake as several', () => {
    expect(wrongIn(goodWith('pieceG: 850', 'peiceG: 850'))).toEqual(['UNKNOWN_KEY /products/0/peiceG']);
    expect(wrongIn(goodWith('bowlKg: 20', 'bowlKg: .nan'))).toEqual(['NOT_A_NUMBER /equipment/mixers/0/bowlKg']);
    expect(wrongIn(goodWith('minutes: [70, 95]', 'minutes: [70, .inf]'))).toEqual(['NOT_A_NUMBER /products/1/steps/1/minutes/1']);
    expect(wrongIn(goodWith('from: "03:00", until: "10:00"', 'from: "10:00", until: "03:00"'))).toEqual([
      'HOURS_UPSIDE_DOWN /people/0/until',
    ]);
  });
});

describe('the place of an error', () => {
  const pieces: readonly (readonly [string, string, string])[] = [
    ['scenario: 1', 'scenario: ', '9'],
    ['timeZone: Europe/Lisbon', 'timeZone: ', 'Europe/Nowhere'],
    ['bowlKg: 20', 'bowlKg: ', 'many'],
    ['minutes: [70, 95]', 'minutes: [70, ', 'x]'],
    ['product: orange-bun, pieces: 12', 'product: ', 'orange, pieces: 12'],
    ['lateTrayMinute: 20', 'lateTrayMinute: ', '-1'],
  ];

  it.each(pieces)('%s', (from, before, wrong) => {
    const text = goodWith(from, `${before}${wrong}`);
    const lines = text.slice(0, text.indexOf(`${before}${wrong}`) + before.length).split('\n');
    const error = errorsOf(readScenario(text))[0];
    expect([error?.line, error?.column]).toEqual([lines.length, (lines.at(-1)?.length ?? 0) + 1]);
  });

  it('of a key written twice, in JSON too', () => {
    const text = JSON.stringify(parse(GOOD), null, 2).replace('"timeZone"', '"date": "2026-05-18",\n  "timeZone"');
    const line = text.slice(0, text.indexOf('2026-05-18')).split('\n').length;
    expect(errorsOf(readScenario(text))).toMatchObject([{ line }]);
  });

  it('of broken text', () => {
    const text = goodWith('name: Orange bun', 'name: @Orange bun');
    const line = text.slice(0, text.indexOf('@Orange')).split('\n').length;
    expect(errorsOf(readScenario(text))[0]).toMatchObject({ code: 'SYNTAX', line, column: 11 });
  });
});
