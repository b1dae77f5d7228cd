// A day of buns in Prague, the smallest that has hands, a proof and a wait: for tests of what is kept and posted.

import { BUNS_ALONE } from '../../../src/api/openapi/exampleDays.ts';
import type { Scenario } from '../../../src/model/scenario.ts';
import { readScenarioValue } from '../../../src/read/readScenario.ts';

export const BUNS_YAML = `# Written on a Tuesday.
scenario: 1
name: Buns alone
date: 2026-04-08
timeZone: Europe/Prague
day: { from: "04:00", until: "09:00" }
equipment:
  ovens:
    - { id: oven, heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks: [{ id: deck, trays: 2 }] }
people:
  - { id: ida, from: "04:00", until: "09:00" }
doughs:
  - { id: bun-dough, steps: [{ do: mix, minutes: 12 }, { do: bulk, minutes: 45 }] }
products:
  - id: bun
    dough: bun-dough
    pieceG: 90
    piecesPerTray: 20
    steps: [{ do: shape, minutesPerTray: 10 }, { do: bake, minutes: 16, temperatureC: 200 }]
orders:
  - { product: bun, pieces: 40, readyBy: "08:00" }
`;

/** The day of the examples, with somebody to bake and twice the buns. */
const BUNS = {
  ...BUNS_ALONE,
  people: [{ id: 'ida', from: '04:00', until: '09:00' }],
  orders: [{ product: 'bun', pieces: 40, readyBy: '08:00' }],
};

/** The day with other words in it; throws with every error when it does not read. */
export function buns(over: Readonly<Record<string, unknown>> = {}): Scenario {
  const reading = readScenarioValue({ ...BUNS, ...over });
  if (!reading.ok) throw new Error(JSON.stringify(reading.errors));
  return reading.value;
}
