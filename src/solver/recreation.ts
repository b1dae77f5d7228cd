// What one round of the search takes out and how it puts it back: which blocks, in which order, not before when.
import type { CostCounter } from './cost.ts';
import type { Random } from './random.ts';
import type { Block, Shop, StayUse } from './shop.ts';
import type { ShopState } from './shopState.ts';

export type Recreation = {
  /** Blocks to take out, in the order in which they go back. */
  readonly blocks: readonly number[];
  readonly release: (block: number) => number;
  /** Whether children go back in random order. */
  readonly isShuffled: boolean;
  /** Whether some variables are put back a little later than they could be. */
  readonly isJittered: boolean;
  /** The only chamber a stay may take, or null when any will do. */
  readonly chamberOf: ((stay: number) => number) | null;
  /** The release to go on with when the round is accepted. */
  readonly newRelease?: number;
};

/** Share of rounds that pack everything from some time on again, and share of those that take out many blocks. */
const REPACK_SHARE = 0.06;
const LARGE_SHARE = 0.1;

/** Most blocks taken out in a round, usually and now and then. */
const MOST_BLOCKS = 6;
const MOST_BLOCKS_NOW_AND_THEN = 14;

function variablesOf(block: Block): number[] {
  return [...block.trunk, ...block.children.flatMap((child) => child.variables)];
}

/** Time of the first placed variable of a block; Infinity when none is. */
function startOf(shop: Shop, state: ShopState, b: number): number {
  let start = Number.POSITIVE_INFINITY;
  for (const v of variablesOf(shop.blocks[b] as Block)) if (state.isPlaced(v)) start = Math.min(start, state.time[v] as number);
  return start;
}

function withFollowers(shop: Shop, state: ShopState, blocks: Iterable<number>): Set<number> {
  const all = new Set(blocks);
  for (const b of [...all]) {
    for (const after of (shop.blocks[b] as Block).after) {
      if (startOf(shop, state, after) !== Number.POSITIVE_INFINITY) all.add(after);
    }
  }
  return all;
}

function incomplete(shop: Shop, state: ShopState): number[] {
  return shop.blocks.filter((block) => variablesOf(block).some((v) => !state.isPlaced(v))).map((block) => block.id);
}

/** Blocks that use a pool or chamber near the given time: what stands in each other's way. */
function neighbours(shop: Shop, state: ShopState, seed: number, count: number, random: Random): number[] {
  const at = startOf(shop, state, seed);
  const centre = at === Number.POSITIVE_INFINITY ? random.below(shop.problem.horizon) : at;
  const others = shop.blocks
    .filter((block) => block.id !== seed)
    .map((block) => ({ id: block.id, far: Math.abs(startOf(shop, state, block.id) - centre) * (0.5 + random.next()) }))
    .filter((other) => other.far !== Number.POSITIVE_INFINITY)
    .sort((a, b) => a.far - b.far);
  return [seed, ...others.slice(0, count - 1).map((other) => other.id)];
}

/** A block whose ready time decides the makespan, or that is late. */
function lastBlock(shop: Shop, counter: CostCounter, random: Random): number {
  let latest = -1;
  let found = random.below(shop.blocks.length);
  shop.problem.units.forEach((unit, u) => {
    if (unit.ready === null) return;
    const ready = counter.readyTime(u) + random.next();
    if (ready > latest) {
      latest = ready;
      found = shop.blockOfUnit[u] as number;
    }
  });
  return found;
}

/** Draws what the next round does. */
export function recreationOf(shop: Shop, state: ShopState, counter: CostCounter, random: Random, release: number): Recreation {
  const count = shop.blocks.length;
  const isSpan = shop.problem.prices.fromFirstMark;
  const draw = random.next();
  if (draw < REPACK_SHARE || (isSpan && draw < 2 * REPACK_SHARE))
    return repack(shop, state, random, release, isSpan && random.next() < 0.7);
  const most = random.next() < LARGE_SHARE ? MOST_BLOCKS_NOW_AND_THEN : MOST_BLOCKS;
  const size = Math.min(count, 1 + random.below(Math.min(most, Math.max(2, count))));
  const seed = draw < 0.35 ? lastBlock(shop, counter, random) : random.below(count);
  const near = random.next() < 0.6 ? neighbours(shop, state, seed, size, random) : sample(count, size, seed, random);
  const missing = incomplete(shop, state);
  const retried = missing.length > 0 && random.next() < 0.5 ? [missing[random.below(missing.length)] as number] : [];
  const taken = withFollowers(shop, state, [...near, ...retried]);
  const blocks = inOrder(shop, state, [...taken], random);
  const delayed = random.next() < 0.15 ? (blocks[random.below(blocks.length)] as number) : -1;
  const delay =
    delayed < 0 ? 0 : Math.min(shop.problem.horizon, Math.max(release, startOf(shop, state, delayed))) + random.below(25);
  return {
    blocks,
    release: (b) => (b === delayed ? Math.max(release, delay) : release),
    isShuffled: random.next() < 0.7,
    isJittered: random.next() < 0.5,
    chamberOf: random.next() < 0.3 ? chamberChoice(shop, random) : null,
  };
}

function sample(count: number, size: number, seed: number, random: Random): number[] {
  const chosen = new Set([seed]);
  while (chosen.size < size) chosen.add(random.below(count));
  return [...chosen];
}

/** By chance: at random, by their old start with some noise, or longest first with some noise. */
function inOrder(shop: Shop, state: ShopState, blocks: readonly number[], random: Random): number[] {
  const draw = random.next();
  const key = (b: number): number => {
    if (draw < 0.4) return random.next();
    if (draw < 0.7) return Math.min(shop.problem.horizon, startOf(shop, state, b)) + 60 * random.next();
    return -(shop.blocks[b] as Block).length * (0.6 + random.next());
  };
  const keyed = blocks.map((b) => ({ b, key: key(b) }));
  return keyed.sort((x, y) => x.key - y.key || x.b - y.b).map(({ b }) => b);
}

/** Everything from some time on goes back in the order it stood in: gaps that opened earlier are used. */
function repack(shop: Shop, state: ShopState, random: Random, release: number, movesRelease: boolean): Recreation {
  const newRelease = movesRelease ? Math.max(0, release + random.below(61) - 25) : release;
  const from = movesRelease || random.next() < 0.5 ? -1 : random.below(shop.problem.horizon);
  const starts = shop.blocks.map((block) => startOf(shop, state, block.id));
  const taken = withFollowers(
    shop,
    state,
    shop.blocks.filter((block) => (starts[block.id] as number) >= from).map((block) => block.id),
  );
  const noise = random.next() < 0.5 ? 0 : 30;
  const keyed = [...taken].map((b) => ({
    b,
    key: Math.min(2 * shop.problem.horizon, starts[b] as number) + noise * random.next(),
  }));
  const blocks = keyed.sort((x, y) => x.key - y.key || x.b - y.b).map(({ b }) => b);
  return { blocks, release: () => newRelease, isShuffled: false, isJittered: false, chamberOf: null, newRelease };
}

/** Sends every stay to one chamber drawn for its range, so that stays of one range gather. */
function chamberChoice(shop: Shop, random: Random): (stay: number) => number {
  const drawn = new Map<string, number>();
  return (s) => {
    const stay = shop.stays[s] as StayUse;
    const key = `${stay.low} ${stay.high} ${stay.chambers.join(',')}`;
    const known = drawn.get(key) ?? (stay.chambers[random.below(stay.chambers.length)] as number);
    drawn.set(key, known);
    return random.next() < 0.8 ? known : -1;
  };
}
