// The best floor the arguments of this folder prove, and what each says of the makespan. Used by solve.

import { MISSING_PRICE } from '../cost.ts';
import type { Pool, ShopProblem } from '../problem.ts';
import type { Shop } from '../shop.ts';
import type { Bound, BoundArgument, GroupName } from './bound.ts';
import { flowBound } from './flowBound.ts';
import { type Paths, type Work, workOfStay, workOfUse } from './headsAndTails.ts';
import { capacitySums, omissionsNeeded, spanBound, workBound } from './workBound.ts';

type Group = {
  readonly ids: readonly number[];
  readonly work: readonly Work[];
  readonly capacity: Int32Array;
  readonly isChamber: boolean;
};

function capacityOf(pools: readonly Pool[], horizon: number): Int32Array {
  const capacity = new Int32Array(horizon);
  for (const pool of pools) {
    for (const [from, until] of pool.open) {
      for (let t = Math.max(0, from); t < Math.min(horizon, until); t++) capacity[t] = (capacity[t] as number) + pool.capacity;
    }
  }
  return capacity;
}

/** Sets of pools worth an argument: each list of alternatives, and lists that share a pool joined. */
function poolSets(shop: Shop): number[][] {
  const sets = new Map<string, number[]>();
  const joined: Set<number>[] = [];
  for (const use of shop.uses) {
    sets.set(use.pools.join(','), [...use.pools]);
    const touching = joined.filter((set) => use.pools.some((p) => set.has(p)));
    const union = new Set([...use.pools, ...touching.flatMap((set) => [...set])]);
    for (const set of touching) joined.splice(joined.indexOf(set), 1);
    joined.push(union);
  }
  for (const set of joined) {
    const list = [...set].sort((a, b) => a - b);
    sets.set(list.join(','), list);
  }
  return [...sets.values()];
}

function groupsOf(shop: Shop, paths: Paths): Group[] {
  const { problem } = shop;
  const works = shop.uses.map((use) => (use.oncePerLoad && isShareable(shop, use.task) ? null : workOfUse(shop, paths, use)));
  const groups: Group[] = poolSets(shop).map((ids) => {
    const inside = new Set(ids);
    const work = shop.uses.flatMap((use, u) =>
      use.pools.every((p) => inside.has(p)) && works[u] != null ? [works[u] as Work] : [],
    );
    return {
      ids,
      work,
      capacity: capacityOf(
        ids.map((p) => problem.pools[p] as Pool),
        problem.horizon,
      ),
      isChamber: false,
    };
  });
  const chambers = problem.chambers.map((_, c) => c);
  if (shop.stays.length > 0) {
    const room = problem.chambers.reduce((sum, chamber) => sum + chamber.room, 0);
    const work = shop.stays.map((stay) => workOfStay(shop, paths, stay));
    groups.push({ ids: chambers, work, capacity: new Int32Array(problem.horizon).fill(room), isChamber: true });
  }
  return groups;
}

function isShareable(shop: Shop, task: number): boolean {
  return shop.problem.tasks[task]?.stay?.chambers.some((c) => shop.problem.chambers[c]?.together === true) ?? false;
}

function latenessFloor(problem: ShopProblem, readyHeads: Int32Array): number {
  let price = 0;
  problem.families.forEach((family, f) => {
    if (family.latePrice === 0) return;
    const heads = problem.units.flatMap((unit, u) => (unit.family === f ? [readyHeads[u] as number] : [])).sort((a, b) => a - b);
    heads.forEach((head, k) => {
      price += family.latePrice * Math.max(0, head - (family.dues[k] as number));
    });
  });
  return price;
}

/**
 * Ranges no two of which share a state need a state each; every chamber has one for nothing. Where there are more, some state
 * changes at least once; not more, for one slow move may pass through any number of ranges while stays last.
 */
function changesFloor(shop: Shop): number {
  let needed = 0;
  let reach = Number.NEGATIVE_INFINITY;
  for (const stay of [...shop.stays].sort((a, b) => a.high - b.high)) {
    if (stay.low <= reach) continue;
    needed++;
    reach = stay.high;
  }
  return needed > shop.problem.chambers.length ? 1 : 0;
}

function readyHeadsOf(shop: Shop, paths: Paths): { heads: Int32Array; spans: Int32Array } {
  const { network, problem } = shop;
  const heads = new Int32Array(problem.units.length);
  const spans = new Int32Array(problem.units.length);
  problem.units.forEach((unit, u) => {
    if (unit.ready === null) return;
    const isStart = unit.ready.edge === 'start';
    const v = (isStart ? network.startVar : network.endVar)[unit.ready.task] as number;
    const offset = ((isStart ? network.startOff : network.endOff)[unit.ready.task] as number) + unit.ready.offset;
    heads[u] = (network.earliest[v] as number) + offset;
    spans[u] = Math.max(0, paths.fromFirst(v) + offset);
  });
  return { heads, spans };
}

/** What the arguments of this folder say without the packing of loads: of schedules of all units, and how many must be omitted. */
export type Argued = { readonly all: Bound; readonly lateness: number; readonly omitted: number };

/**
 * The strongest makespan argument, plus floors under lateness and changes.
 *
 * @param isQuick - without the flow of work from one resource to the next, which takes longer than all the rest. Default false.
 */
export function argue(shop: Shop, paths: Paths, isQuick = false): Argued {
  const { problem } = shop;
  const { prices } = problem;
  const { heads, spans } = readyHeadsOf(shop, paths);
  const groups = groupsOf(shop, paths);
  const path = prices.fromFirstMark ? spans : heads;
  let makespan = Math.max(0, ...path);
  let argument: BoundArgument = { kind: 'path', unit: path.indexOf(makespan), makespan };
  let omitted = 0;
  const parentOf = problem.units.map((unit) => unit.parent);
  for (const group of groups) {
    const sum = capacitySums(group.capacity);
    const found = prices.fromFirstMark ? spanBound(group.work, Math.max(...group.capacity)) : workBound(group.work, sum);
    omitted = Math.max(omitted, omissionsNeeded(group.work, sum, parentOf));
    if (found.makespan <= makespan) continue;
    makespan = found.makespan;
    const { head, tail, count } = found;
    argument = group.isChamber
      ? { kind: 'chamber-work', chambers: group.ids, stays: count, head, tail, makespan }
      : { kind: 'pool-work', pools: group.ids, uses: count, head, tail, makespan };
  }
  const flow = isQuick || prices.fromFirstMark ? null : flowArgument(shop, groups, makespan);
  if (flow !== null && flow.makespan > makespan) {
    makespan = flow.makespan;
    argument = flow;
  }
  const lateness = latenessFloor(problem, heads);
  const value = lateness + prices.makespan * makespan + prices.stateChange * changesFloor(shop);
  return { all: { value, argument }, lateness, omitted };
}

function flowArgument(shop: Shop, groups: readonly Group[], known: number): Extract<BoundArgument, { kind: 'flow' }> | null {
  const resources = groups.map(({ work, capacity }) => ({ work, capacity, most: Math.max(0, ...capacity) }));
  const flow = flowBound(shop, resources, known);
  if (flow === null || flow.makespan > shop.problem.horizon) return null;
  const part = (g: number): GroupName | null =>
    g < 0 ? null : { isChamber: groups[g]?.isChamber === true, ids: groups[g]?.ids ?? [] };
  const { count, makespan } = flow;
  return { kind: 'flow', at: part(flow.at) as GroupName, through: part(flow.through), to: part(flow.to), uses: count, makespan };
}

/** The best floor: what is argued, or the packing's, or what omitting costs. */
export function withPacking(problem: ShopProblem, argued: Argued, packingFloor: number): Bound {
  let { value, argument } = argued.all;
  if (!problem.prices.fromFirstMark) {
    const packed = argued.lateness + roundedUp(packingFloor, problem.prices);
    if (packed > value) {
      value = packed;
      argument = { kind: 'chamber-loads' };
    }
  }
  return withOmissions(problem, { value, argument: value > 0 ? argument : { kind: 'none' } }, argued.omitted);
}

/**
 * The argued bound, or the floor that a search has proved under the price of schedules of all units, whichever is higher:
 * a schedule costs that floor, or as much as it costs to omit a unit.
 *
 * @param floor - Infinity: no schedule plans all units.
 */
export function withFloor(problem: ShopProblem, argued: Bound, floor: number): Bound {
  const prices = problem.units.flatMap((unit) => (unit.ready === null ? [] : [Math.min(unit.omissionPrice, MISSING_PRICE)]));
  const least = Math.min(MISSING_PRICE, ...prices);
  const value = Math.min(floor, least);
  if (value <= argued.value) return argued;
  return { value, argument: floor < least ? { kind: 'search' } : { kind: 'search-omission', isNecessary: floor === Infinity } };
}

/** A price built of whole makespans and whole changes at whole prices is whole. */
function roundedUp(price: number, prices: ShopProblem['prices']): number {
  const isWhole = Number.isInteger(prices.makespan) && Number.isInteger(prices.stateChange);
  return isWhole ? Math.ceil(price - 1e-6) : price - 1e-6;
}

function withOmissions(problem: ShopProblem, all: Bound, needed: number): Bound {
  const prices = problem.units.filter((unit) => unit.ready !== null).map((unit) => unit.omissionPrice);
  const least = Math.min(Number.POSITIVE_INFINITY, ...prices);
  if (needed > 0) return { value: Math.min(Number.MAX_VALUE, needed * least), argument: { kind: 'omission', omitted: needed } };
  return all.value <= least ? all : { value: least, argument: { kind: 'one-omission' } };
}
