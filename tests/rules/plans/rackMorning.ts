// A good plan written by hand: a rack oven loaded together. Three trays go in as one load and a fourth, of another product,
// as the next. The first load is loaded in 3 minutes, the longest of its trays, and unloaded in 2, once, by one person.
// Minute 0 is 04:00 in Berlin in winter.
//
// Deck starts at the right heat for both: no move, no change. Seeded rolls take 3 to load and 1 to unload, plain rolls 2 and 2.
// First load: bake 40-58, loading 37-40, unloading 58-60. Second: loading 58-61 by the other person, bake 61-79, unload 79-80.
// Ready at 60 (three trays) and 80. Aim start-late: first hands-on at 5, cost 80 - 5 = 75.
import { scenarioSchema } from '../../../src/model/scenario.ts';
import type { WrittenPlan } from '../../../src/model/writtenPlan.ts';
import { at, by, ofBatch, ofTray } from './writing.ts';

const roll = {
  dough: 'plain',
  pieceG: 60,
  piecesPerTray: 30,
  steps: [
    { do: 'proof', minutes: [20, 45] },
    { do: 'bake', minutes: 18, temperatureC: 230, load: 2, unload: 2 },
  ],
};

export const scenario = scenarioSchema.parse({
  scenario: 1,
  name: 'Rack morning',
  date: '2026-02-03',
  timeZone: 'Europe/Berlin',
  day: { from: '04:00', until: '06:00' },
  equipment: {
    ovens: [
      {
        id: 'rack-oven',
        loading: 'together',
        heatUpCPerMinute: 8,
        coolDownCPerMinute: 3,
        decks: [{ id: 'chamber', trays: 3, startsAtC: 230 }],
      },
    ],
    proofers: [{ id: 'room', shelves: 4, temperatureC: 28 }],
  },
  people: [
    { id: 'ida', from: '04:00', until: '06:00' },
    { id: 'ole', from: '04:00', until: '06:00' },
  ],
  doughs: [{ id: 'plain', steps: [{ do: 'mix', minutes: 10, handsOn: 5 }] }],
  products: [
    { id: 'plain-roll', ...roll },
    {
      id: 'seeded-roll',
      ...roll,
      steps: [
        { do: 'proof', minutes: [20, 45] },
        { do: 'bake', minutes: 18, temperatureC: 230, load: 3, unload: 1 },
      ],
    },
  ],
  orders: [
    { product: 'plain-roll', pieces: 60, readyBy: '05:00' },
    { product: 'seeded-roll', pieces: 60, readyBy: '05:20' },
  ],
  goals: { aim: 'start-late' },
});

const plain1 = ofTray('plain-roll-1', 'plain-roll', 'plain-1');
const plain2 = ofTray('plain-roll-2', 'plain-roll', 'plain-1');
const seeded1 = ofTray('seeded-roll-1', 'seeded-roll', 'plain-1');
const seeded2 = ofTray('seeded-roll-2', 'seeded-roll', 'plain-1');

/** Tasks and set points only. */
export const plan: WrittenPlan = {
  tasks: [
    ofBatch('plain-1', 'mix', 5, 15, undefined, [by('ida', 'mix', 5, 10)]),
    plain1('proof', 15, 37, at('shelf', 'room', 1)),
    plain1('bake', 40, 58, at('deck', 'rack-oven/chamber', 1), [by('ida', 'load', 37, 40), by('ida', 'unload', 58, 60)]),
    plain2('proof', 15, 37, at('shelf', 'room', 2)),
    plain2('bake', 40, 58, at('deck', 'rack-oven/chamber', 2)),
    seeded1('proof', 15, 37, at('shelf', 'room', 3)),
    seeded1('bake', 40, 58, at('deck', 'rack-oven/chamber', 3)),
    seeded2('proof', 15, 58, at('shelf', 'room', 4)),
    seeded2('bake', 61, 79, at('deck', 'rack-oven/chamber', 1), [by('ole', 'load', 58, 61), by('ole', 'unload', 79, 80)]),
  ],
  decks: [],
};
