// Deals trays to batches: as few batches as the largest bowl allows, as even as possible, trays due together in one bowl.
import { batchKg } from '../dough/batchKg.ts';
import { trayDoughKg } from '../dough/trayDoughKg.ts';
import type { Dough, Product, Scenario } from '../model/scenario.ts';
import type { ProductTrays } from './trays.ts';

/** One bowl of dough: the products of its trays, one entry a tray. */
export type Batch = { readonly dough: Dough; readonly kg: number; readonly trays: readonly Product[] };

type Tray = { readonly product: Product; readonly kg: number; readonly due: number };

/** Rounding of decimals: as a share of a batch, and half a milligram, to which doughs are rounded. */
const ROUNDING = 1e-6;
const TOLERANCE_KG = 5e-7;

/** Largest batch of a dough in kg: the smaller of maxBatchKg and the largest bowl, as far as given; Infinity with neither. */
export function largestBatchKg(scenario: Scenario, dough: Dough): number {
  const isMixed = dough.steps.some((step) => step.do === 'mix');
  const bowls = isMixed ? (scenario.equipment.mixers ?? []).map((mixer) => mixer.bowlKg) : [];
  const bowl = bowls.length > 0 ? Math.max(...bowls) : Number.POSITIVE_INFINITY;
  return Math.min(dough.maxBatchKg ?? Number.POSITIVE_INFINITY, bowl);
}

function evenSlices(trays: readonly Tray[], count: number): Tray[][] {
  const slices: Tray[][] = [];
  let from = 0;
  for (let b = 0; b < count; b++) {
    const size = Math.floor(trays.length / count) + (b < trays.length % count ? 1 : 0);
    slices.push(trays.slice(from, from + size));
    from += size;
  }
  return slices;
}

/** Placements tried before a number of batches counts as too few; enough for any dough of a small bakery to be certain. */
const MOST_TRIES = 20_000;

/** Larger batches than even ones that are tried one by one, before any size at all. */
const UNEVEN_STEPS = 8;

type OpenBatch = { readonly trays: Tray[]; kg: number };

/**
 * Deals trays, heaviest first, to `count` batches of at most `mostTrays`, the emptiest first; goes back when a tray finds
 * no room. Batches that look alike are tried once. Null when none of the placements tried works.
 */
function deal(trays: readonly Tray[], count: number, mostTrays: number, mostKg: number): Tray[][] | null {
  const byWeight = [...trays].sort((a, b) => b.kg - a.kg || a.due - b.due);
  const batches: OpenBatch[] = Array.from({ length: count }, () => ({ trays: [], kg: 0 }));
  let tries = 0;
  const place = (at: number): boolean => {
    const tray = byWeight[at];
    if (tray === undefined) return true;
    const seen = new Set<string>();
    const order = [...batches].sort((a, b) => a.trays.length - b.trays.length || a.kg - b.kg);
    for (const batch of order) {
      const looks = `${batch.trays.length} ${batch.kg}`;
      if (batch.trays.length >= mostTrays || batch.kg + tray.kg > mostKg || seen.has(looks)) continue;
      if (++tries > MOST_TRIES) return false;
      seen.add(looks);
      batch.trays.push(tray);
      batch.kg += tray.kg;
      if (place(at + 1)) return true;
      batch.trays.pop();
      batch.kg -= tray.kg;
    }
    return false;
  };
  return place(0) ? batches.map((batch) => batch.trays) : null;
}

/** As few batches as hold the trays, then as even as they go; `mostKg` of dough on trays in one, rounding allowed for. */
function dealt(trays: readonly Tray[], mostKg: number): Tray[][] {
  const totalKg = trays.reduce((sum, tray) => sum + tray.kg, 0);
  for (let count = Math.max(1, Math.ceil(totalKg / mostKg - ROUNDING)); count <= trays.length; count++) {
    const slices = evenSlices(trays, count);
    if (slices.every((slice) => slice.reduce((sum, tray) => sum + tray.kg, 0) <= mostKg)) return slices;
    const even = Math.ceil(trays.length / count);
    const sizes = [...Array.from({ length: UNEVEN_STEPS }, (_, step) => even + step), trays.length];
    for (const most of sizes) {
      const batches = deal(trays, count, most, mostKg);
      if (batches !== null) return batches.filter((batch) => batch.length > 0);
    }
  }
  throw new RangeError('a tray is heavier than the largest batch');
}

/** Dough of a batch in kg, loss included. */
export function kgOfTrays(trays: readonly Product[], dough: Dough): number {
  return batchKg(trays.map(trayDoughKg), dough.lossPercent);
}

/** Batches of every dough that is needed, in the scenario's order. */
export function batchesOf(scenario: Scenario, products: readonly ProductTrays[]): readonly Batch[] {
  return scenario.doughs.flatMap((dough) => {
    const mine = products.filter(({ product }) => product.dough === dough.id);
    const trays = mine.flatMap(({ product, dues }) => dues.map((due) => ({ product, due, kg: trayDoughKg(product) })));
    if (trays.length === 0) return [];
    const limitKg = largestBatchKg(scenario, dough);
    const byDue = [...trays].sort((a, b) => a.due - b.due);
    const batches =
      limitKg === Number.POSITIVE_INFINITY
        ? mine.map(({ product }) => byDue.filter((tray) => tray.product.id === product.id))
        : dealt(byDue, limitKg * (1 - dough.lossPercent / 100) + TOLERANCE_KG);
    return batches.map((batch) => {
      const products = batch.map((tray) => tray.product);
      return { dough, kg: kgOfTrays(products, dough), trays: products };
    });
  });
}
