// A good plan written by hand: nobody is named, hands never limit. Two doughs are mixed side by side, three trays proof and
// bake side by side. Minute 0 is 06:00 in UTC.
//
// One change of none: each deck heats up once. Ready at 76 (two trays of rolls) and 71 (flatbread), all due at 07:30 (90).
// First hands-on, counted although nobody is named: 0. Cost 76.
import { scenarioSchema } from '../../../src/model/scenario.ts';
import type { WrittenPlan } from '../../../src/model/writtenPlan.ts';
import { at, ofBatch, ofTray } from './writing.ts';

export const scenario = scenarioSchema.parse({
  scenario: 1,
  name: 'Quiet house',
  date: '2026-01-20',
  timeZone: 'UTC',
  day: { from: '06:00', until: '08:00' },
  equipment: {
    ovens: [
      {
        id: 'oven',
        heatUpCPerMinute: 10,
        coolDownCPerMinute: 3,
        decks: [
          { id: 'left', trays: 2, startsAtC: 20 },
          { id: 'right', trays: 1, startsAtC: 20 },
        ],
      },
    ],
    proofers: [
      { id: 'tall', shelves: 2, temperatureC: 30 },
      { id: 'short', shelves: 1, temperatureC: 30 },
      { id: 'spare', shelves: 1, temperatureC: 40 },
    ],
    mixers: [
      { id: 'one', bowlKg: 5 },
      { id: 'two', bowlKg: 5 },
    ],
    bench: { places: 2 },
  },
  doughs: [
    {
      id: 'roll-dough',
      steps: [
        { do: 'mix', minutes: 10 },
        { do: 'bulk', minutes: [10, 20] },
      ],
    },
    { id: 'flat-dough', lossPercent: 20, steps: [{ do: 'mix', minutes: 10, waitUpTo: 5 }] },
  ],
  products: [
    {
      id: 'roll',
      dough: 'roll-dough',
      pieceG: 50,
      piecesPerTray: 20,
      steps: [
        { do: 'shape', minutesPerTray: 5 },
        { do: 'proof', minutes: [20, 30], temperatureC: [28, 32], waitUpTo: 10 },
        { do: 'bake', minutes: [15, 18], temperatureC: [200, 220] },
        { do: 'cool', minutes: [5, 10] },
      ],
    },
    {
      id: 'flatbread',
      dough: 'flat-dough',
      pieceG: 100,
      piecesPerTray: 8,
      steps: [
        { do: 'proof', minutes: [30, 40], temperatureC: [28, 32] },
        { do: 'bake', minutes: [15, 18], temperatureC: [210, 230] },
      ],
    },
  ],
  orders: [
    { product: 'roll', pieces: 40, readyBy: '07:30' },
    { product: 'flatbread', pieces: 5, readyBy: '07:30' },
  ],
});

const roll1 = ofTray('roll-1', 'roll', 'roll-dough-1');
const roll2 = ofTray('roll-2', 'roll', 'roll-dough-1');
const flat1 = ofTray('flatbread-1', 'flatbread', 'flat-dough-1');

/** Tasks and set points only. The trays of rolls are worked side by side on the bench. */
export const plan: WrittenPlan = {
  tasks: [
    ofBatch('roll-dough-1', 'mix', 0, 10, at('bowl', 'one')),
    ofBatch('roll-dough-1', 'bulk', 10, 20),
    roll1('shape', 20, 25, at('bench', 'bench', 1)),
    roll1('proof', 25, 50, at('shelf', 'tall', 1)),
    roll1('bake', 50, 65, at('deck', 'oven/left', 1)),
    roll1('cool', 65, 75),
    roll2('shape', 20, 25, at('bench', 'bench', 2)),
    roll2('proof', 25, 50, at('shelf', 'tall', 2)),
    roll2('bake', 56, 71, at('deck', 'oven/left', 2)),
    roll2('cool', 71, 76),
    ofBatch('flat-dough-1', 'mix', 5, 15, at('bowl', 'two')),
    flat1('proof', 18, 56, at('shelf', 'short', 1)),
    flat1('bake', 56, 71, at('deck', 'oven/right', 1)),
  ],
  decks: [
    { id: 'oven/left', setPoints: [{ start: 25, end: 45, fromC: 20, toC: 220 }] },
    { id: 'oven/right', setPoints: [{ start: 30, end: 49, fromC: 20, toC: 210 }] },
  ],
};
