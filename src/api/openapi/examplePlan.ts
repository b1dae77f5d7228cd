// The plan ovenward makes of the small day of the examples. Used where an example hands a plan back.

export const BUNS_PLAN = {
  plan: 1,
  scenario: {
    name: 'Buns alone',
    date: '2026-04-08',
    timeZone: 'Europe/Prague',
    fingerprint: 'sha256:13b4181649fbafd656fcfd9d222b0e76c3ee6755e7706c55e7d73e98cd085e95',
  },
  day: {
    startsAt: '2026-04-08T04:00:00+02:00',
    endsAt: '2026-04-08T09:00:00+02:00',
    minutes: 300,
  },
  stopped: 'proved',
  holds: 'optimal',
  score: {
    cost: 83,
    lowerBound: 83,
    gap: 0,
    lateTrayMinutes: 0,
    leftOutTrays: 0,
    finishMinute: 83,
    temperatureChanges: 0,
    firstHandsOnMinute: 0,
  },
  bound: {
    argument: 'path',
    says: 'bun: its own steps, one after another, cannot all be ready before 05:23.',
  },
  tasks: [
    {
      id: 'bun-dough-1/mix',
      step: 'mix',
      batch: 'bun-dough-1',
      start: 0,
      end: 12,
      startsAt: '2026-04-08T04:00:00+02:00',
      endsAt: '2026-04-08T04:12:00+02:00',
      handsOn: [],
    },
    {
      id: 'bun-dough-1/bulk',
      step: 'bulk',
      batch: 'bun-dough-1',
      start: 12,
      end: 57,
      startsAt: '2026-04-08T04:12:00+02:00',
      endsAt: '2026-04-08T04:57:00+02:00',
      handsOn: [],
    },
    {
      id: 'bun-1/shape',
      step: 'shape',
      product: 'bun',
      batch: 'bun-dough-1',
      tray: 'bun-1',
      start: 57,
      end: 67,
      startsAt: '2026-04-08T04:57:00+02:00',
      endsAt: '2026-04-08T05:07:00+02:00',
      handsOn: [],
    },
    {
      id: 'bun-1/bake',
      step: 'bake',
      product: 'bun',
      batch: 'bun-dough-1',
      tray: 'bun-1',
      start: 67,
      end: 83,
      startsAt: '2026-04-08T05:07:00+02:00',
      endsAt: '2026-04-08T05:23:00+02:00',
      place: {
        kind: 'deck',
        id: 'oven/deck',
        position: 1,
      },
      handsOn: [],
    },
  ],
  decks: [
    {
      id: 'oven/deck',
      setPoints: [
        {
          start: 21,
          end: 57,
          fromC: 20,
          toC: 200,
        },
      ],
    },
  ],
  batches: [
    {
      id: 'bun-dough-1',
      dough: 'bun-dough',
      kg: 1.8,
      trays: [
        {
          id: 'bun-1',
          product: 'bun',
        },
      ],
    },
  ],
  orders: [
    {
      product: 'bun',
      pieces: 20,
      readyBy: '2026-04-08T08:00:00+02:00',
      readyAt: '2026-04-08T05:23:00+02:00',
      lateMinutes: 0,
    },
  ],
  leftOut: [],
  bakehouse: {
    mixers: [],
    benchPlaces: null,
    proofers: [],
    retarders: [],
    decks: [
      {
        id: 'oven/deck',
        name: 'deck',
        trays: 2,
        startsAtC: 20,
        loading: 'any-time',
      },
    ],
    coolingRackTrays: null,
    people: [],
    doughs: [
      {
        id: 'bun-dough',
        name: 'bun-dough',
      },
    ],
    products: [
      {
        id: 'bun',
        name: 'bun',
        dough: 'bun-dough',
        piecesPerTray: 20,
        pieceG: 90,
      },
    ],
  },
  cautions: [
    {
      code: 'HOT_WORK',
      says: 'Ovens, trays and steam burn: dry mitts, covered arms, stand aside when a door opens. Drink water and rest in the cool.',
      source: "Afshari et al. 2019, IJOEM 1582 (heat above the limit at every baker's station); the handling is common practice.",
    },
    {
      code: 'ACRYLAMIDE',
      says: 'Acrylamide forms above 120 C in a dry crust: bake to golden, not dark; keep a colour card by the oven.',
      source: 'Regulation (EU) 2017/2158, recital 3; the colour card is common practice.',
    },
    {
      code: 'FLOUR_DUST',
      says: 'Flour dust can cause asthma: tip low, start the bowl slowly, do not sweep it dry. Limits are 8-hour averages: measure.',
      source: 'HSE, hse.gov.uk/food/bakery.htm (UK limit 10 mg/m3 over 8 h); the handling is common practice.',
    },
  ],
  solver: {
    seed: 1,
    effort: 0,
    seconds: 0.1,
    version: '0.1.0',
    notes: [],
  },
};
