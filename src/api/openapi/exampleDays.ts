// The small days the examples of the document tell of: one to plan, a plan for it by hand, and questions about it.

export const BUNS_ALONE = {
  scenario: 1,
  name: 'Buns alone',
  date: '2026-04-08',
  timeZone: 'Europe/Prague',
  day: { from: '04:00', until: '09:00' },
  equipment: {
    ovens: [{ id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks: [{ id: 'deck', trays: 2 }] }],
  },
  doughs: [
    {
      id: 'bun-dough',
      steps: [
        { do: 'mix', minutes: 12 },
        { do: 'bulk', minutes: 45 },
      ],
    },
  ],
  products: [
    {
      id: 'bun',
      dough: 'bun-dough',
      pieceG: 90,
      piecesPerTray: 20,
      steps: [
        { do: 'shape', minutesPerTray: 10 },
        { do: 'bake', minutes: 16, temperatureC: 200 },
      ],
    },
  ],
  orders: [{ product: 'bun', pieces: 20, readyBy: '08:00' }],
};

/** The same day as people write it. */
export const BUNS_ALONE_YAML = `scenario: 1
name: Buns alone
date: 2026-04-08
timeZone: Europe/Prague
day: { from: "04:00", until: "09:00" }
equipment:
  ovens:
    - { id: oven, heatUpCPerMinute: 5, coolDownCPerMinute: 2, decks: [{ id: deck, trays: 2 }] }
doughs:
  - { id: bun-dough, steps: [{ do: mix, minutes: 12 }, { do: bulk, minutes: 45 }] }
products:
  - id: bun
    dough: bun-dough
    pieceG: 90
    piecesPerTray: 20
    steps: [{ do: shape, minutesPerTray: 10 }, { do: bake, minutes: 16, temperatureC: 200 }]
orders:
  - { product: bun, pieces: 20, readyBy: "08:00" }
`;

/** A plan of that day by hand, kept on the whole and wrong at one place: the deck is not yet hot enough. */
export const BUNS_BY_HAND = {
  tasks: [
    { step: 'mix', batch: 'bun-dough-1', start: '04:20', end: '04:32', handsOn: [] },
    { step: 'bulk', batch: 'bun-dough-1', start: '04:32', end: '05:17', handsOn: [] },
    { step: 'shape', product: 'bun', batch: 'bun-dough-1', tray: 'bun-1', start: '05:17', end: '05:27', handsOn: [] },
    {
      step: 'bake',
      product: 'bun',
      batch: 'bun-dough-1',
      tray: 'bun-1',
      start: '05:27',
      end: '05:43',
      place: { kind: 'deck', id: 'oven/deck', position: 1 },
      handsOn: [],
    },
  ],
  decks: [{ id: 'oven/deck', setPoints: [{ start: '05:00', end: '05:30', fromC: 20, toC: 170 }] }],
};
