// Tests of src/draw/spread.ts, shareWidth.ts, shareColumns.ts, deckHeat.ts, priceWords.ts and leftOutWords.ts.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Column } from '../../src/draw/column.ts';
import { deckHeatOf, temperatureAt } from '../../src/draw/deckHeat.ts';
import { leftOutWords } from '../../src/draw/leftOutWords.ts';
import { priceWords } from '../../src/draw/priceWords.ts';
import { COLUMN_GAP, pagesOfColumns, widthsOf } from '../../src/draw/shareColumns.ts';
import { shareWidth } from '../../src/draw/shareWidth.ts';
import type { Span } from '../../src/draw/spans.ts';
import { spread, spreadAll } from '../../src/draw/spread.ts';
import { smallPlan } from './smallPlan.ts';

const wanted = fc
  .array(fc.record({ ideal: fc.integer({ min: 0, max: 200 }), height: fc.integer({ min: 1, max: 20 }) }), { maxLength: 30 })
  .map((list) => list.sort((a, b) => a.ideal - b.ideal));

describe('labels down a strip', () => {
  test('spread: inside the strip, none overlapping, none far from its moment', () => {
    fc.assert(
      fc.property(wanted, (list) => {
        let free = 0;
        spread(list, 0, 200, 5).forEach((top, index) => {
          if (top === undefined) return;
          const { ideal = 0, height = 0 } = list[index] ?? {};
          expect(top).toBeGreaterThanOrEqual(free);
          expect(top + height).toBeLessThanOrEqual(200.001);
          expect(Math.abs(top - ideal)).toBeLessThanOrEqual(5);
          free = top + height;
        });
      }),
    );
  });

  test('spread: a label alone stands at its moment', () => {
    expect(spread([{ ideal: 30, height: 4 }], 0, 200, 5)).toEqual([30]);
  });

  test('spreadAll: keeps every label, or says that they do not fit', () => {
    fc.assert(
      fc.property(wanted, (list) => {
        const tops = spreadAll(list, 0, 200);
        const total = list.reduce((sum, { height }) => sum + height, 0);
        expect(tops === null).toBe(total > 200);
        let free = 0;
        tops?.forEach((top, index) => {
          expect(top).toBeGreaterThanOrEqual(free - 1e-9);
          free = top + (list[index]?.height ?? 0);
          expect(free).toBeLessThanOrEqual(200.001);
        });
      }),
    );
  });
});

const KIND = { key: 'product tin', id: 'tin', sort: 'product' as const, name: 'Tin', tag: 'Ti', colour: '#e69f00', hatch: 0 };

function span(start: number, minutes: number): Span {
  const end = start + minutes;
  return { start, end, heldUntil: end, kind: KIND, trays: 1, position: 1, positions: 1, tasks: [], change: '' };
}

test('shareWidth: spans that overlap in time never overlap in width, and all keep inside', () => {
  const spans = fc.array(fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 1, max: 90 })), { maxLength: 25 });
  fc.assert(
    fc.property(spans, (list) => {
      const placed = shareWidth(list.map(([start, minutes]) => span(start, minutes)));
      expect(placed).toHaveLength(list.length);
      placed.forEach((one, index) => {
        expect(one.left + one.width).toBeLessThanOrEqual(1 + 1e-9);
        for (const other of placed.slice(index + 1)) {
          const isTogether = one.span.start < other.span.end && other.span.start < one.span.end;
          const isBeside = one.left + one.width <= other.left + 1e-9 || other.left + other.width <= one.left + 1e-9;
          expect(!isTogether || isBeside).toBe(true);
        }
      });
    }),
  );
});

describe('columns', () => {
  const column = (id: string, family: Column['family'], minWidth: number, mayBeLeftAway = false): Column => ({
    id,
    family,
    title: id,
    shortTitle: id,
    notes: () => [],
    minWidth,
    wishWidth: minWidth * 1.4,
    mayBeLeftAway,
    isNeeded: () => true,
    draw: () => [],
  });
  const ids = (pages: readonly (readonly Column[])[]) => pages.map((page) => page.map(({ id }) => id));

  test('a family stays together, and one too wide is cut evenly', () => {
    const people = [column('a', 'people', 40), column('b', 'people', 40)];
    const decks = Array.from({ length: 4 }, (_, k) => column(`d${k}`, 'decks', 45));
    expect(ids(pagesOfColumns([...people, ...decks], 150))).toEqual([
      ['a', 'b'],
      ['d0', 'd1'],
      ['d2', 'd3'],
    ]);
  });

  test('a column that may be left away gets no page of its own', () => {
    const decks = [column('d', 'decks', 145)];
    expect(ids(pagesOfColumns([...decks, column('cool', 'shop', 40, true)], 150))).toEqual([['d']]);
    expect(ids(pagesOfColumns([...decks, column('orders', 'shop', 40)], 150))).toEqual([['d'], ['orders']]);
  });

  test('widths never leave the page', () => {
    const widths = fc.array(fc.integer({ min: 10, max: 70 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(widths, (list) => {
        for (const page of pagesOfColumns(
          list.map((width, k) => column(`${k}`, 'decks', width)),
          264,
        )) {
          const used = widthsOf(page, 264).reduce((sum, width) => sum + width + COLUMN_GAP, 0);
          expect(used).toBeLessThanOrEqual(264.001);
        }
      }),
    );
  });
});

describe('heat', () => {
  const moves = [
    { start: 0, end: 42, fromC: 20, toC: 230 },
    { start: 100, end: 115, fromC: 230, toC: 200 },
  ];
  const bake = (start: number) => ({
    step: 'bake' as const,
    product: 'tin',
    tray: `tin-${start}`,
    start,
    end: start + 20,
    place: { kind: 'deck' as const, id: 'oven/top', position: 1 },
  });

  test('moves evenly and holds in between', () => {
    const heat = deckHeatOf(smallPlan([], { decks: [{ id: 'oven/top', setPoints: moves }] }), 'oven/top');
    expect([0, 21, 42, 99, 110, 300].map((minute) => temperatureAt(heat, minute))).toEqual([20, 125, 230, 230, 210, 200]);
  });

  test('the first heat-up is none where the deck was good for its first bake as it stood', () => {
    const decks = [{ id: 'oven/top', setPoints: moves }];
    const firsts = (start: number) =>
      deckHeatOf(smallPlan([bake(start)], { decks }), 'oven/top').moves.map(({ isFirst }) => isFirst);
    expect(firsts(50)).toEqual([true, false]);
    expect(firsts(0)).toEqual([false, false]);
  });
});

describe('words for the head', () => {
  const score = smallPlan([]).score;

  test('the gap is rounded up, never down', () => {
    const words = (gap: number) => priceWords(smallPlan([], { holds: 'feasible', score: { ...score, gap } }));
    expect(words(0.0423)).toBe('At most 4.3\u00a0% from the best possible.');
    expect(words(0.05)).toBe('At most 5\u00a0% from the best possible.');
    expect(words(0.000001)).toBe('At most 0.1\u00a0% from the best possible.');
    expect(words(0)).toBe('Proved best: no plan of this day has a lower price.');
  });

  test('what was left out is told with every reason', () => {
    const reasons = [
      { rule: 'A', says: 'the decks are full', wouldFitIf: 'a deck held more trays' },
      { rule: 'B', says: 'Nobody is free.', wouldFitIf: 'It would fit if another pair of hands were there.' },
      { rule: 'C', says: 'no shelf' },
    ];
    expect(leftOutWords(smallPlan([], { leftOut: [{ product: 'tin', trays: 2, reasons }] }))).toEqual([
      'Left out: 2 trays of Seeded tin. The decks are full. Would fit if a deck held more trays. ' +
        'Nobody is free. It would fit if another pair of hands were there. No shelf.',
    ]);
  });
});
