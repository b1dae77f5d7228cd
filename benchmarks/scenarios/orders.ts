// The orders of a generated morning: one or two for each bread, wanted by the end of the day or as fast as a good plan bakes.
import type { ScenarioInput } from '../../src/model/scenario.ts';
import type { Bread } from './breads.ts';
import type { Dice } from './chance.ts';

type Orders = ScenarioInput['orders'];
type Part = { readonly bread: Bread; readonly pieces: number; readonly trays: number };

/** A good plan takes about so many times the minutes of the busiest place. */
const GOOD_PLAN = 1.4;

/** A bread is due no sooner than so many minutes after it could be ready were it alone, and so many more a tray. */
const LEAST_SPARE = 15;
const SPARE_PER_TRAY = 6;

/** The last tray of a bread may be part empty. */
function piecesOf(dice: Dice, { trays, product }: Bread): number {
  return trays * product.piecesPerTray - dice.between(0, Math.floor(product.piecesPerTray / 4));
}

function soonest({ minutes: { mix, fold, bulk, shape, proof, bake, cool } }: Bread): number {
  return mix + fold + bulk + shape + proof + bake + cool + 2;
}

/** One order or two of a bread. */
function partsOf(dice: Dice, bread: Bread): Part[] {
  const pieces = piecesOf(dice, bread);
  if (bread.trays === 1 || dice.between(0, 1) === 0) return [{ bread, pieces, trays: bread.trays }];
  const trays = dice.between(1, bread.trays - 1);
  const first = trays * bread.product.piecesPerTray;
  return [
    { bread, pieces: first, trays },
    { bread, pieces: pieces - first, trays: bread.trays - trays },
  ];
}

/** Orders that are due by the end of the day, when nothing is late. */
export function ordersAtEnd(dice: Dice, breads: readonly Bread[], until: string): Orders {
  return breads.map((bread) => ({ product: bread.product.id, pieces: piecesOf(dice, bread), readyBy: until }));
}

/**
 * Orders due one after another in a random order, the trays spread from the soonest bread to the end of a good plan, each
 * somewhat sooner or later.
 */
export function ordersWithDueTimes(
  dice: Dice,
  breads: readonly Bread[],
  likely: number,
  clockAt: (minute: number) => string,
): Orders {
  const trays = breads.reduce((sum, bread) => sum + bread.trays, 0);
  const from = Math.min(...breads.map(soonest));
  const until = GOOD_PLAN * likely;
  let baked = 0;
  return dice.shuffled(breads.flatMap((bread) => partsOf(dice, bread))).map((part) => {
    baked += part.trays;
    const even = from + ((until - from) * baked) / trays;
    const due = Math.round(even + ((until - from) * dice.between(-12, 12)) / 100);
    const least = soonest(part.bread) + LEAST_SPARE + SPARE_PER_TRAY * part.trays;
    return { product: part.bread.product.id, pieces: part.pieces, readyBy: clockAt(Math.max(least, due)) };
  });
}
