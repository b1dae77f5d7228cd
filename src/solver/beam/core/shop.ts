// The shop as the beam's core keeps it: lists of whole numbers read from one that is handed over, each behind its length, in the
// order in which ../handOver.ts writes them. Nothing here changes afterwards. Part of the beam's core; AssemblyScript, as all of it.
import { at } from '../../assembly/memory';

/** Later than any time. */
export const NEVER: i32 = 1000000;

let tape: usize = 0;

function next(): usize {
  const list = tape + 4;
  tape = list + ((<usize>load<i32>(tape)) << 2);
  return list;
}

/** Lists one behind the other, and where each begins; one begin more than there are lists. */
class Lists {
  private readonly begins: usize = next();
  readonly items: usize = next();

  from(i: i32): i32 {
    return at(this.begins, i);
  }

  until(i: i32): i32 {
    return at(this.begins, i + 1);
  }

  item(k: i32): i32 {
    return at(this.items, k);
  }
}

export let points: i32 = 0;
export let choices: i32 = 0;
export let useCount: i32 = 0;
export let stayCount: i32 = 0;
export let burstCount: i32 = 0;
export let chamberCount: i32 = 0;
export let poolCount: i32 = 0;
export let groupCount: i32 = 0;
export let slotCount: i32 = 0;
/** The slot of the server, which has one. */
export let serverSlot: i32 = 0;

/** Per point. */
export let earliest: usize = 0;
export let latest: usize = 0;
export let isFollower: usize = 0;
export let isFree: usize = 0;
export let tail: usize = 0;
export let serverLength: usize = 0;
export let serverOffset: usize = 0;
export let rankOf: usize = 0;
export let twinBefore: usize = 0;
export let stayFrom: usize = 0;
/** The burst that a point opens or joins, or -1, and its offset there. */
export let burstOf: usize = 0;
export let burstOffset: usize = 0;
/** Points that hang together: which of such parts a point is in, and where in it; lags between all of a part, row by row. */
export let partOf: usize = 0;
export let indexInPart: usize = 0;
export let parts: Lists = changetype<Lists>(0);
export let lags: Lists = changetype<Lists>(0);

/** All points, none before those it waits for. */
export let order: usize = 0;
/** Points of the server, by their ranks. */
export let byRank: usize = 0;
export let serverPointCount: i32 = 0;
export let before: Lists = changetype<Lists>(0);
export let near: Lists = changetype<Lists>(0);
/** Beside `near`: the lags. */
export let nearLag: usize = 0;
export let usesFrom: Lists = changetype<Lists>(0);
export let usesUntil: Lists = changetype<Lists>(0);
export let staysUntil: Lists = changetype<Lists>(0);

/** Per use. */
export let useFrom: usize = 0;
export let useFromOff: usize = 0;
export let useUntil: usize = 0;
export let useUntilOff: usize = 0;
export let useLength: usize = 0;
export let useAmount: usize = 0;
export let usePools: Lists = changetype<Lists>(0);

/** Per stay. */
export let stayStart: usize = 0;
export let stayStartOff: usize = 0;
export let stayEnd: usize = 0;
export let stayEndOff: usize = 0;
export let stayLength: usize = 0;
export let stayRoom: usize = 0;
export let groupOf: usize = 0;
export let stayChambers: Lists = changetype<Lists>(0);

/** Per pool; hours are begins and ends by turns. */
export let poolSlot: usize = 0;
export let poolCapacity: usize = 0;
export let poolHours: Lists = changetype<Lists>(0);
export let usesOfPool: Lists = changetype<Lists>(0);

/** Per chamber; times between stays of two groups, [first * groupCount + second], and before the first of a group. */
export let chamberSlot: usize = 0;
export let chamberRoom: usize = 0;
export let gaps: Lists = changetype<Lists>(0);
export let reach: Lists = changetype<Lists>(0);

/** Per burst: the point and offset of the end it comes after, how long after, and within what time its members begin. */
export let burstAfter: usize = 0;
export let burstAfterOff: usize = 0;
export let burstWait: usize = 0;
export let burstWithin: usize = 0;
/** Points at which its members begin. */
export let burstMembers: Lists = changetype<Lists>(0);

/** When the server is closed: begins and ends, the last never over. */
export let closedFrom: usize = 0;
export let closedUntil: usize = 0;
/** Two numbers per point, by chance. */
export let marks: usize = 0;

/** Reads all of it. */
export function readShop(address: usize): void {
  tape = address;
  const counts = next();
  points = at(counts, 0);
  choices = at(counts, 1);
  useCount = at(counts, 2);
  stayCount = at(counts, 3);
  burstCount = at(counts, 4);
  chamberCount = at(counts, 5);
  poolCount = at(counts, 6);
  groupCount = at(counts, 7);
  slotCount = at(counts, 8);
  serverSlot = at(counts, 9);
  serverPointCount = at(counts, 10);
  readPoints();
  readUses();
  readPlaces();
  burstAfter = next();
  burstAfterOff = next();
  burstWait = next();
  burstWithin = next();
  burstMembers = new Lists();
  closedFrom = next();
  closedUntil = next();
  marks = next();
}

function readPoints(): void {
  earliest = next();
  latest = next();
  isFollower = next();
  isFree = next();
  tail = next();
  serverLength = next();
  serverOffset = next();
  rankOf = next();
  twinBefore = next();
  stayFrom = next();
  burstOf = next();
  burstOffset = next();
  partOf = next();
  indexInPart = next();
  parts = new Lists();
  lags = new Lists();
  order = next();
  byRank = next();
  before = new Lists();
  near = new Lists();
  nearLag = next();
  usesFrom = new Lists();
  usesUntil = new Lists();
  staysUntil = new Lists();
}

function readUses(): void {
  useFrom = next();
  useFromOff = next();
  useUntil = next();
  useUntilOff = next();
  useLength = next();
  useAmount = next();
  usePools = new Lists();
  stayStart = next();
  stayStartOff = next();
  stayEnd = next();
  stayEndOff = next();
  stayLength = next();
  stayRoom = next();
  groupOf = next();
  stayChambers = new Lists();
}

function readPlaces(): void {
  poolSlot = next();
  poolCapacity = next();
  poolHours = new Lists();
  usesOfPool = new Lists();
  chamberSlot = next();
  chamberRoom = next();
  gaps = new Lists();
  reach = new Lists();
}
