// A small morning made by hand: one batch of rye, three loaves, two people, two decks. Minutes count from 03:00. For tests of what
// has happened by a minute of it: every number expected there was worked out from the times below.

import { clockOf, instantAt } from '../../../src/model/clock.ts';
import { fingerprint } from '../../../src/model/fingerprint.ts';
import { type HandsOn, type Place, type Plan, planSchema, type Task } from '../../../src/model/plan.ts';
import { type ScenarioInput, scenarioSchema } from '../../../src/model/scenario.ts';

const input: ScenarioInput = {
  scenario: 1,
  name: 'Three loaves',
  date: '2026-05-16',
  timeZone: 'Europe/Lisbon',
  day: { from: '03:00', until: '12:00' },
  equipment: {
    ovens: [
      {
        id: 'oven',
        heatUpCPerMinute: 5,
        coolDownCPerMinute: 2,
        decks: [
          { id: 'top', trays: 2, startsAtC: 230 },
          { id: 'low', trays: 2, startsAtC: 20 },
        ],
      },
    ],
    proofers: [{ id: 'proofer', shelves: 3, temperatureC: 28 }],
    mixers: [{ id: 'spiral', bowlKg: 12 }],
    bench: { places: 2 },
    coolingRack: { trays: 6 },
  },
  people: [
    { id: 'ada', name: 'Ada', from: '03:00', until: '12:00' },
    { id: 'ben', name: 'Ben', from: '03:00', until: '12:00' },
  ],
  doughs: [
    {
      id: 'rye-dough',
      steps: [
        { do: 'mix', minutes: 10, handsOn: 4 },
        { do: 'bulk', minutes: [30, 50] },
      ],
    },
  ],
  products: [
    {
      id: 'rye',
      name: 'Rye',
      dough: 'rye-dough',
      pieceG: 900,
      piecesPerTray: 4,
      steps: [
        { do: 'shape', minutesPerTray: 10 },
        { do: 'proof', minutes: [40, 60] },
        { do: 'bake', minutes: 30, temperatureC: [225, 235], load: 2, unload: 1 },
        { do: 'cool', minutes: 20 },
      ],
    },
  ],
  orders: [
    { product: 'rye', pieces: 8, readyBy: '07:00' },
    { product: 'rye', pieces: 4, readyBy: '08:00' },
  ],
};

export const threeLoaves = scenarioSchema.parse(input);

const clock = clockOf(threeLoaves);
const BATCH = 'rye-dough-1';

function task(id: string, start: number, end: number, place: Place | null, handsOn: readonly HandsOn[] = []): Task {
  const [owner = '', step = ''] = id.split('/');
  const ofTray = owner === BATCH ? {} : { product: 'rye', tray: owner };
  return planSchema.shape.tasks.element.parse({
    id,
    step,
    ...ofTray,
    batch: BATCH,
    start,
    end,
    startsAt: instantAt(clock, start),
    endsAt: instantAt(clock, end),
    ...(place === null ? {} : { place }),
    handsOn,
  });
}

const at = (kind: Place['kind'], id: string, position: number): Place => ({ kind, id, position });
const by = (person: string, what: HandsOn['for'], start: number, end: number): HandsOn => ({ person, start, end, for: what });

function bake(id: string, start: number, place: Place, person: string): Task {
  return task(id, start, start + 30, place, [by(person, 'load', start - 2, start), by(person, 'unload', start + 30, start + 31)]);
}

const tasks = [
  task('rye-dough-1/mix', 0, 10, at('bowl', 'spiral', 1), [by('ada', 'mix', 0, 4)]),
  task('rye-dough-1/bulk', 10, 45, null),
  task('rye-1/shape', 45, 55, at('bench', 'bench', 1), [by('ada', 'shape', 45, 55)]),
  task('rye-2/shape', 45, 55, at('bench', 'bench', 2), [by('ben', 'shape', 45, 55)]),
  task('rye-3/shape', 55, 65, at('bench', 'bench', 1), [by('ada', 'shape', 55, 65)]),
  task('rye-1/proof', 55, 100, at('shelf', 'proofer', 1)),
  task('rye-2/proof', 55, 100, at('shelf', 'proofer', 2)),
  task('rye-3/proof', 65, 110, at('shelf', 'proofer', 3)),
  bake('rye-1/bake', 102, at('deck', 'oven/top', 1), 'ada'),
  bake('rye-2/bake', 102, at('deck', 'oven/top', 2), 'ben'),
  bake('rye-3/bake', 112, at('deck', 'oven/low', 1), 'ada'),
  task('rye-1/cool', 133, 153, at('rack', 'cooling-rack', 1)),
  task('rye-2/cool', 133, 153, at('rack', 'cooling-rack', 2)),
  task('rye-3/cool', 143, 163, at('rack', 'cooling-rack', 3)),
];

/** The plan of it. The low deck heats up from 04:00 to 04:42. */
export const threeLoavesPlan: Plan = planSchema.parse({
  plan: 1,
  scenario: {
    name: threeLoaves.name,
    date: threeLoaves.date,
    timeZone: threeLoaves.timeZone,
    fingerprint: fingerprint(threeLoaves),
  },
  day: { startsAt: instantAt(clock, 0), endsAt: instantAt(clock, clock.minutes), minutes: clock.minutes },
  stopped: 'effort',
  holds: 'feasible',
  score: {
    cost: 163,
    lowerBound: 0,
    gap: 1,
    lateTrayMinutes: 0,
    leftOutTrays: 0,
    finishMinute: 163,
    temperatureChanges: 0,
    firstHandsOnMinute: 0,
  },
  bound: { argument: 'none', says: 'nothing is known.' },
  tasks,
  decks: [
    { id: 'oven/top', setPoints: [] },
    { id: 'oven/low', setPoints: [{ start: 60, end: 102, fromC: 20, toC: 230 }] },
  ],
  batches: [
    { id: BATCH, dough: 'rye-dough', kg: 10.8, trays: ['rye-1', 'rye-2', 'rye-3'].map((id) => ({ id, product: 'rye' })) },
  ],
  orders: [
    { product: 'rye', pieces: 8, readyBy: instantAt(clock, 240), readyAt: instantAt(clock, 153), lateMinutes: 0 },
    { product: 'rye', pieces: 4, readyBy: instantAt(clock, 300), readyAt: instantAt(clock, 163), lateMinutes: 0 },
  ],
  leftOut: [],
  bakehouse: {
    mixers: [{ id: 'spiral', name: 'spiral', bowlKg: 12 }],
    benchPlaces: 2,
    proofers: [{ id: 'proofer', name: 'Proofer', places: 3, temperatureC: 28 }],
    retarders: [],
    decks: [
      { id: 'oven/top', name: 'Top deck', trays: 2, startsAtC: 230, loading: 'any-time' },
      { id: 'oven/low', name: 'Low deck', trays: 2, startsAtC: 20, loading: 'any-time' },
    ],
    coolingRackTrays: 6,
    people: [
      { id: 'ada', name: 'Ada', hours: { start: 0, end: 540 }, breaks: [] },
      { id: 'ben', name: 'Ben', hours: { start: 0, end: 540 }, breaks: [] },
    ],
    doughs: [{ id: 'rye-dough', name: 'Rye dough' }],
    products: [{ id: 'rye', name: 'Rye', dough: 'rye-dough', piecesPerTray: 4, pieceG: 900 }],
  },
  cautions: [],
  solver: { seed: 1, effort: 1, seconds: 0, version: 'by hand', notes: [] },
});
