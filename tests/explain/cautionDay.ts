// A small day and its tasks, built for the caution tests.
import type { HandsOn, Task } from '../../src/model/plan.ts';
import { type Scenario, type ScenarioInput, scenarioSchema } from '../../src/model/scenario.ts';

const PLAIN: ScenarioInput = {
  scenario: 1,
  name: 'A day for cautions',
  date: '2026-05-16',
  timeZone: 'Etc/UTC',
  day: { from: '00:00', until: '23:00' },
  equipment: {
    ovens: [{ id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks: [{ id: 'deck', trays: 4 }] }],
    proofers: [{ id: 'proofer', shelves: 4, temperatureC: 28 }],
    retarders: [
      { id: 'cold', shelves: 4, temperatureC: 4 },
      { id: 'cool', shelves: 4, temperatureC: 10 },
    ],
    mixers: [{ id: 'spiral', bowlKg: 20 }],
  },
  people: [{ id: 'ann', name: 'Ann', from: '00:00', until: '23:00' }],
  doughs: [{ id: 'dough', steps: [{ do: 'mix', minutes: 10 }] }],
  products: [
    {
      id: 'bun',
      name: 'Bun',
      dough: 'dough',
      pieceG: 60,
      piecesPerTray: 20,
      steps: [
        { do: 'shape', minutesPerTray: 10 },
        { do: 'proof', minutes: 60 },
        { do: 'bake', minutes: 16, temperatureC: 200 },
      ],
    },
  ],
  orders: [{ product: 'bun', pieces: 20, readyBy: '20:00' }],
};

/** The plain day with parts replaced. */
export function dayWith(parts: Partial<ScenarioInput>): Scenario {
  return scenarioSchema.parse({ ...PLAIN, ...parts });
}

/** The plain day with its one product changed. */
export function dayWithProduct(parts: object): Scenario {
  return scenarioSchema.parse({ ...PLAIN, products: [{ ...PLAIN.products[0], ...parts }] });
}

/** Minutes from midnight: the plain day begins at 00:00. */
export function at(clock: string): number {
  const [hours = Number.NaN, minutes = Number.NaN] = clock.split(':').map(Number);
  return hours * 60 + minutes;
}

/** One tray task of the bun. */
export function trayTask(step: Task['step'], start: number, end: number, parts: Partial<Task> = {}): Task {
  const instants = { startsAt: '2026-05-16T00:00:00+00:00', endsAt: '2026-05-16T00:00:00+00:00' };
  return {
    id: `bun-1/${step}`,
    step,
    product: 'bun',
    batch: 'dough-1',
    tray: 'bun-1',
    start,
    end,
    ...instants,
    handsOn: [],
    ...parts,
  };
}

/** Work of one person, as a shape task. */
export function workOf(person: string, start: number, end: number): Task {
  const handsOn: HandsOn[] = [{ person, start, end, for: 'shape' }];
  return trayTask('shape', start, end, { handsOn });
}
