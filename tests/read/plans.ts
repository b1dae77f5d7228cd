// A small plan as this program writes it, and one written by hand, both for the scenario of docs/scenario.md.
import type { Plan } from '../../src/model/plan.ts';

export const PLAN: Plan = {
  plan: 1,
  scenario: { name: 'Harbour bakehouse, Saturday', date: '2026-05-16', timeZone: 'Europe/Lisbon', fingerprint: 'sha256:0' },
  day: { startsAt: '2026-05-15T20:00:00+01:00', endsAt: '2026-05-16T10:00:00+01:00', minutes: 840 },
  stopped: 'effort',
  holds: 'partial',
  score: {
    cost: 15_600,
    lowerBound: 500,
    gap: 0.967949,
    lateTrayMinutes: 0,
    leftOutTrays: 3,
    finishMinute: 600,
    temperatureChanges: 0,
    firstHandsOnMinute: 420,
  },
  bound: { argument: 'longest-path', says: 'No product is made faster.' },
  tasks: [
    {
      id: 'orange-1/mix',
      step: 'mix',
      batch: 'orange-1',
      start: 0,
      end: 14,
      startsAt: '2026-05-15T20:00:00+01:00',
      endsAt: '2026-05-15T20:14:00+01:00',
      place: { kind: 'bowl', id: 'spiral', position: 1 },
      handsOn: [{ person: 'duarte', start: 0, end: 5, for: 'mix' }],
    },
  ],
  decks: [{ id: 'stone/upper', setPoints: [{ start: 400, end: 450, fromC: 20, toC: 200 }] }],
  batches: [{ id: 'orange-1', dough: 'orange', kg: 3.375, trays: [{ id: 'orange-bun-1', product: 'orange-bun' }] }],
  orders: [{ product: 'orange-bun', pieces: 30, readyBy: '2026-05-16T07:30:00+01:00', readyAt: null, lateMinutes: null }],
  leftOut: [{ product: 'orange-bun', trays: 3, reasons: [{ rule: 'SHELF_CAPACITY', says: 'The shelves are full.' }] }],
  bakehouse: {
    mixers: [{ id: 'spiral', name: 'spiral', bowlKg: 20 }],
    benchPlaces: 2,
    proofers: [{ id: 'warm', name: 'warm', places: 10, temperatureC: 30 }],
    retarders: [{ id: 'cold', name: 'cold', places: 12, temperatureC: 4 }],
    decks: [{ id: 'stone/upper', name: 'upper', trays: 2, startsAtC: 20, loading: 'any-time' }],
    coolingRackTrays: null,
    people: [{ id: 'duarte', name: 'duarte', hours: { start: 0, end: 780 }, breaks: [] }],
    doughs: [{ id: 'orange', name: 'orange' }],
    products: [{ id: 'orange-bun', name: 'Orange bun', dough: 'orange', piecesPerTray: 15, pieceG: 75 }],
  },
  cautions: [{ code: 'HOT', says: 'Trays and decks are hot.', source: 'common practice' }],
  solver: { seed: 1, effort: 2000, seconds: 1.9, version: '0.1.0', notes: [] },
};

export const WRITTEN = `# by hand
tasks:
  - { step: mix, batch: orange-1, start: "-1d 20:00", end: "-1d 20:14", place: { kind: bowl, id: spiral },
      handsOn: [{ person: duarte, start: "-1d 20:00", end: 5, for: mix }] }
  - { step: bulk, batch: orange-1, start: 14, end: "03:20", place: { kind: retarder, id: cold, position: 3 } }
  - { step: shape, batch: orange-1, tray: orange-bun-1, product: orange-bun, start: "03:20", end: "03:31" }
decks:
  - id: stone/upper
    setPoints:
      - { start: "04:00", end: "04:50", fromC: 20, toC: 200 }
score: { temperatureChanges: 0 }
`;
