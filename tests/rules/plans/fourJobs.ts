// Four doughs one after the other through one bowl, one proofer shelf and one deck, with no waiting anywhere: minutes of mix,
// proof and bake A 10/60/25, B 15/45/20, C 10/30/35, D 20/40/15. The least makespan is 200: the shelf must be busy
// 60 + 45 + 30 + 40 = 175 minutes, not before the shortest mix (10), and after it the shortest bake (15) is still to come.
// The instance and the proof are made for this test and can be checked by hand.
import { type Scenario, scenarioSchema } from '../../../src/model/scenario.ts';
import type { WrittenPlan } from '../../../src/model/writtenPlan.ts';
import { at, ofBatch, ofTray } from './writing.ts';

const JOBS = [
  { id: 'a', mix: 10, proof: 60, bake: 25 },
  { id: 'b', mix: 15, proof: 45, bake: 20 },
  { id: 'c', mix: 10, proof: 30, bake: 35 },
  { id: 'd', mix: 20, proof: 40, bake: 15 },
];

export const scenario: Scenario = scenarioSchema.parse({
  scenario: 1,
  name: 'Four jobs',
  date: '2026-01-05',
  timeZone: 'UTC',
  day: { from: '00:00', until: '04:00' },
  equipment: {
    ovens: [{ id: 'oven', heatUpCPerMinute: 1, coolDownCPerMinute: 1, decks: [{ id: 'deck', trays: 1, startsAtC: 200 }] }],
    proofers: [{ id: 'shelf', shelves: 1, temperatureC: 30 }],
    mixers: [{ id: 'bowl', bowlKg: 10 }],
  },
  doughs: JOBS.map(({ id, mix }) => ({ id: `dough-${id}`, steps: [{ do: 'mix', minutes: mix }] })),
  products: JOBS.map(({ id, proof, bake }) => ({
    id,
    dough: `dough-${id}`,
    pieceG: 100,
    piecesPerTray: 10,
    steps: [
      { do: 'proof', minutes: proof },
      { do: 'bake', minutes: bake, temperatureC: 200 },
    ],
  })),
  orders: JOBS.map(({ id }) => ({ product: id, pieces: 10, readyBy: '04:00' })),
});

const WRITTEN = [
  { id: 'a', mix: [0, 10], proof: [10, 70], bake: [70, 95] },
  { id: 'b', mix: [55, 70], proof: [70, 115], bake: [115, 135] },
  { id: 'c', mix: [105, 115], proof: [115, 145], bake: [145, 180] },
  { id: 'd', mix: [125, 145], proof: [145, 185], bake: [185, 200] },
] as const;

/** The order A, B, C, D, which reaches 200. */
export const plan: WrittenPlan = {
  tasks: WRITTEN.flatMap(({ id, mix, proof, bake }) => {
    const tray = ofTray(`${id}-1`, id, `dough-${id}-1`);
    return [
      ofBatch(`dough-${id}-1`, 'mix', mix[0], mix[1], at('bowl', 'bowl')),
      tray('proof', proof[0], proof[1], at('shelf', 'shelf')),
      tray('bake', bake[0], bake[1], at('deck', 'oven/deck')),
    ];
  }),
  decks: [],
};
