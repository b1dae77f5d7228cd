// A bakery of few words for the tests of the compiler: what is not said is unlimited or usual.
import { type Scenario, type ScenarioInput, scenarioSchema } from '../../src/model/scenario.ts';

type Bread = {
  readonly id: string;
  readonly dough: string;
  readonly pieceG: number;
  readonly piecesPerTray: number;
  readonly pieces: number;
};

export type Few = {
  readonly breads: readonly Bread[];
  readonly bowlKg?: number;
  readonly lossPercent?: number;
  readonly steps?: ScenarioInput['products'][number]['steps'];
  readonly moreOrders?: ScenarioInput['orders'];
  readonly until?: string;
  readonly people?: ScenarioInput['people'];
  readonly goals?: ScenarioInput['goals'];
  readonly equipment?: Partial<ScenarioInput['equipment']>;
};

/** One dough mixed for ten minutes; each bread is shaped for ten minutes a tray unless other steps are given. */
export function bakery(few: Few): Scenario {
  const doughs = [...new Set(few.breads.map((bread) => bread.dough))];
  return scenarioSchema.parse({
    scenario: 1,
    name: 'A bakery of few words',
    date: '2026-05-16',
    timeZone: 'Europe/Lisbon',
    day: { from: '03:00', until: few.until ?? '12:00' },
    equipment: { ...(few.bowlKg === undefined ? {} : { mixers: [{ id: 'bowl', bowlKg: few.bowlKg }] }), ...few.equipment },
    ...(few.people === undefined ? {} : { people: few.people }),
    doughs: doughs.map((id) => ({ id, lossPercent: few.lossPercent ?? 0, steps: [{ do: 'mix', minutes: 10 }] })),
    products: few.breads.map(({ pieces: _, ...bread }) => ({
      ...bread,
      steps: few.steps ?? [{ do: 'shape', minutesPerTray: 10 }],
    })),
    orders: [
      ...few.breads.map(({ id, pieces }) => ({ product: id, pieces, readyBy: few.until ?? '06:00' })),
      ...(few.moreOrders ?? []),
    ],
    ...(few.goals === undefined ? {} : { goals: few.goals }),
  });
}
