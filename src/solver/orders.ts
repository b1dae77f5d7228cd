// Orders in which to place blocks for a first schedule: by due time, by length, by state, by earliest start.
import type { Block, Shop, StayUse } from './shop.ts';

function dueOf(shop: Shop, block: Block): number {
  let due = shop.problem.horizon;
  for (const { unit } of block.children) {
    const family = shop.problem.families[shop.problem.units[unit]?.family ?? -1];
    if (family !== undefined && family.latePrice > 0) due = Math.min(due, family.dues[0] ?? due);
  }
  return due;
}

function highOf(shop: Shop, block: Block): number {
  const variables = [...block.trunk, ...block.children.flatMap((child) => child.variables)];
  const stays = variables.flatMap((v) => shop.staysOfVar[v] as readonly number[]);
  return Math.max(0, ...stays.map((s) => (shop.stays[s] as StayUse).high));
}

/** Longest path that follows a block, its own length included. */
function tailOf(shop: Shop, block: Block): number {
  const { network, problem } = shop;
  const all = [...block.trunk, ...block.children.flatMap((child) => child.variables)];
  return problem.horizon - Math.min(...all.map((v) => network.latest[v] as number));
}

/** Orders worth a first try, best guesses first. Each holds every block once. */
export function firstOrders(shop: Shop): readonly (readonly number[])[] {
  const { blocks } = shop;
  const ids = blocks.map((block) => block.id);
  const sorted = (key: (block: Block) => readonly number[]): readonly number[] => {
    const keys = blocks.map(key);
    return [...ids].sort((a, b) => compare(keys[a] as readonly number[], keys[b] as readonly number[]) || a - b);
  };
  const orders = [
    sorted((block) => [dueOf(shop, block) - block.length, -block.length]),
    sorted((block) => [-tailOf(shop, block), -block.length]),
    sorted((block) => [-block.length, highOf(shop, block)]),
    sorted((block) => [dueOf(shop, block), highOf(shop, block)]),
    sorted((block) => [highOf(shop, block), -block.length]),
    sorted((block) => [-highOf(shop, block), -block.length]),
    sorted((block) => [block.length]),
  ];
  return orders;
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) {
    const d = (a[i] as number) - (b[i] as number);
    if (d !== 0) return d;
  }
  return 0;
}
