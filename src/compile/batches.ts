// Deals trays to batches: as few batches as the largest bowl allows, as even as possible, trays due together in one bowl.
import { batchKg } from '../dough/batchKg.ts';
import { trayDoughKg } from '../dough/trayDoughKg.ts';
import type { Dough, Product, Scenario } from '../model/scenario.ts';
import type { ProductTrays } from './trays.ts';

/** One bowl of dough: the products of its trays, one entry a tray. */
export type Batch = { readonly dough: Dough; readonly kg: number; readonly trays: readonly Product[] };

type Tray = { readonly product: Product; readonly kg: number; readonly due: number };

/** Share of a batch that rounding of decimals may make up. */
const ROUNDING = 1e-6;

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

/** Heaviest first into the first batch with room by weight and by number; null when some tray finds none. */
function firstFit(
  trays: readonly Tray[],
  count: number,
  mostTrays: number,
  fits: (batch: readonly Tray[]) => boolean,
): Tray[][] | null {
  const batches: Tray[][] = Array.from({ length: count }, () => []);
  for (const tray of [...trays].sort((a, b) => b.kg - a.kg || a.due - b.due)) {
    const open = batches.filter((batch) => batch.length < mostTrays && fits([...batch, tray]));
    if (open.length === 0) return null;
    open.reduce((least, batch) => (batch.length < least.length ? batch : least)).push(tray);
  }
  return batches;
}

/** `least`: batches below which the trays' weight alone is too much. */
function dealt(trays: readonly Tray[], least: number, fits: (batch: readonly Tray[]) => boolean): Tray[][] {
  for (let count = least; count <= trays.length; count++) {
    const slices = evenSlices(trays, count);
    if (slices.every(fits)) return slices;
    for (let most = Math.ceil(trays.length / count); most <= trays.length; most++) {
      const batches = firstFit(trays, count, most, fits);
      if (batches?.every((batch) => batch.length > 0)) return batches;
    }
  }
  throw new RangeError('a tray is heavier than the largest batch');
}

/** Batches of every dough that is needed, in the scenario's order. */
export function batchesOf(scenario: Scenario, products: readonly ProductTrays[]): readonly Batch[] {
  return scenario.doughs.flatMap((dough) => {
    const mine = products.filter(({ product }) => product.dough === dough.id);
    const trays = mine.flatMap(({ product, dues }) => dues.map((due) => ({ product, due, kg: trayDoughKg(product) })));
    if (trays.length === 0) return [];
    const kgOf = (batch: readonly Tray[]): number =>
      batchKg(
        batch.map((tray) => tray.kg),
        dough.lossPercent,
      );
    const limitKg = largestBatchKg(scenario, dough);
    const byDue = [...trays].sort((a, b) => a.due - b.due);
    const batches =
      limitKg === Number.POSITIVE_INFINITY
        ? mine.map(({ product }) => byDue.filter((tray) => tray.product.id === product.id))
        : dealt(byDue, Math.max(1, Math.ceil(kgOf(byDue) / limitKg - ROUNDING)), (batch) => kgOf(batch) <= limitKg);
    return batches.map((batch) => ({ dough, kg: kgOf(batch), trays: batch.map((tray) => tray.product) }));
  });
}
