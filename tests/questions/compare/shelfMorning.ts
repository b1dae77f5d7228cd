// A morning bound by its shelves, small enough to be decided: rolls that proof for long and bake quickly, one oven, no people. With
// more shelves the oven takes over.
import { type Scenario, scenarioSchema } from '../../../src/model/scenario.ts';

export function shelfMorning(shelves: number, orders: readonly number[] = [6]): Scenario {
  return scenarioSchema.parse({
    scenario: 1,
    name: 'A morning bound by shelves',
    date: '2026-05-16',
    timeZone: 'Europe/Lisbon',
    day: { from: '04:00', until: '08:00' },
    equipment: {
      ovens: [
        {
          id: 'oven',
          name: 'Oven',
          heatUpCPerMinute: 6,
          coolDownCPerMinute: 3,
          decks: [{ id: 'deck', name: 'Deck', trays: 2, startsAtC: 220 }],
        },
      ],
      proofers: [{ id: 'proofer', name: 'Proofer', shelves, temperatureC: 30 }],
      bench: { places: 1 },
    },
    doughs: [{ id: 'white', maxBatchKg: 1, steps: [{ do: 'bulk', minutes: 20 }] }],
    products: [
      {
        id: 'roll',
        name: 'Roll',
        dough: 'white',
        pieceG: 50,
        piecesPerTray: 20,
        steps: [
          { do: 'shape', minutesPerTray: 5 },
          { do: 'proof', minutes: [60, 70] },
          { do: 'bake', minutes: 20, temperatureC: [210, 230] },
        ],
      },
    ],
    orders: orders.map((trays, index) => ({ product: 'roll', pieces: 20 * trays, readyBy: index === 0 ? '07:00' : '07:40' })),
  });
}
