// The checks that look at more than one value: the edges where each begins to speak, and what they leave alone.
import { describe, expect, it } from 'vitest';
import { GOOD, goodWith, wrongIn } from './wholeScenario.ts';

/** Codes only, each once. */
function codesIn(text: string): readonly string[] {
  return [...new Set(wrongIn(text).map((line) => line.split(' ')[0] ?? ''))];
}

function withAll(...pairs: readonly (readonly [string, string])[]): string {
  return pairs.reduce((text, [from, to]) => {
    expect(text).toContain(from);
    return text.replace(from, to);
  }, GOOD);
}

describe('edges: the last good one, and the first wrong one', () => {
  const cases: readonly (readonly [string, string, string, string])[] = [
    ['ORDER_OUTSIDE_DAY', 'readyBy: "09:00"', 'readyBy: "10:00"', 'readyBy: "10:01"'],
    ['ORDER_OUTSIDE_DAY', 'readyBy: "09:00"', 'readyBy: "-1d 20:01"', 'readyBy: "-1d 20:00"'],
    ['HANDS_ON_TOO_LONG', 'handsOn: 4', 'handsOn: 12', 'handsOn: 13'],
    ['NO_DECK_FITS', 'temperatureC: [235, 245]', 'temperatureC: [280, 300]', 'temperatureC: [281, 300]'],
    ['NO_DECK_FITS', 'maxC: 280, steam: true', 'maxC: 280, steam: true, startsAtC: 200', 'maxC: 280, steam: false'],
    ['NO_PROOFER_FITS', 'shelves: 10', 'shelves: 1', 'shelves: 0'],
    ['NO_PROOFER_FITS', 'temperatureC: [27, 32]', 'temperatureC: [30, 32]', 'temperatureC: [31, 32]'],
    ['NO_RETARDER_FITS', 'temperatureC: [3, 6]', 'temperatureC: 4', 'temperatureC: 5'],
    ['NO_BATCH_FITS', 'lossPercent: 2', 'lossPercent: 2\n    maxBatchKg: 4.34', 'lossPercent: 2\n    maxBatchKg: 4.33'],
    ['FLOUR_NOT_100', 'flour: 100', 'flour: 100.04', 'flour: 99'],
    ['FLOUR_NOT_100', 'flour: 100', 'flour: 80, rye: 20', 'flour: 80, sugar-beet: 20'],
    ['DECK_STARTS_TOO_HOT', 'trays: 2, maxC: 260', 'trays: 2, maxC: 260, startsAtC: 260', 'trays: 2, maxC: 260, startsAtC: 261'],
    ['DECK_LIMITS_UPSIDE_DOWN', 'trays: 2, maxC: 260', 'trays: 2, minC: 260, maxC: 260', 'trays: 2, minC: 261, maxC: 260'],
    ['TOO_MANY_TRAYS', 'pieces: 18', 'pieces: 9985', 'pieces: 9986'],
    ['DAY_TOO_LONG', 'from: "-1d 20:00"', 'from: "-3d 10:00"', 'from: "-3d 09:59"'],
    ['DAY_TOO_SHORT', 'minutes: 40 }', 'minutes: 432 }', 'minutes: 433 }'],
    ['NO_STRETCH_LONG_ENOUGH', 'load: 2', 'load: 210', 'load: 211'],
    [
      'PERSON_OFF_ALL_DAY',
      '{ from: "06:30", until: "06:50" }',
      '{ from: "03:00", until: "09:59" }',
      '{ from: "03:00", until: "10:00" }',
    ],
    ['BREAK_UPSIDE_DOWN', 'until: "06:50"', 'until: "06:31"', 'until: "06:30"'],
    [
      'DAY_UPSIDE_DOWN',
      '{ from: "-1d 20:00", until: "10:00" }',
      '{ from: "-1d 20:00", until: "10:00" }',
      '{ from: "10:00", until: "10:00" }',
    ],
  ];

  it.each(cases)('%s: %s -> %s, not %s', (code, from, good, wrong) => {
    expect(codesIn(goodWith(from, good))).not.toContain(code);
    expect(codesIn(goodWith(from, wrong))).toContain(code);
  });
});

describe('what the checks leave alone', () => {
  it('a break outside the hours, and hours outside the day', () => {
    expect(wrongIn(goodWith('{ from: "06:30", until: "06:50" }', '{ from: "12:00", until: "12:30" }'))).toEqual([]);
    expect(wrongIn(goodWith('from: "03:00", until: "10:00"', 'from: "03:00", until: "15:00"'))).toEqual([]);
  });

  it('hands, bowls and benches that are not in the scenario', () => {
    expect(wrongIn(goodWith('  mixers:\n    - { id: spiral, bowlKg: 20 }\n', ''))).toEqual([]);
    const alone = GOOD.replace(/people:\n(?: {2}- .*\n)+/, '');
    expect(alone).not.toContain('people:');
    expect(wrongIn(alone)).toEqual([]);
  });

  it('the same id for things of different kinds, and for decks of different ovens', () => {
    expect(wrongIn(goodWith('id: cold', 'id: warm'))).toEqual([]);
    const second = '\n    - { id: brick, heatUpCPerMinute: 3, coolDownCPerMinute: 1, decks: [{ id: upper, trays: 1 }] }';
    expect(wrongIn(goodWith('\n  proofers:', `${second}\n  proofers:`))).toEqual([]);
  });

  it('a time that comes twice in the night the clocks go back', () => {
    const autumn = withAll(['2026-05-16', '2026-10-25'], ['ines, from: "03:00"', 'ines, from: "01:30"']);
    expect(wrongIn(autumn)).toEqual([]);
  });
});

describe('people', () => {
  it('nobody at all is an error at every step that needs hands', () => {
    const text = GOOD.replace(/people:\n(?: {2}- .*\n)+/, 'people: []\n');
    expect(codesIn(text)).toEqual(['NOBODY_CAN']);
    expect(wrongIn(text)).toHaveLength(9);
  });

  it('only who does a step counts for its longest stretch', () => {
    expect(codesIn(withAll(['load: 2', 'load: 300'], ['cannot: [bake]', 'cannot: []']))).toEqual([]);
    expect(codesIn(goodWith('load: 2', 'load: 300'))).toEqual(['NO_STRETCH_LONG_ENOUGH']);
  });
});

describe('a scenario broken in one part is still checked in the others', () => {
  it('the day is broken: ids and heat are checked', () => {
    const text = withAll(['from: "-1d 20:00"', 'from: dawn'], ['dough: orange', 'dough: oragne'], ['maxC: 280', 'maxC: 230']);
    expect(codesIn(text)).toEqual(['BAD_TIME', 'NO_DECK_FITS', 'UNKNOWN_DOUGH']);
  });

  it('a broken oven, proofer or person does not make others look wrong', () => {
    expect(codesIn(goodWith('trays: 2, maxC: 280', 'trays: two, maxC: 280'))).toEqual(['WRONG_TYPE']);
    expect(codesIn(goodWith('shelves: 10', 'shelves: ten'))).toEqual(['WRONG_TYPE']);
    expect(codesIn(goodWith('ines, from: "03:00"', 'ines, from: dawn'))).toEqual(['BAD_TIME']);
  });

  it('a broken dough or product still counts as there', () => {
    expect(codesIn(goodWith('handsOn: 4', 'handsOn: four'))).toEqual(['WRONG_TYPE']);
    expect(codesIn(goodWith('pieceG: 850', 'pieceG: heavy'))).toEqual(['WRONG_TYPE']);
  });

  it('lists that are none are one error', () => {
    expect(codesIn(goodWith('people:\n', 'people: 3\nothers:\n'))).toEqual(['WRONG_TYPE', 'UNKNOWN_KEY']);
  });
});
