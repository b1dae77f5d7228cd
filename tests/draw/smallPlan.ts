// A plan written by hand, a few tasks at a time, for tests that look at one sentence or one bar.
import { instantAt } from '../../src/model/clock.ts';
import type { Bakehouse, Plan, Task } from '../../src/model/plan.ts';

const CLOCK = {
  timeZone: 'Europe/Lisbon',
  date: '2026-05-16',
  startEpochMs: Date.parse('2026-05-16T03:00:00+01:00'),
  minutes: 540,
};

type TaskText = Omit<Task, 'startsAt' | 'endsAt' | 'handsOn' | 'id' | 'batch'> & Partial<Pick<Task, 'handsOn' | 'batch'>>;

const BAKEHOUSE: Bakehouse = {
  mixers: [{ id: 'spiral', name: 'Spiral', bowlKg: 12 }],
  benchPlaces: 2,
  proofers: [{ id: 'proofer', name: 'Proofer', places: 8, temperatureC: 32 }],
  retarders: [{ id: 'cold', name: 'Cold room', places: 8, temperatureC: 4 }],
  decks: [
    { id: 'oven/top', name: 'Top', trays: 2, startsAtC: 20, loading: 'any-time' },
    { id: 'rack/chamber', name: 'Rack oven', trays: 15, startsAtC: 230, loading: 'together' },
  ],
  coolingRackTrays: 16,
  people: [
    { id: 'rosa', name: 'Rosa', hours: { start: 0, end: 480 }, breaks: [{ start: 240, end: 260 }] },
    { id: 'teo', name: 'Teo', hours: { start: 120, end: 540 }, breaks: [] },
  ],
  doughs: [{ id: 'wheat', name: 'Wheat' }],
  products: [
    { id: 'tin', name: 'Seeded tin', dough: 'wheat', piecesPerTray: 10, pieceG: 500 },
    { id: 'roll', name: 'Milk roll', dough: 'wheat', piecesPerTray: 20, pieceG: 60 },
  ],
};

/** A plan of the given tasks; everything not given is plain. */
export function smallPlan(tasks: readonly TaskText[], rest: Partial<Plan> = {}): Plan {
  const full = tasks.map((task) => ({
    handsOn: [],
    batch: 'wheat-1',
    ...task,
    id: `${task.tray ?? task.batch ?? 'wheat-1'}/${task.step}`,
    startsAt: instantAt(CLOCK, task.start),
    endsAt: instantAt(CLOCK, task.end),
  }));
  const numbered = full.map((task, index) => {
    const earlier = full.slice(0, index).filter(({ id }) => id === task.id).length;
    return earlier === 0 ? task : { ...task, id: `${task.id}-${earlier + 1}` };
  });
  return {
    plan: 1,
    scenario: { name: 'By hand', date: CLOCK.date, timeZone: CLOCK.timeZone, fingerprint: 'sha256:by-hand' },
    day: { startsAt: instantAt(CLOCK, 0), endsAt: instantAt(CLOCK, CLOCK.minutes), minutes: CLOCK.minutes },
    stopped: 'proved',
    holds: 'optimal',
    score: {
      cost: 1,
      lowerBound: 1,
      gap: 0,
      lateTrayMinutes: 0,
      leftOutTrays: 0,
      finishMinute: 0,
      temperatureChanges: 0,
      firstHandsOnMinute: 0,
    },
    bound: { argument: 'LONGEST_CHAIN', says: 'by hand' },
    tasks: numbered,
    decks: [],
    batches: [{ id: 'wheat-1', dough: 'wheat', kg: 8.2, trays: [] }],
    orders: [],
    leftOut: [],
    bakehouse: BAKEHOUSE,
    cautions: [],
    solver: { seed: 1, effort: 1, seconds: 0, version: '0.1.0', notes: [] },
    ...rest,
  };
}
