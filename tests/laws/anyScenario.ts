// Scenarios drawn at random over the whole format: every kind of step, place, person and goal. Used by the laws.
import fc from 'fast-check';
import { type Scenario, type ScenarioInput, scenarioSchema } from '../../src/model/scenario.ts';

type Draw = (max: number) => number;

/** Draws whole numbers below a limit; the same seed gives the same draws (mulberry32, public domain). */
function drawFrom(seed: number): Draw {
  let state = seed >>> 0;
  return (max) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return Math.floor((((t ^ (t >>> 14)) >>> 0) / 4294967296) * max);
  };
}

const clockAt = (minute: number): string => {
  const day = Math.floor(minute / 1440);
  const text = `${String(Math.floor((minute % 1440) / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
  return day > 0 ? `+${day}d ${text}` : text;
};

type Steps = NonNullable<ScenarioInput['products'][number]>['steps'];

const TEMPERATURES = [
  [195, 205],
  [200, 220],
  [215, 225],
  [235, 245],
  [170, 180],
] as const;

function traySteps(draw: Draw, hasRetarder: boolean): Steps {
  const steps: Steps = [];
  const wait = (): { waitUpTo?: number } => (draw(4) === 0 ? { waitUpTo: 1 + draw(15) } : {});
  if (draw(4) === 0) steps.push({ do: 'divide', minutesPerTray: 2 + draw(5), ...wait() });
  if (draw(4) === 0) steps.push({ do: 'rest', minutes: [5 + draw(10), 15 + draw(20)], ...wait() });
  if (draw(6) > 0) steps.push({ do: 'shape', minutesPerTray: 3 + draw(10), ...wait() });
  if (hasRetarder && draw(4) === 0) steps.push({ do: 'retard', minutes: [30 + draw(30), 60 + draw(90)], ...wait() });
  const proof = 30 + draw(60);
  if (draw(8) > 0) steps.push({ do: 'proof', minutes: [proof, proof + 5 + draw(30)], temperatureC: [26, 36], ...wait() });
  const bake = 10 + draw(30);
  const range = TEMPERATURES[draw(TEMPERATURES.length)] as readonly [number, number];
  const lasts: number | [number, number] = draw(3) === 0 ? bake : [bake, bake + draw(4)];
  steps.push({
    do: 'bake',
    minutes: lasts,
    temperatureC: [range[0], range[1]],
    load: draw(3),
    unload: draw(3),
    steam: draw(5) === 0,
  });
  if (draw(5) > 0) steps.push({ do: 'cool', minutes: draw(2) === 0 ? 10 + draw(20) : [10, 20 + draw(20)], ...wait() });
  if (draw(6) === 0) steps.push({ do: 'finish', minutesPerTray: 2 + draw(4) });
  return steps;
}

function dough(draw: Draw, id: string, hasRetarder: boolean): ScenarioInput['doughs'][number] {
  const steps: ScenarioInput['doughs'][number]['steps'] = [];
  const mix = 6 + draw(10);
  if (draw(8) > 0)
    steps.push({ do: 'mix', minutes: mix, handsOn: draw(mix + 1), ...(draw(5) === 0 ? { waitUpTo: draw(10) } : {}) });
  if (draw(4) === 0) steps.push({ do: 'bulk', minutes: 20 }, { do: 'fold', minutes: 3 });
  const bulk = 20 + draw(60);
  if (steps.length === 0 || draw(6) > 0) {
    const where = hasRetarder && draw(4) === 0 ? 'retarder' : 'room';
    steps.push({ do: 'bulk', minutes: [bulk, bulk + draw(40)], where, ...(draw(5) === 0 ? { waitUpTo: draw(20) } : {}) });
  }
  return { id, steps, shapeWithin: 15 + draw(30), lossPercent: draw(3), ...(draw(3) === 0 ? {} : { maxBatchKg: 4 + draw(8) }) };
}

function people(draw: Draw, minutes: number): ScenarioInput['people'] {
  if (draw(5) === 0) return undefined;
  return Array.from({ length: 1 + draw(3) }, (_, i) => {
    const from = i === 0 ? 0 : draw(120);
    const rest = 100 + draw(200);
    return {
      id: `person-${i}`,
      from: clockAt(120 + from),
      until: clockAt(120 + minutes - (i === 0 ? 0 : draw(120))),
      breaks: draw(2) === 0 ? [] : [{ from: clockAt(120 + from + rest), until: clockAt(120 + from + rest + 15) }],
      cannot: i > 0 && draw(3) === 0 ? (['mix'] as const).slice() : [],
    };
  });
}

function ovens(draw: Draw): ScenarioInput['equipment']['ovens'] {
  return Array.from({ length: 1 + draw(2) }, (_, o) => ({
    id: `oven-${o}`,
    loading: draw(3) === 0 ? ('together' as const) : ('any-time' as const),
    heatUpCPerMinute: 3 + draw(4),
    coolDownCPerMinute: 1.5 + draw(3),
    decks: Array.from({ length: 1 + draw(2) }, (_, d) => ({
      id: `deck-${d}`,
      trays: 1 + draw(3),
      minC: [20, 50, 100][draw(3)] as number,
      maxC: 300,
      startsAtC: [20, 20, 200, 230][draw(4)] as number,
      steam: o === 0 && d === 0 ? true : draw(2) === 0,
    })),
  }));
}

/** Builds a scenario from a seed. Every product can be made; whether all fits the day is left to chance. */
export function scenarioFrom(seed: number): Scenario {
  const draw = drawFrom(seed);
  const minutes = 420 + draw(8) * 60;
  const hasRetarder = draw(3) === 0;
  const doughs = Array.from({ length: 1 + draw(4) }, (_, i) => dough(draw, `dough-${i}`, hasRetarder));
  const products = doughs.flatMap(({ id }, i) =>
    Array.from({ length: 1 + draw(2) }, (_, k) => ({
      id: `bread-${i}-${k}`,
      dough: id,
      pieceG: 40 + draw(80),
      piecesPerTray: 6 + draw(10),
      steps: traySteps(draw, hasRetarder),
    })),
  );
  const orders = products.flatMap((product) =>
    Array.from({ length: 1 + draw(2) }, () => ({
      product: product.id,
      pieces: 1 + draw(3 * product.piecesPerTray),
      readyBy: clockAt(120 + 200 + draw(minutes - 201)),
    })),
  );
  return scenarioSchema.parse({
    scenario: 1,
    name: 'Drawn at random',
    date: '2026-05-16',
    timeZone: 'Europe/Lisbon',
    day: { from: clockAt(120), until: clockAt(120 + minutes) },
    equipment: {
      ovens: ovens(draw),
      proofers: [{ id: 'proofer', shelves: 2 + draw(10), traysPerShelf: 1 + draw(2), temperatureC: 30 }],
      retarders: hasRetarder ? [{ id: 'retarder', shelves: 2 + draw(6) }] : [],
      ...(draw(4) === 0
        ? {}
        : { mixers: Array.from({ length: 1 + draw(2) }, (_, i) => ({ id: `mixer-${i}`, bowlKg: 5 + draw(15) })) }),
      ...(draw(4) === 0 ? {} : { bench: { places: 1 + draw(2) } }),
      ...(draw(3) > 0 ? {} : { coolingRack: { trays: 3 + draw(10) } }),
    },
    people: people(draw, minutes),
    doughs,
    products,
    orders,
    goals: {
      lateTrayMinute: [0, 5, 20][draw(3)],
      leftOutTray: [500, 5000][draw(2)],
      finishMinute: [0, 1, 1, 1][draw(4)],
      temperatureChange: [0, 10, 25][draw(3)],
      aim: draw(3) === 0 ? 'start-late' : 'finish-early',
    },
  });
}

/** An arbitrary scenario; a failure names the seed, and `scenarioFrom(seed)` brings it back. */
export const anyScenario: fc.Arbitrary<Scenario> = fc.noBias(fc.integer({ min: 0, max: 0x7fffffff })).map(scenarioFrom);
