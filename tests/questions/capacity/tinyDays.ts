// Tiny days, and by trying every start of every tray whether all of it can be ready on time. The oracle of capacity; it shares
// nothing with the search. Every tray is a batch of its own, so that how trays are dealt to batches decides nothing.
import fc from 'fast-check';
import { type Scenario, scenarioSchema } from '../../../src/model/scenario.ts';

type Bread = { bulk: number; shape: number; proof: number; spare: number; bake: number; trays: number; due: number };
type TinyDay = { breads: readonly Bread[]; bench: number; shelves: number; deck: number };

const clockAt = (minute: number): string => `04:${String(minute).padStart(2, '0')}`;

export function scenarioOf({ breads, bench, shelves, deck }: TinyDay): Scenario {
  return scenarioSchema.parse({
    scenario: 1,
    name: 'A tiny day',
    date: '2026-05-16',
    timeZone: 'Europe/Lisbon',
    day: { from: '04:00', until: '04:40' },
    equipment: {
      ovens: [
        {
          id: 'oven',
          heatUpCPerMinute: 5,
          coolDownCPerMinute: 5,
          decks: [{ id: 'deck', trays: deck, startsAtC: 220 }],
        },
      ],
      proofers: [{ id: 'proofer', shelves, temperatureC: 30 }],
      bench: { places: bench },
    },
    doughs: breads.map(({ bulk }, i) => ({ id: `dough-${i}`, maxBatchKg: 1, steps: [{ do: 'bulk', minutes: bulk }] })),
    products: breads.map(({ shape, proof, spare, bake }, i) => ({
      id: `bread-${i}`,
      dough: `dough-${i}`,
      pieceG: 100,
      piecesPerTray: 10,
      steps: [
        { do: 'shape', minutesPerTray: shape },
        { do: 'proof', minutes: [proof, proof + spare] },
        { do: 'bake', minutes: bake, temperatureC: [210, 230] },
      ],
    })),
    orders: breads.map(({ trays, due }, i) => ({ product: `bread-${i}`, pieces: 10 * trays, readyBy: clockAt(due) })),
  });
}

export const anyTinyDay: fc.Arbitrary<TinyDay> = fc.record({
  breads: fc.array(
    fc.record({
      bulk: fc.integer({ min: 1, max: 3 }),
      shape: fc.integer({ min: 1, max: 3 }),
      proof: fc.integer({ min: 2, max: 4 }),
      spare: fc.integer({ min: 0, max: 2 }),
      bake: fc.integer({ min: 2, max: 4 }),
      trays: fc.integer({ min: 1, max: 2 }),
      due: fc.integer({ min: 12, max: 16 }),
    }),
    { minLength: 1, maxLength: 2 },
  ),
  bench: fc.integer({ min: 1, max: 2 }),
  shelves: fc.integer({ min: 1, max: 3 }),
  deck: fc.integer({ min: 1, max: 2 }),
});

type Used = { readonly bench: number[]; readonly shelves: number[]; readonly deck: number[] };

/** Takes a place from one minute until another, or gives it back; false when it is full somewhere. */
function change(used: number[], from: number, until: number, by: number, room: number): boolean {
  let fits = true;
  for (let minute = from; minute < until; minute++) {
    used[minute] = (used[minute] ?? 0) + by;
    if ((used[minute] ?? 0) > room) fits = false;
  }
  return fits;
}

/** Whether so many trays of each bread can all be ready on time. */
export function canBeDone({ breads, bench, shelves, deck }: TinyDay, trays: readonly number[]): boolean {
  const queue = breads.flatMap((bread, i) => Array.from({ length: trays[i] ?? 0 }, () => bread));
  const used: Used = { bench: [], shelves: [], deck: [] };
  const place = (at: number, notBefore: number): boolean => {
    const bread = queue[at];
    if (bread === undefined) return true;
    const isAlike = queue[at - 1] === bread;
    for (let start = isAlike ? Math.max(bread.bulk, notBefore) : bread.bulk; start < bread.due; start++) {
      for (let proof = bread.proof; proof <= bread.proof + bread.spare; proof++) {
        const shaped = start + bread.shape;
        const baked = shaped + proof + bread.bake;
        if (baked > bread.due) break;
        const take = (by: number): boolean => {
          const onBench = change(used.bench, start, shaped, by, bench);
          const onShelf = change(used.shelves, shaped, shaped + proof, by, shelves);
          const onDeck = change(used.deck, shaped + proof, baked, by, deck);
          return onBench && onShelf && onDeck;
        };
        const fits = take(1) && place(at + 1, start);
        take(-1);
        if (fits) return true;
      }
    }
    return false;
  };
  return place(0, 0);
}
