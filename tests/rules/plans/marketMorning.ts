// A good plan written by hand: two doughs, four trays, two ovens, two people with a break. It states everything a plan can
// state, so that every figure is worked out on paper here. Minute 0 is 03:00 in Lisbon in summer (UTC+1).
//
// Loaves: ready at 143 and 149, both for 05:29 (149): not late. Buns: trays ready at 177 and 181. The 15 buns for 05:50 (170)
// are on the first tray, 7 late; the 20 for 06:00 (180) are on both trays, the second tray's own order is that one, 1 late.
// One temperature change (lower deck, 235 to 195). Cost 20 x (7 + 1) + 1 x 181 + 10 x 1 = 351. First hands-on at 0.
import { fingerprint } from '../../../src/model/fingerprint.ts';
import { scenarioSchema } from '../../../src/model/scenario.ts';
import type { WrittenPlan } from '../../../src/model/writtenPlan.ts';
import { at, by, ofBatch, ofTray } from './writing.ts';

export const scenario = scenarioSchema.parse({
  scenario: 1,
  name: 'Market morning',
  date: '2026-05-16',
  timeZone: 'Europe/Lisbon',
  day: { from: '03:00', until: '09:00' },
  equipment: {
    ovens: [
      {
        id: 'hearth',
        heatUpCPerMinute: 5,
        coolDownCPerMinute: 2,
        decks: [
          { id: 'upper', trays: 1, minC: 100, maxC: 300, steam: true },
          { id: 'lower', trays: 2, minC: 100, maxC: 280, steam: true },
        ],
      },
      {
        id: 'hatch',
        heatUpCPerMinute: 5,
        coolDownCPerMinute: 2,
        decks: [{ id: 'only', trays: 1, minC: 100, maxC: 250, startsAtC: 235 }],
      },
    ],
    proofers: [
      { id: 'warm-box', shelves: 2, temperatureC: 30 },
      { id: 'cool-box', shelves: 1, temperatureC: 24 },
    ],
    mixers: [
      { id: 'big', bowlKg: 10 },
      { id: 'small', bowlKg: 4 },
    ],
    bench: { places: 2 },
    coolingRack: { trays: 2 },
  },
  people: [
    { id: 'ana', from: '03:00', until: '08:00', breaks: [{ from: '05:00', until: '05:15' }] },
    { id: 'bem', from: '03:30', until: '09:00', cannot: ['mix', 'shape'] },
  ],
  doughs: [
    {
      id: 'country',
      shapeWithin: 10,
      steps: [
        { do: 'mix', minutes: 10, handsOn: 4 },
        { do: 'bulk', minutes: [30, 40] },
        { do: 'fold', minutes: 5 },
      ],
    },
    {
      id: 'milk',
      maxBatchKg: 2.4,
      steps: [
        { do: 'mix', minutes: 8 },
        { do: 'bulk', minutes: 20 },
      ],
    },
  ],
  products: [
    {
      id: 'field-loaf',
      dough: 'country',
      pieceG: 800,
      piecesPerTray: 4,
      steps: [
        { do: 'shape', minutesPerTray: 6 },
        { do: 'proof', minutes: [40, 60], temperatureC: [28, 32] },
        { do: 'bake', minutes: [30, 35], temperatureC: [230, 240], load: 1, unload: 1, steam: true },
        { do: 'cool', minutes: 20 },
      ],
    },
    {
      id: 'milk-bun',
      dough: 'milk',
      pieceG: 60,
      piecesPerTray: 20,
      steps: [
        { do: 'shape', minutesPerTray: 5 },
        { do: 'rest', minutes: 10 },
        { do: 'proof', minutes: [30, 50] },
        { do: 'bake', minutes: [12, 14], temperatureC: [190, 200], load: 1, unload: 1 },
        { do: 'cool', minutes: [10, 30] },
        { do: 'finish', minutesPerTray: 4 },
      ],
    },
  ],
  orders: [
    { product: 'field-loaf', pieces: 8, readyBy: '05:29' },
    { product: 'milk-bun', pieces: 20, readyBy: '06:00' },
    { product: 'milk-bun', pieces: 15, readyBy: '05:50' },
  ],
});

const loaf1 = ofTray('field-loaf-1', 'field-loaf', 'country-1');
const loaf2 = ofTray('field-loaf-2', 'field-loaf', 'country-1');
const bun1 = ofTray('milk-bun-1', 'milk-bun', 'milk-1');
const bun2 = ofTray('milk-bun-2', 'milk-bun', 'milk-1');

/** Local time of a minute, by hand: the day has no clock change and starts at 03:00 summer time. */
function lisbon(minute: number): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `2026-05-16T${two(3 + Math.floor(minute / 60))}:${two(minute % 60)}:00+01:00`;
}

const tasks = [
  ofBatch('country-1', 'mix', 0, 10, at('bowl', 'big'), [by('ana', 'mix', 0, 4)]),
  ofBatch('country-1', 'bulk', 10, 40),
  ofBatch('country-1', 'fold', 40, 45, at('bench', 'bench'), [by('ana', 'fold', 40, 45)]),
  loaf1('shape', 45, 51, at('bench', 'bench'), [by('ana', 'shape', 45, 51)]),
  loaf1('proof', 51, 91, at('shelf', 'warm-box', 1)),
  loaf1('bake', 92, 122, at('deck', 'hearth/upper', 1), [by('bem', 'load', 91, 92), by('bem', 'unload', 122, 123)]),
  loaf1('cool', 123, 143, at('rack', 'cooling-rack', 1)),
  loaf2('shape', 51, 57, at('bench', 'bench'), [by('ana', 'shape', 51, 57)]),
  loaf2('proof', 57, 97, at('shelf', 'warm-box', 2)),
  loaf2('bake', 98, 128, at('deck', 'hearth/lower', 1), [by('bem', 'load', 97, 98), by('bem', 'unload', 128, 129)]),
  loaf2('cool', 129, 149, at('rack', 'cooling-rack', 2)),
  ofBatch('milk-1', 'mix', 67, 75, at('bowl', 'small'), [by('ana', 'mix', 67, 75)]),
  ofBatch('milk-1', 'bulk', 75, 95),
  bun1('shape', 95, 100, at('bench', 'bench', 1), [by('ana', 'shape', 95, 100)]),
  bun1('rest', 100, 110),
  bun1('proof', 110, 149, at('shelf', 'warm-box', 1)),
  bun1('bake', 150, 162, at('deck', 'hearth/lower', 1), [by('ana', 'load', 149, 150), by('ana', 'unload', 162, 163)]),
  bun1('cool', 163, 173, at('rack', 'cooling-rack', 1)),
  bun1('finish', 173, 177, at('bench', 'bench', 1), [by('ana', 'finish', 173, 177)]),
  bun2('shape', 100, 105, at('bench', 'bench', 1), [by('ana', 'shape', 100, 105)]),
  bun2('rest', 105, 115),
  bun2('proof', 115, 150, at('shelf', 'warm-box', 2)),
  bun2('bake', 151, 163, at('deck', 'hearth/lower', 2), [by('ana', 'load', 150, 151), by('ana', 'unload', 163, 164)]),
  bun2('cool', 164, 177, at('rack', 'cooling-rack', 2)),
  bun2('finish', 177, 181, at('bench', 'bench', 1), [by('ana', 'finish', 177, 181)]),
];

/** The plan with everything stated. */
export const plan: WrittenPlan = {
  plan: 1,
  scenario: { name: 'Market morning', date: '2026-05-16', timeZone: 'Europe/Lisbon', fingerprint: fingerprint(scenario) },
  day: { startsAt: lisbon(0), endsAt: lisbon(360), minutes: 360 },
  holds: 'feasible',
  score: {
    cost: 351,
    lowerBound: 300,
    gap: 0.145299,
    lateTrayMinutes: 8,
    leftOutTrays: 0,
    finishMinute: 181,
    temperatureChanges: 1,
    firstHandsOnMinute: 0,
  },
  tasks: tasks.map((task) => ({ ...task, startsAt: lisbon(task.start), endsAt: lisbon(task.end) })),
  decks: [
    { id: 'hearth/upper', setPoints: [{ start: 45, end: 88, fromC: 20, toC: 235 }] },
    {
      id: 'hearth/lower',
      setPoints: [
        { start: 50, end: 93, fromC: 20, toC: 235 },
        { start: 128, end: 148, fromC: 235, toC: 195 },
      ],
    },
  ],
  batches: [
    {
      id: 'country-1',
      dough: 'country',
      kg: 6.4,
      trays: [
        { id: 'field-loaf-1', product: 'field-loaf' },
        { id: 'field-loaf-2', product: 'field-loaf' },
      ],
    },
    {
      id: 'milk-1',
      dough: 'milk',
      kg: 2.4,
      trays: [
        { id: 'milk-bun-1', product: 'milk-bun' },
        { id: 'milk-bun-2', product: 'milk-bun' },
      ],
    },
  ],
  orders: [
    { product: 'field-loaf', pieces: 8, readyBy: lisbon(149), readyAt: lisbon(149), lateMinutes: 0 },
    { product: 'milk-bun', pieces: 20, readyBy: lisbon(180), readyAt: lisbon(181), lateMinutes: 1 },
    { product: 'milk-bun', pieces: 15, readyBy: lisbon(170), readyAt: lisbon(177), lateMinutes: 7 },
  ],
  leftOut: [],
};

/** The same plan stating nothing but tasks and set points. */
export const bare: WrittenPlan = { tasks, decks: plan.decks };
