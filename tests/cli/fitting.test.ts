// `ovenward fit` on the command line: what it asks for, what it refuses, what it prints, how it ends.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { commandLine } from '../../src/cli/commandLine.ts';
import { realParts } from '../../src/cli/realParts.ts';
import { run } from '../../src/cli/run.ts';
import { fitAnswerSchema } from '../../src/model/fitAnswer.ts';
import { scenarioSchema } from '../../src/model/scenario.ts';
import { compareGolden } from '../draw/goldenText.ts';
import { planned } from '../laws/planned.ts';
import { surroundingsFor } from './fakes.ts';

const folder = mkdtempSync(join(tmpdir(), 'fitting-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const day = scenarioSchema.parse({
  scenario: 1,
  name: 'Buns before the rolls',
  date: '2026-05-16',
  timeZone: 'Europe/Lisbon',
  day: { from: '03:00', until: '07:00' },
  equipment: {
    ovens: [{ id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks: [{ id: 'deck', trays: 2, startsAtC: 220 }] }],
    proofers: [{ id: 'proofer', shelves: 6, temperatureC: 30 }],
  },
  people: [{ id: 'ana', name: 'Ana', from: '03:00', until: '07:00' }],
  doughs: [{ id: 'white', maxBatchKg: 1, steps: [{ do: 'mix', minutes: 10, handsOn: 2 }] }],
  products: [
    { id: 'bun', name: 'Bun', proof: 40, load: 1 },
    { id: 'roll', name: 'Roll', proof: 30, load: 1 },
  ].map(({ proof, load, ...product }) => ({
    ...product,
    dough: 'white',
    pieceG: 100,
    piecesPerTray: 10,
    steps: [
      { do: 'shape', minutesPerTray: 5 },
      { do: 'proof', minutes: [proof, proof + 30], temperatureC: [28, 32] },
      { do: 'bake', minutes: 20, temperatureC: [215, 225], load, unload: load },
    ],
  })),
  orders: [{ product: 'bun', pieces: 40, readyBy: '05:00' }],
});

const scenario = file('day.json', JSON.stringify(day));
const plan = join(folder, 'plan.json');
beforeAll(async () => writeFileSync(plan, JSON.stringify(await planned(day, 60))));

async function fitted(words: readonly string[], changes: Parameters<typeof surroundingsFor>[0] = {}) {
  const surroundings = surroundingsFor(changes);
  const code = await run(['fit', ...words], realParts, surroundings);
  return { code, out: surroundings.out.text(), err: surroundings.err.text() };
}

function usage(...words: string[]) {
  const streams = surroundingsFor();
  return { request: commandLine(['fit', ...words], '0', streams), err: streams.err.text() };
}

describe('what is asked for', () => {
  it('orders, each with product, pieces and time', () => {
    expect(usage('day.yaml', '--add', 'cheese-straw=36@07:30', '--add', 'rye=4@-1d 22:00', '--seconds', '9').request).toEqual({
      do: 'fit',
      file: 'day.yaml',
      add: [
        { product: 'cheese-straw', pieces: 36, readyBy: '07:30' },
        { product: 'rye', pieces: 4, readyBy: '-1d 22:00' },
      ],
      seconds: 9,
      json: false,
    });
  });

  it.each([
    ['cheese-straw', 'Write a product, pieces and a time: cheese-straw=36@07:30.'],
    ['=36@07:30', 'Write a product, pieces and a time: cheese-straw=36@07:30.'],
    ['cheese straw=36@07:30', 'Write a product, pieces and a time: cheese-straw=36@07:30.'],
    ['rye=@07:30', 'Pieces are a whole number from 1 to 1000000: cheese-straw=36@07:30.'],
    ['rye=0@07:30', 'Pieces are a whole number from 1 to 1000000: cheese-straw=36@07:30.'],
    ['rye=3.5@07:30', 'Pieces are a whole number from 1 to 1000000: cheese-straw=36@07:30.'],
    ['rye=2000000@07:30', 'Pieces are a whole number from 1 to 1000000: cheese-straw=36@07:30.'],
    ['rye=36@7:30', 'The time is one such as 07:30'],
    ['rye=36@24:00', 'The time is one such as 07:30'],
    ['rye=36', 'Write a product, pieces and a time: cheese-straw=36@07:30.'],
  ])('%s is refused', (order, says) => {
    const { request, err } = usage('day.yaml', '--add', order);
    expect(request).toBe(2);
    expect(err).toContain(says);
  });

  it('something must be added', () => {
    expect(usage('day.yaml')).toMatchObject({ request: 2, err: expect.stringContaining('give --add or --product, or both') });
  });
});

describe('what is refused', () => {
  test('products and times the day does not have, all at once', async () => {
    const { code, out, err } = await fitted([scenario, '--add', 'rol=10@05:00', '--add', 'bun=10@02:00', '--json']);
    expect(code).toBe(2);
    expect(err).toContain('--add /0/product  UNKNOWN_PRODUCT  Order 1 names the product "rol", and no product has that id.');
    expect(err).toContain('--add /1/readyBy  ORDER_OUTSIDE_DAY  Order 2 is wanted at 02:00');
    expect(err).toContain('2 things to put right.');
    expect(JSON.parse(out).errors).toHaveLength(2);
  });

  test('a file that adds no order', async () => {
    const empty = file('empty.yaml', 'addition: 1\n');
    const { code, err } = await fitted([scenario, '--product', empty]);
    expect(code).toBe(2);
    expect(err).toContain('MISSING  No order wants any of it.');
  });

  test('a file with mistakes, at its lines', async () => {
    const { code, err } = await fitted([scenario, '--product', file('wrong.yaml', 'addition: 1\nordres: []\n')]);
    expect(code).toBe(2);
    expect(err).toMatch(/wrong\.yaml:2:1 {2}UNKNOWN_KEY .*Did you mean "orders"\?/);
  });

  test('a plan that breaks a rule of the day', async () => {
    const late = file('later.json', JSON.stringify({ ...day, day: { from: '03:30', until: '07:00' } }));
    const { code, err } = await fitted([late, '--add', 'roll=10@06:00', '--from', plan]);
    expect(code).toBe(2);
    expect(err).toContain(`${plan}`);
  });

  test('two inputs from standard input', async () => {
    const { code, err } = await fitted(['-', '--product', '-']);
    expect(code).toBe(2);
    expect(err).toContain('STDIN_TWICE');
  });
});

describe('what is printed', () => {
  test('it fits', { timeout: 60_000 }, async () => {
    const { code, out, err } = await fitted([scenario, '--add', 'roll=20@06:00', '--from', plan, '--effort', '80']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(compareGolden('fit-fits.txt', out)).toEqual({ same: true });
  });

  test('it does not', { timeout: 60_000 }, async () => {
    const { code, out } = await fitted([scenario, '--add', 'roll=40@05:00', '--effort', '60']);
    expect(code).toBe(1);
    expect(compareGolden('fit-not.txt', out)).toEqual({ same: true });
  });

  test('--json: the answer alone, of the schema, and the same words for people', { timeout: 60_000 }, async () => {
    const words = [scenario, '--add', 'roll=20@06:00', '--from', plan, '--effort', '60'];
    const { code, out, err } = await fitted([...words, '--json']);
    expect(code).toBe(0);
    const answer = fitAnswerSchema.parse(JSON.parse(out));
    expect(Object.keys(answer)).toEqual(
      expect.arrayContaining(['fits', 'base', 'with', 'cost', 'most', 'reasons', 'wouldFitIf']),
    );
    expect(err).toBe((await fitted(words)).out);
  });

  test('a new product', { timeout: 60_000 }, async () => {
    const straws = file(
      'straws.yaml',
      [
        'addition: 1',
        'products:',
        '  - { id: straw, name: Straw, dough: white, pieceG: 40, piecesPerTray: 18, steps: [ { do: bake, minutes: 12, temperatureC: 220 } ] }',
        'orders: [ { product: straw, pieces: 18, readyBy: "06:30" } ]',
        '',
      ].join('\n'),
    );
    const { code, out } = await fitted([scenario, '--product', straws, '--add', 'straw=18@06:45', '--effort', '60']);
    expect(code).toBe(0);
    expect(out).toContain('It fits: 18 Straw for 06:30, ready at ');
  });

  test('stopped: what there is, and what is missing', async () => {
    const { code, out } = await fitted([scenario, '--add', 'roll=20@06:00'], { stoppable: (work) => work(() => true) });
    expect([0, 1]).toContain(code);
    expect(out).toContain('Not reached in the time\nhow many pieces would fit at most: 20 Roll for 06:00\n');
  });
});
