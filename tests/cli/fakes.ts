// Surroundings that remember what was written, and parts that answer at once. For tests of the command without the planner.
import type { Parts } from '../../src/cli/parts.ts';
import type { Stream, Surroundings } from '../../src/cli/surroundings.ts';
import { type ScenarioInput, scenarioSchema } from '../../src/model/scenario.ts';
import { sampleHowSure } from './sampleHowSure.ts';
import { finePlan } from './samplePlan.ts';

export type Heard = Stream & { readonly text: () => string };

export function hearing(kind: Partial<Stream> = {}): Heard {
  const texts: string[] = [];
  return {
    write: (text) => {
      texts.push(text);
    },
    settled: async () => true,
    isTerminal: false,
    hasColours: false,
    text: () => texts.join(''),
    ...kind,
  };
}

export function surroundingsFor(
  changes: Partial<Surroundings> = {},
): Surroundings & { readonly out: Heard; readonly err: Heard } {
  return {
    readStdin: async () => new TextEncoder().encode('from standard input'),
    now: () => 0,
    startedAtMs: 0,
    stoppable: (work) => work(() => false),
    pause: async () => {},
    processors: 1,
    isDebugging: false,
    instant: () => '2026-05-15T20:00:00.000Z',
    env: {},
    ...changes,
    out: hearing(changes.out),
    err: hearing(changes.err),
  };
}

const smallest: ScenarioInput = {
  scenario: 1,
  name: 'Smallest',
  date: '2026-05-16',
  timeZone: 'Europe/Lisbon',
  day: { from: '03:00', until: '12:00' },
  equipment: { ovens: [{ id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks: [{ id: 'top', trays: 2 }] }] },
  doughs: [{ id: 'white', steps: [{ do: 'mix', minutes: 10 }] }],
  products: [
    { id: 'roll', dough: 'white', pieceG: 60, piecesPerTray: 24, steps: [{ do: 'bake', minutes: 15, temperatureC: 200 }] },
  ],
  orders: [{ product: 'roll', pieces: 24, readyBy: '07:00' }],
};

export const smallestScenario = scenarioSchema.parse(smallest);

export function partsFor(changes: Partial<Parts> = {}): Parts {
  return {
    readScenario: () => ({ ok: true, value: smallestScenario }),
    readPlan: () => ({ ok: true, value: finePlan }),
    readWrittenPlan: () => ({ ok: true, value: { tasks: [], decks: [] } }),
    readHappened: () => ({ ok: true, value: { happened: [], keep: [] } }),
    placedInHappened: (_text, errors) => errors,
    replan: async (scenario, plan, { now }) => ({
      ok: true,
      answer: { now, isUnchanged: true, plan, scenario, changes: [], movedTasks: 0, movePrice: 2, movesCost: 0, told: [] },
    }),
    makePlan: async () => finePlan,
    defaultEffort: 777,
    judge: () => ({
      breaches: [],
      figures: {
        cost: 1,
        lateTrayMinutes: 0,
        leftOutTrays: 0,
        finishMinute: 200,
        temperatureChanges: 0,
        firstHandsOnMinute: 10,
        orders: [],
      },
    }),
    drawPlan: () => ['<svg>1</svg>'],
    howSure: async () => sampleHowSure,
    carefulScenario: (scenario) => ({ ...scenario, name: 'Careful' }),
    ...changes,
  };
}
