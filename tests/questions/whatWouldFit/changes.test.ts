// The kinds of change: which ways there are, the operations that make them, on the scenario as read and on its file as written.
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { clockOf } from '../../../src/model/clock.ts';
import { type Scenario, type ScenarioInput, scenarioSchema } from '../../../src/model/scenario.ts';
import { deckPlace } from '../../../src/questions/whatWouldFit/deckPlace.ts';
import { dropPieces, telling } from '../../../src/questions/whatWouldFit/dropPieces.ts';
import type { Ladder, LadderOf } from '../../../src/questions/whatWouldFit/ladder.ts';
import { moreShelves } from '../../../src/questions/whatWouldFit/moreShelves.ts';
import { moveOrder } from '../../../src/questions/whatWouldFit/moveOrder.ts';
import { startEarlier } from '../../../src/questions/whatWouldFit/startEarlier.ts';
import { patchValue } from '../../../src/read/patchValue.ts';
import { readScenarioValue } from '../../../src/read/readScenario.ts';
import { patching } from './actedOn.ts';

const written: ScenarioInput = {
  scenario: 1,
  name: 'A few breads',
  date: '2026-05-16',
  timeZone: 'Europe/Lisbon',
  day: { from: '03:00', until: '09:00' },
  equipment: {
    ovens: [
      {
        id: 'oven',
        heatUpCPerMinute: 5,
        coolDownCPerMinute: 2,
        decks: [
          { id: 'cool', trays: 2, maxC: 210 },
          { id: 'hot', name: 'Hot deck', trays: 3, steam: true },
        ],
      },
    ],
    proofers: [
      { id: 'left', shelves: 4, temperatureC: 24 },
      { id: 'right', shelves: 3, traysPerShelf: 2, temperatureC: 32 },
    ],
    retarders: [{ id: 'cold', shelves: 2 }],
  },
  people: [
    { id: 'ana', name: 'Ana', from: '03:00', until: '08:00' },
    { id: 'ben', from: '05:00', until: '09:00' },
    { id: 'carl', from: '03:00', until: '09:00' },
  ],
  doughs: [{ id: 'white', steps: [{ do: 'mix', minutes: 10 }] }],
  products: [
    {
      id: 'roll',
      name: 'Roll',
      dough: 'white',
      pieceG: 60,
      piecesPerTray: 10,
      steps: [
        { do: 'proof', minutes: [30, 40], temperatureC: [28, 34] },
        { do: 'bake', minutes: 10, temperatureC: [220, 230] },
      ],
    },
    { id: 'flat', dough: 'white', pieceG: 60, piecesPerTray: 10, steps: [{ do: 'shape', minutesPerTray: 5 }] },
  ],
  orders: [
    { product: 'roll', pieces: 24, readyBy: '06:00' },
    { product: 'flat', pieces: 10, readyBy: '06:00' },
    { product: 'roll', pieces: 12, readyBy: '08:30' },
  ],
};

const scenario = scenarioSchema.parse(written);

function made(of: LadderOf, orders: readonly number[], day: Scenario = scenario): Ladder | string {
  return of({ scenario: day, clock: clockOf(day), wanted: { orders, changeable: orders, mayFail: new Set() } });
}

function ladder(of: LadderOf, orders: readonly number[], day: Scenario = scenario): Ladder {
  const result = made(of, orders, day);
  if (typeof result === 'string') throw new Error(result);
  return result;
}

describe('start the day earlier', () => {
  it('moves the day and those who begin with it', () => {
    const [variant] = ladder(startEarlier, [0]).at(35);
    expect(variant?.operations).toEqual([
      { op: 'replace', path: '/day/from', value: '02:25' },
      { op: 'replace', path: '/people/0/from', value: '02:25' },
      { op: 'replace', path: '/people/2/from', value: '02:25' },
    ]);
    expect(variant?.does).toBe('Start the day 35 minutes earlier, at 02:25, and Ana and Carl come at 02:25');
  });

  it('goes back into the evening before', () => {
    expect(ladder(startEarlier, [0]).at(200)[0]?.operations[0]).toMatchObject({ value: '-1d 23:40' });
  });

  it('moves those who come first when nobody begins with the day', () => {
    const late = scenarioSchema.parse({ ...written, people: [{ id: 'ben', from: '05:00', until: '09:00' }] });
    expect(ladder(startEarlier, [0], late).at(10)[0]?.operations).toEqual([
      { op: 'replace', path: '/day/from', value: '02:50' },
      { op: 'replace', path: '/people/0/from', value: '04:50' },
    ]);
  });

  it('names no time that the clocks skip or show twice', () => {
    // On 2026-03-29 the clocks of Lisbon go from 01:00 to 02:00.
    const spring = scenarioSchema.parse({ ...written, date: '2026-03-29', people: undefined });
    const at = ladder(startEarlier, [0], spring).at;
    expect(at(60)[0]?.operations[0]).toMatchObject({ value: '02:00' });
    expect(at(61)[0]?.operations[0]).toMatchObject({ value: '00:59' });
    // On 2026-10-25 they go from 02:00 back to 01:00: half past one comes twice, and the earlier is meant.
    const autumn = scenarioSchema.parse({ ...written, date: '2026-10-25', people: undefined });
    expect(ladder(startEarlier, [0], autumn).at(90)).toEqual([]);
    // Eight hours before half past nine it is the second half past one, which cannot be written; two o'clock can.
    const day = { day: { from: '09:30', until: '12:00' }, orders: [{ product: 'roll', pieces: 24, readyBy: '12:00' }] };
    const late = scenarioSchema.parse({ ...written, ...day, date: '2026-10-25', people: undefined });
    expect(ladder(startEarlier, [0], late).top).toBe(450);
    expect(ladder(startEarlier, [0], autumn).at(150)[0]?.operations[0]).toMatchObject({ value: '01:30' });
  });

  it('is of no use on a day as long as a day may be', () => {
    const long = scenarioSchema.parse({ ...written, day: { from: '-2d 09:00', until: '09:00' } });
    expect(clockOf(long).minutes).toBe(2880);
    expect(ladder(startEarlier, [0], long).top).toBe(480);
    const longest = scenarioSchema.parse({ ...written, day: { from: '-3d 09:00', until: '09:00' } });
    expect(made(startEarlier, [0], longest)).toBe('The day is as long as a day may be.');
  });
});

describe('more shelves', () => {
  it('only where the temperature suits, in shelves', () => {
    expect(ladder(moreShelves, [0]).at(2)).toEqual([
      {
        amount: 2,
        operations: [{ op: 'replace', path: '/equipment/proofers/1/shelves', value: 5 }],
        does: 'Have two more shelves of two trays each in proofer right, 5 instead of 3',
        earlierBy: 0,
      },
    ]);
  });

  it('a shelf for every tray is the most that can help', () => {
    expect(ladder(moreShelves, [0]).top).toBe(5);
  });

  it('of no use to trays that are not proofed', () => {
    expect(made(moreShelves, [1])).toBe('Its trays need no shelf.');
  });

  it('in a retarder where a step needs one', () => {
    const overnight = scenarioSchema.parse({
      ...written,
      doughs: [{ id: 'white', steps: [{ do: 'bulk', minutes: 60, where: 'retarder' }] }],
    });
    expect(ladder(moreShelves, [1], overnight).at(1)[0]?.operations).toEqual([
      { op: 'replace', path: '/equipment/retarders/0/shelves', value: 3 },
    ]);
  });
});

describe('one more place on a deck', () => {
  it('only on decks hot enough', () => {
    expect(ladder(deckPlace, [0]).at(1)).toEqual([
      {
        amount: 1,
        operations: [{ op: 'replace', path: '/equipment/ovens/0/decks/1/trays', value: 4 }],
        does: 'Have room for one more tray on Hot deck, 4 instead of 3',
        earlierBy: 0,
      },
    ]);
  });

  it('of no use to trays that are not baked', () => {
    expect(made(deckPlace, [1])).toBe('Its trays are not baked.');
  });
});

describe('a later time', () => {
  it('for any of the orders, up to the end of the day', () => {
    const both = ladder(moveOrder, [0, 2]);
    expect(both.top).toBe(180);
    expect(both.at(30).map(({ operations }) => operations[0])).toEqual([
      { op: 'replace', path: '/orders/0/readyBy', value: '06:30' },
      { op: 'replace', path: '/orders/2/readyBy', value: '09:00' },
    ]);
    expect(both.at(31)).toHaveLength(1);
  });

  it('of no use to an order for the end of the day', () => {
    const end = scenarioSchema.parse({ ...written, orders: [{ product: 'roll', pieces: 24, readyBy: '09:00' }] });
    expect(made(moveOrder, [0], end)).toBe('It is wanted at the end of the day and cannot be wanted later.');
  });
});

describe('fewer pieces', () => {
  it('where a tray is saved, or one is due later', () => {
    // 24 by 06:00 and 12 by 08:30, ten to a tray: four trays, due 06:00, 06:00, 06:00, 08:30.
    // Four fewer of the first: the third tray serves the second order only. Six fewer: three trays.
    const rungs = ladder(dropPieces, [0]);
    expect(Array.from({ length: rungs.top }, (_, at) => rungs.at(at + 1)[0]?.amount)).toEqual([4, 6, 14, 16]);
    expect(rungs.at(1)[0]?.operations).toEqual([{ op: 'replace', path: '/orders/0/pieces', value: 20 }]);
  });

  it('of no use to an order that would take as many trays with one piece', () => {
    expect(made(dropPieces, [1])).toBe('Fewer pieces of it would still take as many trays.');
  });

  /** How many trays are due when which order is: the whole of what a day makes of the pieces of a product. */
  function dues(pieces: readonly number[], perTray: number): string {
    const owners = pieces.flatMap((count, order) => Array.from({ length: count }, () => order));
    return owners.filter((_, piece) => piece % perTray === 0).join(' ');
  }

  test('the telling numbers are those at which the trays or their times change', () => {
    const orders = fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(orders, fc.nat(), fc.integer({ min: 1, max: 12 }), (pieces, which, perTray) => {
        const from = which % pieces.length;
        const fewer = (k: number): number[] => pieces.map((count, at) => (at === from ? count - k : count));
        const expected: number[] = [];
        for (let k = 1; k < (pieces[from] ?? 0); k++)
          if (dues(fewer(k), perTray) !== dues(fewer(k - 1), perTray)) expected.push(k);
        expect(
          telling(
            pieces.map((count) => ({ pieces: count })),
            from,
            perTray,
          ),
        ).toEqual(expected);
      }),
      { numRuns: 300 },
    );
  });
});

test('the operations make the same day of the scenario as read and of its file as written', () => {
  const kinds = [startEarlier, moreShelves, deckPlace, moveOrder, dropPieces];
  const variants = kinds.flatMap((of) => ladder(of, [0, 2]).at(1));
  expect(variants.length).toBeGreaterThanOrEqual(6);
  const another = { op: 'add', path: '/people/-', value: { id: 'another-person', from: '04:00', until: '05:00' } } as const;
  for (const operations of [...variants.map((variant) => variant.operations), [another]]) {
    const patched = patchValue(written, operations);
    const ofFile = patched.ok ? readScenarioValue(patched.value) : null;
    expect(ofFile).toEqual({ ok: true, value: patching(scenario, operations) });
  }
});
