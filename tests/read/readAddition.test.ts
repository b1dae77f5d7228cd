// What is to be added to a day, read: files and single orders, every error at once with its place and what to do.
import { describe, expect, it } from 'vitest';
import { ERROR_CODES } from '../../src/read/errorCodes.ts';
import { addOrders, readAddition } from '../../src/read/readAddition.ts';
import { smallestScenario } from '../cli/fakes.ts';

const WHOLE = `addition: 1
doughs:
  - { id: cheese, steps: [ { do: mix, minutes: 8 } ] }
products:
  - { id: straw, dough: cheese, pieceG: 40, piecesPerTray: 18, steps: [ { do: bake, minutes: 12, temperatureC: 200 } ] }
orders:
  - { product: straw, pieces: 36, readyBy: "07:30" }
  - { product: roll, pieces: 12, readyBy: "08:00" }
`;

/** Errors as "line:column CODE path says / doThis". */
function errorsOf(text: string): readonly string[] {
  const reading = readAddition(text, smallestScenario);
  if (reading.ok) return [];
  for (const { code } of reading.errors) expect(ERROR_CODES).toHaveProperty(code);
  return reading.errors.map(
    ({ line, column, code, path, says, doThis }) => `${line}:${column} ${code} ${path} ${says} / ${doThis}`,
  );
}

describe('a file', () => {
  it('adds doughs, products and orders behind those that are there', () => {
    const reading = readAddition(WHOLE, smallestScenario);
    expect(errorsOf(WHOLE)).toEqual([]);
    if (!reading.ok) return;
    const { doughs, products, orders, ...rest } = reading.value;
    expect(doughs.map(({ id }) => id)).toEqual(['white', 'cheese']);
    expect(products.map(({ id }) => id)).toEqual(['roll', 'straw']);
    expect(orders.map(({ product, pieces }) => [product, pieces])).toEqual([
      ['roll', 24],
      ['straw', 36],
      ['roll', 12],
    ]);
    const { doughs: _, products: __, orders: ___, ...before } = smallestScenario;
    expect(rest).toEqual(before);
  });

  it('may hold a new product of a dough that is there, and no order', () => {
    const text =
      'addition: 1\nproducts: [ { id: bap, dough: white, pieceG: 80, piecesPerTray: 12, steps: [ { do: bake, minutes: 9, temperatureC: 210 } ] } ]\n';
    const reading = readAddition(text, smallestScenario);
    expect(reading.ok && reading.value.products.map(({ id }) => id)).toEqual(['roll', 'bap']);
  });

  it('every error at once, where it stands in the file', () => {
    const text = WHOLE.replace('id: straw', 'id: roll')
      .replace('pieceG: 40', 'pieceg: 40')
      .replace('pieces: 36', 'pieces: 0')
      .replace('"08:00"', '"13:00"')
      .replace('product: roll, pieces: 12', 'product: rol, pieces: 12');
    expect(errorsOf(text)).toEqual([
      '5:11 DUPLICATE_ID /products/0/id The scenario has a product "roll" already. / Give the new one another id, or take it out and order the one that is there.',
      '5:32 UNKNOWN_KEY /products/0/pieceg Product "roll" has a key "pieceg", which means nothing there. / Did you mean "pieceG"? Keys that can stand there: id, name, dough, pieceG, piecesPerTray, allergens, coldFilling, steps.',
      '7:31 OUT_OF_BOUNDS /orders/0/pieces "pieces" of order 1 is 0, less than 1. / Write a number of at least 1.',
      '8:16 UNKNOWN_PRODUCT /orders/1/product Order 2 names the product "rol", and no product has that id. / Did you mean "roll"? Name a product that is there: "roll", "roll".',
      '8:42 ORDER_OUTSIDE_DAY /orders/1/readyBy Order 2 is wanted at 13:00, after the day ends at 12:00. / Correct the time, or make the day longer.',
    ]);
  });

  it('what the bakehouse cannot do', () => {
    expect(errorsOf(WHOLE.replace('temperatureC: 200', 'temperatureC: 400')).join('\n')).toMatch(
      /^5:\d+ NO_DECK_FITS \/products\/0\//,
    );
  });

  it('a scenario is no addition', () => {
    expect(errorsOf('scenario: 1\n').map((error) => error.split(' ').slice(1, 3).join(' '))).toEqual([
      'MISSING /addition',
      'UNKNOWN_KEY /scenario',
    ]);
    expect(errorsOf('addition: 2\n').join('\n')).toMatch(/^1:11 BAD_VERSION \/addition /);
    expect(errorsOf('# nothing\n')).toEqual(['1:1 EMPTY  The addition holds nothing. / Start from the example in docs/fit.md.']);
  });

  it('so much that the day has too many trays', () => {
    expect(errorsOf(WHOLE.replace('pieces: 36', 'pieces: 360000')).join('\n')).toMatch(/TOO_MANY_TRAYS \/orders /);
  });
});

describe('single orders', () => {
  it('are added in turn', () => {
    const reading = addOrders([{ product: 'roll', pieces: 12, readyBy: '08:00' }], smallestScenario);
    expect(reading.ok && reading.value.orders).toEqual([
      ...smallestScenario.orders,
      { product: 'roll', pieces: 12, readyBy: '08:00' },
    ]);
  });

  it('every error of all of them, by number', () => {
    const reading = addOrders(
      [
        { product: 'rol', pieces: 12, readyBy: '08:00' },
        { product: 'roll', pieces: 12, readyBy: '02:00' },
      ],
      smallestScenario,
    );
    expect(reading.ok ? [] : reading.errors.map(({ code, path, says }) => `${path} ${code} ${says}`)).toEqual([
      '/0/product UNKNOWN_PRODUCT Order 1 names the product "rol", and no product has that id.',
      '/1/readyBy ORDER_OUTSIDE_DAY Order 2 is wanted at 02:00, not after the day begins at 03:00.',
    ]);
  });
});
