// Days on which it is known what clashes: each planted by hand, with the arithmetic beside it. Used by the tests of clash.
import { type Scenario, type ScenarioInput, scenarioSchema } from '../../src/model/scenario.ts';

export type PlantedDay = {
  readonly name: string;
  readonly scenario: Scenario;
  /** The clashing set: "order 1", or kind and whose of a limit. */
  readonly planted: readonly string[];
};

type Steps = ScenarioInput['products'][number]['steps'];

type Few = Partial<Pick<ScenarioInput, 'people' | 'day'>> & {
  readonly equipment?: Partial<ScenarioInput['equipment']>;
  readonly deck?: Partial<NonNullable<ScenarioInput['equipment']['ovens']>[number]['decks'][number]>;
  readonly coolDownCPerMinute?: number;
  readonly breads: Readonly<Record<string, { readonly trays: number; readonly readyBy: string; readonly steps: Steps }>>;
  readonly shapeWithin?: number;
};

/** Doughs are mixed for ten minutes by nobody in particular; ten pieces to a tray; one deck, hot from the start. */
function day({ breads, deck, equipment, coolDownCPerMinute = 2, people, day: hours, shapeWithin = 30 }: Few): Scenario {
  const ids = Object.keys(breads);
  return scenarioSchema.parse({
    scenario: 1,
    name: 'Planted',
    date: '2026-05-16',
    timeZone: 'Europe/Lisbon',
    day: hours ?? { from: '03:00', until: '09:00' },
    equipment: {
      ovens: [
        { id: 'oven', heatUpCPerMinute: 5, coolDownCPerMinute, decks: [{ id: 'deck', trays: 4, startsAtC: 200, ...deck }] },
      ],
      proofers: [{ id: 'proofer', shelves: 9, temperatureC: 30 }],
      ...equipment,
    },
    ...(people === undefined ? {} : { people }),
    doughs: ids.map((id) => ({ id: `${id}-dough`, shapeWithin, steps: [{ do: 'mix', minutes: 10, handsOn: 0 }] })),
    products: ids.map((id) => ({
      id,
      dough: `${id}-dough`,
      pieceG: 100,
      piecesPerTray: 10,
      steps: breads[id]?.steps ?? [],
    })),
    orders: ids.map((id) => ({ product: id, pieces: 10 * (breads[id]?.trays ?? 1), readyBy: breads[id]?.readyBy ?? '06:00' })),
  });
}

const BAKE = { do: 'bake', minutes: 10, temperatureC: 200 } as const;

export const PLANTED: readonly PlantedDay[] = [
  {
    // Mixed by 03:10, proofed 60, baked 10: ready at 04:20, but only two of three trays find a shelf; the third at 05:20.
    name: 'too many trays for the shelves by a time',
    scenario: day({
      equipment: { proofers: [{ id: 'proofer', shelves: 2, temperatureC: 30 }] },
      breads: {
        bun: { trays: 3, readyBy: '05:00', steps: [{ do: 'proof', minutes: 60, waitUpTo: 0 }, BAKE] },
        roll: { trays: 2, readyBy: '08:00', steps: [BAKE] },
      },
    }),
    planted: ['order 1', 'day-start day', 'shelves proofer'],
  },
  {
    // Three trays of 20 minutes by one pair of hands after 03:10: done at 04:10, wanted at 04:00.
    name: 'one person too few hands',
    scenario: day({
      people: [{ id: 'ana', from: '00:00', until: '12:00' }],
      breads: {
        bun: { trays: 3, readyBy: '04:00', steps: [{ do: 'shape', minutesPerTray: 20 }] },
        roll: { trays: 1, readyBy: '06:00', steps: [{ do: 'shape', minutesPerTray: 20 }] },
      },
    }),
    planted: ['order 1', 'day-start day', 'hands ana'],
  },
  {
    // Hot first: 03:10 to 03:30 at 240, 40 minutes down to 180, done 04:30. Soft first: done 04:00, then 12 up and 20: 04:32.
    name: 'the heat of a deck between two products',
    scenario: day({
      deck: { startsAtC: 240 },
      coolDownCPerMinute: 1.5,
      breads: {
        crust: { trays: 1, readyBy: '04:20', steps: [{ ...BAKE, minutes: 20, temperatureC: 240 }] },
        soft: { trays: 1, readyBy: '04:20', steps: [{ ...BAKE, minutes: 20, temperatureC: 180 }] },
        middle: { trays: 1, readyBy: '08:00', steps: [BAKE] },
      },
    }),
    planted: ['order 1', 'order 2', 'day-start day', 'heat-rates oven'],
  },
  {
    // Ben comes at 05:00 and needs twenty minutes for a tray wanted at 05:15.
    name: 'the hours of the only person',
    scenario: day({
      people: [{ id: 'ben', from: '05:00', until: '09:00' }],
      breads: {
        bun: { trays: 1, readyBy: '05:15', steps: [{ do: 'shape', minutesPerTray: 20 }] },
        roll: { trays: 1, readyBy: '07:00', steps: [{ do: 'shape', minutesPerTray: 20 }] },
      },
    }),
    planted: ['order 1', 'hours ben'],
  },
  {
    // Two trays of one batch begin within five minutes, proof 60 to 70 and bake 30 one after the other: the second would wait 30.
    name: 'over-proofing before one deck',
    scenario: day({
      deck: { trays: 1 },
      shapeWithin: 5,
      breads: {
        bun: {
          trays: 2,
          readyBy: '08:30',
          steps: [
            { do: 'proof', minutes: [60, 70] },
            { ...BAKE, minutes: 30 },
          ],
        },
      },
    }),
    planted: ['order 1', 'deck-room oven/deck', 'product-standing bun', 'dough-standing bun-dough'],
  },
  {
    // 10 to mix and 50 to bake: two trays of a deck of one are ready at 04:00 and 04:50; the day ends at 04:30.
    name: 'the end of the day',
    scenario: day({
      day: { from: '03:00', until: '04:30' },
      shapeWithin: 60,
      deck: { trays: 1 },
      breads: { bun: { trays: 2, readyBy: '05:00', steps: [{ ...BAKE, minutes: 50 }] } },
    }),
    planted: ['order 1', 'day-start day', 'day-end day', 'deck-room oven/deck'],
  },
];
