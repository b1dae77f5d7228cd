// The models that a schedule is improved with: of the units it plans, or of all that can be planned at all, where which ones are left
// out is open. Used by a lane.
import type { Layout } from '../layout.ts';
import type { Shop } from '../shop.ts';
import { ShopModel } from './shopModel.ts';

function isPlannedIn({ start }: Layout, { problem }: Shop, unit: number): boolean {
  return (start[problem.units[unit]?.tasks[0] ?? 0] ?? -1) >= 0;
}

/** A model of the units that a schedule plans. */
export function closedModel(shop: Shop, scale: number, layout: Layout): ShopModel {
  return new ShopModel(shop, scale, (unit) => isPlannedIn(layout, shop, unit), true, true);
}

/** A model of all units that can be planned, each of which may be left out where that has a price. `isThorough`: see ShopModel. */
export function openModel(shop: Shop, scale: number, layout: Layout, isThorough: boolean): ShopModel {
  const { problem, network } = shop;
  const childrenOf = new Map<number, number[]>();
  problem.units.forEach(({ parent }, u) => {
    if (parent !== null) childrenOf.set(parent, [...(childrenOf.get(parent) ?? []), u]);
  });
  const isOpen = (u: number): boolean => childrenOf.has(u) || Number.isFinite(problem.units[u]?.omissionPrice);
  const mayFit = (v: number): boolean => (network.earliest[v] as number) <= (network.latest[v] as number);
  const fits = (u: number): boolean =>
    (problem.units[u]?.tasks ?? []).every((i) => mayFit(network.startVar[i] as number) && mayFit(network.endVar[i] as number));
  const isPossible = (u: number): boolean =>
    isPlannedIn(layout, shop, u) || (childrenOf.get(u)?.some(isPossible) ?? (!isOpen(u) || fits(u)));
  return new ShopModel(shop, scale, isPossible, isThorough, true, isOpen);
}
