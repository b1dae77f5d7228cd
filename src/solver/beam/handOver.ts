// The shop as one list of whole numbers, each of its lists behind its length, in the order in which core/shop.ts reads them. Written
// once for each beam.
import type { Random } from '../random.ts';
import type { StayUse, UseOfPool } from '../shop.ts';
import { type BeamShop, NEVER } from './beamShop.ts';

/** How many values each half of a mark can have. */
const MARKS = 2 ** 26;

type Numbers = ArrayLike<number>;

class Tape {
  readonly lists: Numbers[] = [];

  one(list: Numbers): void {
    this.lists.push(list);
  }

  /** One number of each. */
  each<T>(items: readonly T[], ...numbers: readonly ((item: T) => number)[]): void {
    for (const number of numbers) this.one(items.map(number));
  }

  /** Lists one behind the other, after where each begins. */
  many(lists: readonly Numbers[]): void {
    const begins = [0];
    for (const list of lists) begins.push((begins.at(-1) as number) + list.length);
    this.one(begins);
    this.one(lists.flatMap((list) => Array.from(list)));
  }
}

/** What the core is to know of a shop; marks are drawn by chance. */
export function handOver(beam: BeamShop, random: Random): Int32Array {
  const tape = new Tape();
  writeCounts(tape, beam);
  writePoints(tape, beam);
  writeUses(tape, beam);
  writePlaces(tape, beam);
  writeBursts(tape, beam);
  writeClosedTimes(tape, beam);
  tape.one(Int32Array.from({ length: 2 * beam.shop.network.variableCount }, () => random.below(MARKS)));
  return Int32Array.from(tape.lists.flatMap((list) => [list.length, ...Array.from(list)]));
}

function writeCounts(tape: Tape, beam: BeamShop): void {
  const { shop, choices, groupCount, slotCount, poolSlot, server, serverPoints } = beam;
  const { bursts, chambers, pools } = shop.problem;
  tape.one([
    shop.network.variableCount,
    choices,
    shop.uses.length,
    shop.stays.length,
    bursts.length,
    chambers.length,
    pools.length,
    groupCount,
    slotCount,
    poolSlot[server] as number,
    serverPoints.length,
  ]);
}

function writePoints(tape: Tape, beam: BeamShop): void {
  const { network, burstOfVar } = beam.shop;
  for (const list of [network.earliest, network.latest, beam.isFollower, beam.isFree, beam.tail]) tape.one(list);
  for (const list of [beam.serverLength, beam.serverOffset, beam.rankOf, beam.twinBefore, beam.stayFrom]) tape.one(list);
  tape.each(
    burstOfVar,
    (entry) => entry?.burst ?? -1,
    (entry) => entry?.offset ?? 0,
  );
  tape.one(network.component);
  tape.one(network.indexInComponent);
  tape.many(network.members);
  tape.many(network.lag);
  tape.one(beam.order);
  tape.one(beam.byRank);
  tape.many(beam.before);
  for (const list of [beam.nearFrom, beam.nearPoint, beam.nearLag]) tape.one(list);
  for (const lists of [beam.usesFrom, beam.usesUntil, beam.staysUntil]) tape.many(lists);
}

function writeUses(tape: Tape, { shop, groupOf }: BeamShop): void {
  tape.each<UseOfPool>(
    shop.uses,
    (use) => use.fromVar,
    (use) => use.fromOff,
    (use) => use.untilVar,
    (use) => use.untilOff,
    (use) => use.minLength,
    (use) => use.amount,
  );
  tape.many(shop.uses.map((use) => use.pools));
  tape.each<StayUse>(
    shop.stays,
    (stay) => stay.startVar,
    (stay) => stay.startOff,
    (stay) => stay.endVar,
    (stay) => stay.endOff,
    (stay) => stay.minLength,
    (stay) => stay.room,
  );
  tape.one(groupOf);
  tape.many(shop.stays.map((stay) => stay.chambers));
}

function writePlaces(tape: Tape, beam: BeamShop): void {
  const { pools, chambers } = beam.shop.problem;
  tape.one(beam.poolSlot);
  tape.each(pools, (pool) => pool.capacity);
  tape.many(pools.map((pool) => pool.open.flat()));
  tape.many(beam.usesOfPool);
  tape.one(beam.chamberSlot);
  tape.each(chambers, (chamber) => chamber.room);
  tape.many(beam.gap);
  tape.many(beam.reach);
}

function writeBursts(tape: Tape, { shop }: BeamShop): void {
  const { bursts } = shop.problem;
  tape.each(
    shop.burstAfter,
    (after) => after.variable,
    (after) => after.offset,
  );
  tape.each(
    bursts,
    (burst) => burst.wait,
    (burst) => burst.within,
  );
  tape.many(bursts.map((burst) => burst.members.map(({ task }) => shop.network.startVar[task] as number)));
}

/** When the server is closed, with an end that is never reached. */
function writeClosedTimes(tape: Tape, { shop, server }: BeamShop): void {
  const { pools, horizon } = shop.problem;
  const closed: [number, number][] = [];
  let until = 0;
  for (const [from, end] of pools[server]?.open ?? []) {
    if (from > until) closed.push([until, from]);
    until = end;
  }
  if (until < horizon) closed.push([until, horizon]);
  closed.push([2 * NEVER, 2 * NEVER]);
  tape.each(
    closed,
    ([from]) => from,
    ([, end]) => end,
  );
}
