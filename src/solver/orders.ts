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

/** Resources whose own best order is tried. */
const MOST_BUSY = 2;

/** Work of a block on one resource, all together: from when it can begin, how long it takes, and what must follow it. */
type BlockWork = { readonly id: number; readonly head: number; readonly length: number; readonly tail: number };

/** What blocks have to do on each pool or set of pools that serves, and on all chambers together, the fullest first. */
function busiest(shop: Shop): BlockWork[][] {
  const { network, problem, blockOfUnit, unitOfTask } = shop;
  const found = new Map<string, Map<number, BlockWork>>();
  const add = (key: string, capacity: number, use: { task: number; from: number; until: number; work: number }): void => {
    const unit = unitOfTask[use.task] as number;
    const id = unit < 0 ? -1 : (blockOfUnit[unit] as number);
    if (id < 0 || capacity === 0) return;
    const byBlock = found.get(key) ?? new Map<number, BlockWork>();
    found.set(key, byBlock);
    const known = byBlock.get(id) ?? { id, head: Number.POSITIVE_INFINITY, length: 0, tail: Number.POSITIVE_INFINITY };
    byBlock.set(id, {
      id,
      head: Math.min(known.head, network.earliest[use.from] as number),
      length: known.length + use.work / capacity,
      tail: Math.min(known.tail, problem.horizon - (network.latest[use.until] as number)),
    });
  };
  for (const { pools, task, fromVar, untilVar, minLength, amount } of shop.uses) {
    const capacity = pools.reduce((sum, p) => sum + (problem.pools[p]?.capacity ?? 0), 0);
    add(pools.join(','), capacity, { task, from: fromVar, until: untilVar, work: minLength * amount });
  }
  const room = problem.chambers.reduce((sum, chamber) => sum + chamber.room, 0);
  for (const { task, startVar, endVar, minLength, room: amount } of shop.stays)
    add('chambers', room, { task, from: startVar, until: endVar, work: minLength * amount });
  const load = (works: readonly BlockWork[]): number =>
    Math.min(...works.map((work) => work.head)) +
    works.reduce((sum, work) => sum + work.length, 0) +
    Math.min(...works.map((work) => work.tail));
  return [...found.values()]
    .map((byBlock) => [...byBlock.values()])
    .sort((a, b) => load(b) - load(a))
    .slice(0, MOST_BUSY);
}

/** The order of one machine: whenever it is free, of what can begin what has most to follow (Schrage; Carlier 1982, EJOR 11). */
function schrage(works: readonly BlockWork[]): number[] {
  const left = [...works];
  const order: number[] = [];
  let time = 0;
  while (left.length > 0) {
    const soonest = Math.min(...left.map((work) => work.head));
    time = Math.max(time, soonest);
    const ready = left.filter((work) => work.head <= time);
    const next = ready.reduce((best, work) => (work.tail > best.tail ? work : best));
    left.splice(left.indexOf(next), 1);
    order.push(next.id);
    time += next.length;
  }
  return order;
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
  const others = (order: readonly number[]): number[] => ids.filter((id) => !order.includes(id));
  for (const works of busiest(shop)) {
    const order = schrage(works);
    orders.push([...order, ...others(order)]);
  }
  return orders;
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) {
    const d = (a[i] as number) - (b[i] as number);
    if (d !== 0) return d;
  }
  return 0;
}
