// The breads of a generated morning: one dough for each product, its batches, its steps, and how many trays of each.
import type { ScenarioInput } from '../../src/model/scenario.ts';
import type { Dice } from './chance.ts';
import type { Traits } from './kinds.ts';

export type DoughInput = ScenarioInput['doughs'][number];
export type ProductInput = ScenarioInput['products'][number];

/** A product with its dough, and what the estimates of a morning need to know of it. */
export type Bread = {
  readonly dough: DoughInput;
  readonly product: ProductInput;
  readonly trays: number;
  readonly traysPerBatch: number;
  /** Shortest minutes from mixing to ready, and how they are spent. */
  readonly minutes: {
    readonly mix: number;
    readonly fold: number;
    readonly bulk: number;
    readonly shape: number;
    readonly proof: number;
    readonly bake: number;
    readonly cool: number;
  };
};

type Minutes = Bread['minutes'];

/** Pieces of a tray by their grams: small ones lie closer. */
const PIECES = [
  { pieceG: 45, least: 16, most: 26 },
  { pieceG: 70, least: 12, most: 22 },
  { pieceG: 90, least: 10, most: 18 },
  { pieceG: 400, least: 5, most: 8 },
  { pieceG: 650, least: 4, most: 7 },
] as const;

/** One dough in four is folded half-way through its bulk. */
const FOLDED_ONE_IN = 4;

/** Trays of a batch begin within half an hour of each other, one pair of hands shaping them, with two minutes to spare. */
const SHAPED_WITHIN = 28;

function doughSteps(minutes: Minutes): DoughInput['steps'] {
  const { mix, fold, bulk } = minutes;
  const slack = Math.round(bulk * 0.6);
  if (fold === 0)
    return [
      { do: 'mix', minutes: mix },
      { do: 'bulk', minutes: [bulk, bulk + slack] },
    ];
  const before = Math.round(bulk / 3);
  return [
    { do: 'mix', minutes: mix },
    { do: 'bulk', minutes: [before, before + 10] },
    { do: 'fold', minutes: fold },
    { do: 'bulk', minutes: [bulk - before, bulk - before + slack] },
  ];
}

function traySteps(minutes: Minutes, bakesAtC: number): ProductInput['steps'] {
  return [
    { do: 'shape', minutesPerTray: minutes.shape },
    { do: 'proof', minutes: [minutes.proof, Math.round(minutes.proof * 1.35)], temperatureC: [27, 34] },
    { do: 'bake', minutes: [minutes.bake, minutes.bake + 2], temperatureC: [bakesAtC - 5, bakesAtC + 5], load: 1, unload: 1 },
    { do: 'cool', minutes: minutes.cool },
  ];
}

function bread(dice: Dice, traits: Traits, number: number, trays: number, bakesAtC: number): Bread {
  const minutes = {
    mix: dice.between(6, 13),
    fold: dice.between(1, FOLDED_ONE_IN) === 1 ? 4 : 0,
    bulk: dice.oneOf([30, 45, 60, 75, 90]),
    shape: dice.between(traits.shapeMinutes[0], traits.shapeMinutes[1]),
    proof: dice.oneOf([45, 60, 75, 90, 110, 130]),
    bake: dice.between(12, 38),
    cool: dice.oneOf([15, 25, 40, 60]),
  };
  const { pieceG, least, most } = dice.oneOf(PIECES);
  const piecesPerTray = dice.between(least, most);
  const traysPerBatch = Math.min(dice.between(2, 4), 1 + Math.floor(SHAPED_WITHIN / minutes.shape));
  const dough = {
    id: `dough-${number}`,
    maxBatchKg: Math.round(traysPerBatch * piecesPerTray * pieceG + 1) / 1000,
    steps: doughSteps(minutes),
  };
  const product = {
    id: `bread-${number}`,
    name: `Bread ${number}`,
    dough: dough.id,
    pieceG,
    piecesPerTray,
    steps: traySteps(minutes, bakesAtC),
  };
  return { dough, product, trays, traysPerBatch, minutes };
}

/** How many breads share so many trays: from three or four trays each on small mornings to ten and more on large ones. */
function breadCount(trays: number): number {
  return Math.max(2, Math.min(trays, Math.round(1.45 * Math.sqrt(trays))));
}

/** Trays of each bread: one each, the rest at random. */
function shares(dice: Dice, trays: number, breads: number): number[] {
  const counts = Array.from({ length: breads }, () => 1);
  for (let left = trays - breads; left > 0; left--) {
    const at = dice.between(0, breads - 1);
    counts[at] = (counts[at] ?? 0) + 1;
  }
  return counts;
}

/** The breads of a morning with exactly `trays` trays. Temperatures go round, so that few breads share one. */
export function breadsOf(dice: Dice, traits: Traits, trays: number): Bread[] {
  const temperatures = dice.shuffled(traits.bakesAtC);
  return shares(dice, trays, breadCount(trays)).map((count, b) =>
    bread(dice, traits, b + 1, count, temperatures[b % temperatures.length] ?? 0),
  );
}
