// The bakehouse and people of a generated morning, as many as its trays call for, and how long its day has to be.
import type { ScenarioInput } from '../../src/model/scenario.ts';
import type { Bread } from './breads.ts';
import type { Traits } from './kinds.ts';

type Equipment = ScenarioInput['equipment'];

/** Above so many trays the decks hold four trays each, not two. */
const LARGE = 64;
const DECKS_PER_OVEN = 4;

export type Capacity = {
  readonly people: number;
  readonly benchPlaces: number;
  readonly shelves: number;
  readonly decks: number;
  readonly traysPerDeck: number;
  readonly mixers: number;
};

export function capacityFor(trays: number, traits: Traits): Capacity {
  const isLarge = trays > LARGE;
  return {
    people: traits.people ?? Math.max(2, Math.ceil(trays / 25)),
    benchPlaces: Math.max(1, Math.round(traits.benchShare * 0.032 * trays)),
    shelves: Math.ceil(traits.shelfShare * Math.max(8, 0.34 * trays)),
    decks: isLarge ? Math.ceil(trays / 25) : Math.max(2, Math.ceil(trays / 20)),
    traysPerDeck: isLarge ? 4 : 2,
    mixers: Math.max(1, Math.round(trays / 75)),
  };
}

function ovens({ decks, traysPerDeck }: Capacity): Equipment['ovens'] {
  return Array.from({ length: Math.ceil(decks / DECKS_PER_OVEN) }, (_, oven) => ({
    id: `oven-${oven + 1}`,
    heatUpCPerMinute: 5,
    coolDownCPerMinute: 2,
    decks: Array.from({ length: Math.min(DECKS_PER_OVEN, decks - oven * DECKS_PER_OVEN) }, (_, deck) => ({
      id: `deck-${deck + 1}`,
      trays: traysPerDeck,
      minC: 20,
      maxC: 300,
      startsAtC: 20,
    })),
  }));
}

export function equipmentOf(capacity: Capacity): Equipment {
  return {
    ovens: ovens(capacity),
    proofers: [{ id: 'proofer', shelves: capacity.shelves, temperatureC: 30 }],
    mixers: Array.from({ length: capacity.mixers }, (_, m) => ({ id: `mixer-${m + 1}`, bowlKg: 60 })),
    bench: { places: capacity.benchPlaces },
  };
}

const sum = (breads: readonly Bread[], minutesOf: (bread: Bread) => number): number =>
  breads.reduce((total, bread) => total + minutesOf(bread), 0);

/** Minutes the busiest place or the hands are taken, were they never idle. */
function busiest(breads: readonly Bread[], capacity: Capacity): number {
  const batches = (bread: Bread): number => Math.ceil(bread.trays / bread.traysPerBatch);
  const hands = sum(breads, (bread) => {
    const { mix, fold, shape } = bread.minutes;
    return batches(bread) * (mix + fold) + bread.trays * (shape + 2);
  });
  const bench = sum(breads, (bread) => batches(bread) * bread.minutes.fold + bread.trays * bread.minutes.shape);
  const shelf = sum(breads, (bread) => bread.trays * bread.minutes.proof);
  const deck = sum(breads, (bread) => bread.trays * bread.minutes.bake);
  const mixing = sum(breads, (bread) => batches(bread) * bread.minutes.mix);
  return Math.max(
    hands / capacity.people,
    bench / capacity.benchPlaces,
    shelf / capacity.shelves,
    (1.3 * deck) / (capacity.decks * capacity.traysPerDeck),
    mixing / capacity.mixers,
  );
}

/** Minutes from the first mix to the last tray that a good plan may take, roughly. */
export function likelyMinutes(breads: readonly Bread[], capacity: Capacity): number {
  const ways = breads.map(({ minutes: { mix, fold, bulk, shape, proof, bake, cool } }) => {
    return mix + fold + bulk + shape + proof + bake + cool + 2;
  });
  const shortest = Math.min(...ways);
  return Math.round(Math.max(Math.max(...ways), busiest(breads, capacity) + 0.7 * shortest));
}

/** Shortest day in hours, and the longest. */
const LEAST_HOURS = 10;
const MOST_HOURS = 21;

/** Hours of the day: room for a plan far from the best. */
export function dayHours(likely: number): number {
  return Math.min(MOST_HOURS, Math.max(LEAST_HOURS, Math.ceil((1.5 * likely + 60) / 60)));
}
