// A small plan made by hand for what the command prints: one order on time, one late, one left out, two decks, two people.
// It is not a plan that works out; nothing here is judged.
import { type Plan, planSchema } from '../../src/model/plan.ts';

function at(clock: string): string {
  return `2026-05-16T${clock}:00+01:00`;
}

function bake(tray: string, product: string, start: number, end: number, deck: string): unknown {
  const handsOn = [{ person: 'ida', start: start - 1, end: start, for: 'load' }];
  const place = { kind: 'deck', id: deck, position: 1 };
  return {
    id: `${tray}/bake`,
    step: 'bake',
    product,
    batch: 'white-1',
    tray,
    start,
    end,
    startsAt: at('04:00'),
    endsAt: at('04:00'),
    place,
    handsOn,
  };
}

const sample = {
  plan: 1,
  scenario: { name: 'A short morning', date: '2026-05-16', timeZone: 'Europe/Lisbon', fingerprint: 'sha256:0' },
  day: { startsAt: '2026-05-15T22:00:00+01:00', endsAt: at('08:00'), minutes: 600 },
  stopped: 'effort',
  holds: 'partial',
  score: {
    cost: 6012.5,
    lowerBound: 5800,
    gap: 0.035343,
    lateTrayMinutes: 75,
    leftOutTrays: 1,
    finishMinute: 555,
    temperatureChanges: 1,
    firstHandsOnMinute: 70,
  },
  bound: { argument: 'deck-work', says: 'the decks cannot take more trays in the day.' },
  tasks: [
    {
      id: 'white-1/mix',
      step: 'mix',
      batch: 'white-1',
      start: 70,
      end: 82,
      startsAt: '2026-05-15T23:10:00+01:00',
      endsAt: '2026-05-15T23:22:00+01:00',
      place: { kind: 'bowl', id: 'spiral', position: 1 },
      handsOn: [{ person: 'ida', start: 70, end: 82, for: 'mix' }],
    },
    bake('roll-1', 'roll', 420, 435, 'oven/top'),
    bake('stick-1', 'stick', 530, 555, 'oven/top'),
  ],
  decks: [
    {
      id: 'oven/top',
      setPoints: [
        { start: 380, end: 416, fromC: 20, toC: 200 },
        { start: 440, end: 450, fromC: 200, toC: 240 },
      ],
    },
    { id: 'oven/bottom', setPoints: [] },
  ],
  batches: [
    {
      id: 'white-1',
      dough: 'white',
      kg: 6.5,
      trays: [
        { id: 'roll-1', product: 'roll' },
        { id: 'stick-1', product: 'stick' },
      ],
    },
  ],
  orders: [
    { product: 'stick', pieces: 10, readyBy: at('06:00'), readyAt: at('07:15'), lateMinutes: 75 },
    { product: 'roll', pieces: 24, readyBy: at('05:30'), readyAt: at('05:15'), lateMinutes: 0 },
    { product: 'tin', pieces: 6, readyBy: at('07:00'), readyAt: null, lateMinutes: null },
  ],
  leftOut: [
    {
      product: 'tin',
      trays: 1,
      reasons: [
        { rule: 'SHELF_CAPACITY', says: 'No shelf is free from 03:00 to 05:00.', wouldFitIf: 'the proofer had one shelf more.' },
      ],
    },
  ],
  bakehouse: {
    mixers: [{ id: 'spiral', name: 'Spiral', bowlKg: 12 }],
    benchPlaces: 1,
    proofers: [],
    retarders: [],
    decks: [
      { id: 'oven/top', name: 'Top deck', trays: 2, startsAtC: 20, loading: 'any-time' },
      { id: 'oven/bottom', name: 'Bottom deck', trays: 2, startsAtC: 20, loading: 'any-time' },
    ],
    coolingRackTrays: null,
    people: [
      { id: 'ida', name: 'Ida', hours: { start: 0, end: 600 }, breaks: [] },
      { id: 'jon', name: 'Jon', hours: { start: 0, end: 600 }, breaks: [] },
    ],
    doughs: [{ id: 'white', name: 'White dough' }],
    products: [
      { id: 'roll', name: 'Seed roll', dough: 'white', piecesPerTray: 24, pieceG: 60 },
      { id: 'stick', name: 'Long stick', dough: 'white', piecesPerTray: 10, pieceG: 300 },
      { id: 'tin', name: 'Tin loaf', dough: 'white', piecesPerTray: 6, pieceG: 800 },
    ],
  },
  cautions: [{ code: 'HOT', says: 'Ovens and trays are hot.', source: 'common practice' }],
  solver: { seed: 1, effort: 2000, seconds: 1.94, version: '0.1.0', notes: [] },
};

export const samplePlan: Plan = planSchema.parse(sample);

/** The same morning with nothing late and nothing left out. */
export const finePlan: Plan = {
  ...samplePlan,
  stopped: 'proved',
  holds: 'optimal',
  score: { ...samplePlan.score, cost: 555, lowerBound: 555, gap: 0, lateTrayMinutes: 0, leftOutTrays: 0 },
  orders: samplePlan.orders.map((order) => ({
    ...order,
    readyAt: order.readyAt ?? at('06:50'),
    lateMinutes: 0,
    readyBy: at('07:30'),
  })),
  leftOut: [],
};
