// A shop as the beam sees it: which time points wait for which, what lies on the busiest pool, places in pools and chambers as
// slots, and stays grouped by the states they allow. Built once; read-only afterwards.
import { NO_PATH } from '../network.ts';
import type { Chamber, Pool } from '../problem.ts';
import { type Shop, type StayUse, shortest, type UseOfPool } from '../shop.ts';
import { gapBetween, type Range, rangeIn, reachedAt } from '../stateGaps.ts';
import { type Twins, twinsOf } from '../twins.ts';

/** Later than any time. */
export const NEVER = 1_000_000;

/** Shops with more slots than this, all pools and chambers together, are beyond the beam. */
const MOST_SLOTS = 400;

/** More than this share of the points begin work of the server: with less, other things decide the day. */
const SERVED_SHARE = 0.5;

export type BeamShop = {
  readonly shop: Shop;
  /** Points that are placed with the first of their burst, not by themselves. */
  readonly isFollower: Uint8Array;
  readonly choices: number;
  /** Per point: the points that come before it. */
  readonly before: readonly Int32Array[];
  /** Per point: whether it may be placed before others that are: it has work of the server, or nothing waits for it. */
  readonly isFree: Uint8Array;
  /** All points, none before those it waits for; of those it waits for the nearest, with the lags, one list after another. */
  readonly order: Int32Array;
  readonly nearFrom: Int32Array;
  readonly nearPoint: Int32Array;
  readonly nearLag: Int32Array;
  /** Least time from a point to the makespan; more where what follows is due before. */
  readonly tail: Int32Array;
  /** The pool everything waits for, one pair of hands, and the work of it that begins with each point, so long after it. */
  readonly server: number;
  readonly serverLength: Int32Array;
  readonly serverOffset: Int32Array;
  readonly serverPoints: Int32Array;
  /** Points of the server by how much follows them, the most first, and the place of each there. */
  readonly byRank: Int32Array;
  readonly rankOf: Int32Array;
  /** Per point: the point of its twin that comes first, or -1. */
  readonly twinBefore: Int32Array;
  readonly poolSlot: Int32Array;
  readonly chamberSlot: Int32Array;
  readonly slotCount: number;
  /** Per stay: its group; stays of one group allow the same states. */
  readonly groupOf: Int32Array;
  readonly groupCount: number;
  /** Per chamber: time between a stay of one group and a stay of another, [first * groupCount + second], and before the first. */
  readonly gap: readonly Int32Array[];
  readonly reach: readonly Int32Array[];
  /** Uses by their points, the first to begin first, but for those of pools that need no look. */
  readonly usesFrom: readonly Int32Array[];
  readonly usesUntil: readonly Int32Array[];
  readonly staysUntil: readonly Int32Array[];
  /** Per point: the stay that begins with it, or -1. */
  readonly stayFrom: Int32Array;
  /** Per pool that needs a look, but for the server: the uses that have no other pool. */
  readonly usesOfPool: readonly Int32Array[];
};

function pointsBefore(shop: Shop, isFollower: Uint8Array): Int32Array[] {
  const { network } = shop;
  return Array.from({ length: network.variableCount }, (_, v) =>
    (network.members[network.component[v] as number] as Int32Array).filter((u) => {
      if (u === v || isFollower[u] === 1 || shortest(network, u, v) < 0) return false;
      return shortest(network, v, u) < 0 || u < v;
    }),
  );
}

function inOrder(shop: Shop, before: readonly Int32Array[]): Int32Array {
  const { earliest, variableCount } = shop.network;
  const rank = before.map((list) => list.length);
  return Int32Array.from({ length: variableCount }, (_, v) => v).sort(
    (a, b) => (rank[a] as number) - (rank[b] as number) || (earliest[a] as number) - (earliest[b] as number) || a - b,
  );
}

function nearest(shop: Shop, before: readonly Int32Array[]): Pick<BeamShop, 'nearFrom' | 'nearPoint' | 'nearLag'> {
  const { network } = shop;
  const nearFrom = new Int32Array(before.length + 1);
  const points: number[] = [];
  const lags: number[] = [];
  before.forEach((list, v) => {
    for (const u of list) {
      const lag = shortest(network, u, v);
      const isImplied = list.some(
        (w) => w !== u && (before[w] as Int32Array).includes(u) && shortest(network, u, w) + shortest(network, w, v) >= lag,
      );
      if (isImplied) continue;
      points.push(u);
      lags.push(lag);
    }
    nearFrom[v + 1] = points.length;
  });
  return { nearFrom, nearPoint: Int32Array.from(points), nearLag: Int32Array.from(lags) };
}

type Server = Pick<BeamShop, 'server' | 'serverLength' | 'serverOffset' | 'serverPoints'>;

/** The one pool of capacity one that most uses are of, with no other pool to choose; null when there is none. */
function serverOf(shop: Shop): Server | null {
  const { network, problem, uses } = shop;
  const times = problem.pools.map((_, p) => uses.filter((use) => use.pools.includes(p)).length);
  const server = times.indexOf(Math.max(...times));
  const mine = uses.filter((use) => use.pools.includes(server));
  const isAlone =
    problem.pools[server]?.capacity === 1 && mine.every((use) => use.pools.length === 1 && use.fromVar === use.untilVar);
  if (!isAlone || mine.length === 0) return null;
  const serverLength = new Int32Array(network.variableCount);
  const serverOffset = new Int32Array(network.variableCount);
  // Pieces of work that hang rigidly together count as one, what lies between them left out.
  for (const { fromVar, fromOff, minLength } of mine) {
    const isFirst = serverLength[fromVar] === 0;
    serverOffset[fromVar] = isFirst ? fromOff : Math.min(serverOffset[fromVar] as number, fromOff);
    serverLength[fromVar] = (serverLength[fromVar] as number) + minLength;
  }
  const serverPoints = Int32Array.from(new Set(mine.map((use) => use.fromVar))).sort();
  return { server, serverLength, serverOffset, serverPoints };
}

/** When the server is through at the earliest: a start, all of its work, and what follows the last of it. */
function throughAt(shop: Shop, { serverPoints, serverLength }: Server, tail: Int32Array): number {
  const least = (pick: (v: number) => number): number => serverPoints.reduce((found, v) => Math.min(found, pick(v)), NEVER);
  const work = serverPoints.reduce((sum, v) => sum + (serverLength[v] as number), 0);
  return (
    least((v) => shop.network.earliest[v] as number) + work + least((v) => (tail[v] as number) - (serverLength[v] as number))
  );
}

function ranked({ serverPoints }: Server, tail: Int32Array): Pick<BeamShop, 'byRank' | 'rankOf'> {
  const byRank = serverPoints.slice().sort((a, b) => (tail[b] as number) - (tail[a] as number) || a - b);
  const rankOf = new Int32Array(tail.length);
  byRank.forEach((v, rank) => {
    rankOf[v] = rank;
  });
  return { byRank, rankOf };
}

/** Whether a pool needs no look: all its work is done by the server meanwhile, which does one piece at a time. */
function isAlongside(shop: Shop, p: number, server: number): boolean {
  const { pools } = shop.problem;
  const { open, capacity } = pools[p] as Pool;
  const served = shop.uses.filter((use) => use.pools[0] === server);
  const isServed = (use: UseOfPool): boolean =>
    use.pools.length === 1 &&
    use.amount <= capacity &&
    served.some(
      ({ fromVar, fromOff, untilVar, untilOff }) =>
        fromVar === use.fromVar && untilVar === use.untilVar && fromOff <= use.fromOff && untilOff >= use.untilOff,
    );
  const hours = pools[server]?.open ?? [];
  const isOpen = hours.every(([from, until]) => open.some(([start, end]) => start <= from && until <= end));
  return p !== server && isOpen && shop.uses.every((use) => !use.pools.includes(p) || isServed(use));
}

function twinPoints(shop: Shop, twins: Twins): Int32Array {
  const { network, problem } = shop;
  const before = new Int32Array(network.variableCount).fill(-1);
  const first = (unit: number): number => network.startVar[problem.units[unit]?.tasks[0] as number] as number;
  for (const group of twins.children)
    for (let i = 1; i < group.length; i++) before[first(group[i] as number)] = first(group[i - 1] as number);
  for (const group of twins.parents)
    for (let i = 1; i < group.length; i++) before[first(group[i]?.unit as number)] = first(group[i - 1]?.unit as number);
  return before;
}

function groupsOf(shop: Shop): Pick<BeamShop, 'groupOf' | 'groupCount' | 'gap' | 'reach'> {
  const keyOf = ({ low, high }: Range): string => `${low} ${high}`;
  const ranges = [...new Map(shop.stays.map((stay) => [keyOf(stay), { low: stay.low, high: stay.high }])).values()];
  const keys = ranges.map(keyOf);
  const within = (chamber: Chamber): Range[] => ranges.map((range) => rangeIn(chamber, range));
  return {
    groupOf: Int32Array.from(shop.stays, (stay) => keys.indexOf(keyOf(stay))),
    groupCount: ranges.length,
    gap: shop.problem.chambers.map((chamber) => {
      const mine = within(chamber);
      return Int32Array.from(mine.flatMap((a) => mine.map((b) => gapBetween(chamber, a, b))));
    }),
    reach: shop.problem.chambers.map((chamber) => Int32Array.from(within(chamber), (range) => reachedAt(chamber, range))),
  };
}

function slotsOf(shop: Shop): Pick<BeamShop, 'poolSlot' | 'chamberSlot' | 'slotCount'> {
  let slotCount = 0;
  const next = (size: number): number => {
    slotCount += size;
    return slotCount - size;
  };
  const poolSlot = Int32Array.from(shop.problem.pools, (pool) => next(pool.capacity));
  const chamberSlot = Int32Array.from(shop.problem.chambers, (chamber) => next(chamber.room));
  return { poolSlot, chamberSlot, slotCount };
}

/** Least time from each point to the makespan, `lateBy` counted as what comes after a unit is ready. */
function tailsOf(shop: Shop, lateBy: (unit: number) => number): Int32Array {
  const { network, problem } = shop;
  const tails = new Int32Array(network.variableCount);
  problem.units.forEach(({ ready }, u) => {
    if (ready === null) return;
    const [variables, offsets] = ready.edge === 'start' ? [network.startVar, network.startOff] : [network.endVar, network.endOff];
    const at = variables[ready.task] as number;
    const after = (offsets[ready.task] as number) + ready.offset + lateBy(u);
    for (const v of network.members[network.component[at] as number] as Int32Array) {
      const path = shortest(network, v, at);
      if (path !== NO_PATH) tails[v] = Math.max(tails[v] as number, path + after);
    }
  });
  return tails;
}

/** What is due before the hands can be through with everything is more pressing by as much: the k-th of a family by its k-th due. */
function pressing(shop: Shop, through: number): (unit: number) => number {
  const { families, units } = shop.problem;
  const late = new Map<number, number>();
  families.forEach(({ dues, latePrice }, f) => {
    if (latePrice === 0) return;
    const mine = units.flatMap((unit, u) => (unit.family === f ? [u] : []));
    mine.forEach((u, k) => {
      late.set(u, Math.max(0, through - (dues[k] ?? through)));
    });
  });
  return (unit) => late.get(unit) ?? 0;
}

/** Whether the beam knows how to deal with all of a shop. */
function isWithin(shop: Shop): boolean {
  const { chambers, units, prices, pools, horizon } = shop.problem;
  if (chambers.some((chamber) => chamber.together || chamber.underWay !== undefined)) return false;
  if (prices.fromFirstMark || (prices.move ?? 0) > 0) return false;
  if (shop.uses.some((use) => use.durations !== null)) return false;
  // What can stand at one time only would have to be held free beforehand.
  const { earliest, latest } = shop.network;
  if (earliest.some((time, v) => time === latest[v])) return false;
  const beginnings = shop.stays.map((stay) => stay.startVar);
  if (new Set(beginnings).size < beginnings.length) return false;
  const slots = [...pools.map((pool) => pool.capacity), ...chambers.map((chamber) => chamber.room)];
  return units.length > 0 && horizon < NEVER && slots.reduce((sum, count) => sum + count, 0) <= MOST_SLOTS;
}

/** Lays a shop out for the beam; null when something in it is beyond the beam. */
export function beamShopOf(shop: Shop): BeamShop | null {
  if (!isWithin(shop)) return null;
  const { network, uses, stays, problem } = shop;
  const count = network.variableCount;
  const isFollower = new Uint8Array(count);
  for (const { variable, isOwn } of shop.burstAfter) if (isOwn) isFollower[variable] = 1;
  const server = serverOf(shop);
  const choices = count - isFollower.reduce((sum, one) => sum + one, 0);
  if (server === null || server.serverPoints.length <= SERVED_SHARE * choices) return null;
  const before = pointsBefore(shop, isFollower);
  const watched = problem.pools.map((_, p) => !isAlongside(shop, p, server.server));
  const tail = tailsOf(
    shop,
    pressing(
      shop,
      throughAt(
        shop,
        server,
        tailsOf(shop, () => 0),
      ),
    ),
  );
  const byPoint = (list: readonly { readonly point: number; readonly i: number }[]): Int32Array[] => {
    const found: number[][] = Array.from({ length: count }, () => []);
    for (const { point, i } of list) found[point]?.push(i);
    return found.map((one) => Int32Array.from(one));
  };
  const isOpen = ({ fromVar, untilVar }: UseOfPool): boolean => fromVar !== untilVar;
  const stayFrom = new Int32Array(count).fill(-1);
  stays.forEach(({ startVar }: StayUse, s) => {
    stayFrom[startVar] = s;
  });
  return {
    shop,
    isFollower,
    choices,
    before,
    isFree: Uint8Array.from(before, (_, v) =>
      Number((server.serverLength[v] as number) > 0 || !before.some((list) => list.includes(v))),
    ),
    order: inOrder(shop, before),
    ...nearest(shop, before),
    tail,
    ...ranked(server, tail),
    ...server,
    twinBefore: twinPoints(
      shop,
      twinsOf(shop, () => true),
    ),
    ...slotsOf(shop),
    ...groupsOf(shop),
    usesFrom: byPoint(uses.flatMap((use, i) => (use.pools.some((p) => watched[p]) ? [{ point: use.fromVar, i }] : []))).map(
      (list) => list.sort((a, b) => (uses[a]?.fromOff ?? 0) - (uses[b]?.fromOff ?? 0) || a - b),
    ),
    usesUntil: byPoint(uses.flatMap((use, i) => (isOpen(use) ? [{ point: use.untilVar, i }] : []))),
    staysUntil: byPoint(stays.flatMap((stay, i) => (stay.startVar === stay.endVar ? [] : [{ point: stay.endVar, i }]))),
    stayFrom,
    usesOfPool: problem.pools.map((_, p) => {
      const isMine = ({ pools, minLength }: UseOfPool): boolean => pools.length === 1 && pools[0] === p && minLength > 0;
      const isPlanned = p !== server.server && watched[p] === true;
      return Int32Array.from(isPlanned ? uses.flatMap((use, u) => (isMine(use) ? [u] : [])) : []);
    }),
  };
}
