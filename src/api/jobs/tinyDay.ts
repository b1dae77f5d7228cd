// A day of one tray, planned to see whether planning works. Used by the threads for /healthz.
import type { Scenario } from '../../model/scenario.ts';
import { readScenarioValue } from '../../read/readScenario.ts';

const ONE_TRAY = {
  scenario: 1,
  name: 'One tray',
  date: '2026-01-05',
  timeZone: 'UTC',
  day: { from: '04:00', until: '08:00' },
  equipment: { ovens: [{ id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks: [{ id: 'deck', trays: 1 }] }] },
  doughs: [{ id: 'dough', steps: [{ do: 'mix', minutes: 10 }] }],
  products: [
    {
      id: 'roll',
      dough: 'dough',
      pieceG: 60,
      piecesPerTray: 10,
      steps: [
        { do: 'shape', minutesPerTray: 5 },
        { do: 'bake', minutes: 15, temperatureC: 200 },
      ],
    },
  ],
  orders: [{ product: 'roll', pieces: 10, readyBy: '07:00' }],
};

export function tinyDay(): Scenario {
  const reading = readScenarioValue(ONE_TRAY);
  if (!reading.ok) throw new Error(`The day of one tray cannot be read: ${reading.errors.map(({ says }) => says).join(' ')}`);
  return reading.value;
}
