// The day with so many trays more or fewer, in the proportion of its mix or all of one product. Used by capacity.
import { traysFor } from '../../dough/traysFor.ts';
import type { Order, Product, Scenario } from '../../model/scenario.ts';

/**
 * Which of several gets the next one, so that what was given stays close to the shares: the least (given + 1/2) / share
 * (A. Sainte-Laguë 1910, the rule of odd divisors; from memory). One more never takes from what was given before.
 */
function next(shares: readonly number[], given: readonly number[], mayGet: (index: number) => boolean): number {
  let best = -1;
  shares.forEach((share, index) => {
    if (share <= 0 || !mayGet(index)) return;
    const rank = ((given[index] ?? 0) + 0.5) / share;
    if (best < 0 || rank < ((given[best] ?? 0) + 0.5) / (shares[best] ?? 1)) best = index;
  });
  return best;
}

type Part = { readonly product: Product; readonly orders: readonly number[]; readonly trays: number };

function partsOf(scenario: Scenario, of: string | undefined): readonly Part[] {
  return scenario.products.flatMap((product) => {
    const orders = scenario.orders.flatMap((order, index) => (order.product === product.id ? [index] : []));
    const pieces = orders.reduce((sum, index) => sum + (scenario.orders[index]?.pieces ?? 0), 0);
    if (pieces === 0 || (of !== undefined && product.id !== of)) return [];
    return [{ product, orders, trays: traysFor(pieces, product.piecesPerTray) }];
  });
}

/** Trays the orders need, all products together. */
export function orderedTrays(scenario: Scenario): number {
  return partsOf(scenario, undefined).reduce((sum, { trays }) => sum + trays, 0);
}

/** Trays the orders of one product need. */
export function traysOfProduct(scenario: Scenario, product: string): number {
  return partsOf(scenario, product).reduce((sum, { trays }) => sum + trays, 0);
}

/** A whole tray of pieces on the order of the product that has got least of its share. */
function addTray(pieces: number[], original: readonly Order[], { product, orders }: Part): void {
  const shares = orders.map((index) => original[index]?.pieces ?? 0);
  const given = orders.map((index) => (pieces[index] ?? 0) - (original[index]?.pieces ?? 0));
  const order = orders[next(shares, given, () => true)];
  if (order !== undefined) pieces[order] = (pieces[order] ?? 0) + product.piecesPerTray;
}

/** Pieces of the last tray off the orders: the one that has given least of its share first. */
function takeTray(pieces: number[], original: readonly Order[], { product, orders }: Part): void {
  const left = orders.reduce((sum, index) => sum + (pieces[index] ?? 0), 0);
  let toTake = left % product.piecesPerTray || product.piecesPerTray;
  while (toTake > 0) {
    const shares = orders.map((index) => original[index]?.pieces ?? 0);
    const given = orders.map((index) => (original[index]?.pieces ?? 0) - (pieces[index] ?? 0));
    const order = orders[next(shares, given, (at) => (pieces[orders[at] ?? -1] ?? 0) > 0)];
    if (order === undefined) return;
    const taken = Math.min(toTake, pieces[order] ?? 0);
    pieces[order] = (pieces[order] ?? 0) - taken;
    toTake -= taken;
  }
}

/**
 * The scenario with `extra` trays more (fewer when below 0), tray by tray: of every product in the proportion of the mix, or
 * all `of` one product. Null when no order would be left. More trays always hold those of fewer.
 */
export function scaledScenario(scenario: Scenario, extra: number, of?: string): Scenario | null {
  const parts = partsOf(scenario, of);
  const pieces = scenario.orders.map((order) => order.pieces);
  const shares = parts.map(({ trays }) => trays);
  const given = parts.map(() => 0);
  for (let k = 0; k < Math.abs(extra); k++) {
    const at = next(shares, given, (index) => extra > 0 || (given[index] ?? 0) < (shares[index] ?? 0));
    const part = parts[at];
    if (part === undefined) return null;
    given[at] = (given[at] ?? 0) + 1;
    if (extra > 0) addTray(pieces, scenario.orders, part);
    else takeTray(pieces, scenario.orders, part);
  }
  const orders = scenario.orders.flatMap((order, index) =>
    (pieces[index] ?? 0) > 0 ? [{ ...order, pieces: pieces[index] ?? 0 }] : [],
  );
  return orders.length === 0 ? null : { ...scenario, orders };
}
