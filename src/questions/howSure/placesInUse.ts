// Which places of each pool are free from when, morning by morning. A tray takes the place that has been free the shortest
// of those free when it comes, else it waits for the first that will be. Used by mornings.ts.
import type { Course, Use } from './course.ts';

/** Free since ever, and taken until nobody knows when yet. */
const EVER = Number.NEGATIVE_INFINITY;
const TAKEN = Number.POSITIVE_INFINITY;

type Pool = {
  readonly room: number;
  /** Places of one morning stand together. */
  readonly freeFrom: Float64Array;
  /** Which use holds, or held last, a place. */
  readonly heldBy: Int32Array;
};

/** A use whose pool can be full: where it has more uses than places. */
type HeldUse = { readonly use: Use; readonly number: number; readonly pool: Pool; readonly placeOf: Int32Array };

export class PlacesInUse {
  private readonly block: number;
  private readonly pools: readonly Pool[];
  private readonly takenAt = new Map<number, HeldUse[]>();
  private readonly freedAt = new Map<number, HeldUse[]>();
  private readonly couldBeFreedAt = new Map<number, HeldUse[]>();
  private readonly held: HeldUse[] = [];

  constructor(course: Course, block: number) {
    this.block = block;
    const uses = course.pools.map(() => 0);
    for (const { pool } of course.uses) uses[pool] = (uses[pool] ?? 0) + 1;
    const pools = course.pools.map(({ room }, index) => {
      const isLimit = (uses[index] ?? 0) > room;
      const places = isLimit ? room * block : 0;
      return { room: isLimit ? room : 0, freeFrom: new Float64Array(places), heldBy: new Int32Array(places) };
    });
    this.pools = pools;
    for (const [number, use] of course.uses.entries()) {
      const pool = pools[use.pool];
      if (pool === undefined || pool.room === 0) continue;
      const held = { use, number, pool, placeOf: new Int32Array(block) };
      this.held.push(held);
      listed(this.takenAt, use.takenAt, held);
      // Work at bowl and bench is over so long after it began, whatever comes then.
      if (use.freed.from !== use.takenAt) listed(this.freedAt, use.freed.from, held);
      if (use.couldBeFreed !== undefined) listed(this.couldBeFreedAt, use.couldBeFreed, held);
    }
  }

  /** Everything is free. */
  clear(size: number): void {
    for (const { room, freeFrom, heldBy } of this.pools) {
      freeFrom.fill(EVER, 0, room * size);
      heldBy.fill(-1, 0, room * size);
    }
    for (const { placeOf } of this.held) placeOf.fill(-1, 0, size);
  }

  /** Takes a place for what begins at these times; moves the times to when it is free. */
  take(moment: number, times: Float64Array, factors: Float64Array): void {
    for (const held of this.takenAt.get(moment) ?? []) {
      const { lead } = held.use;
      for (let i = 0; i < times.length; i++) {
        const leadMinutes = lead.minutes === 0 ? 0 : lead.minutes * this.factor(factors, lead.draw, i);
        const wanted = (times[i] as number) + leadMinutes;
        const freeFrom = takePlace(held, i, wanted);
        if (freeFrom > wanted) times[i] = freeFrom - leadMinutes;
      }
    }
  }

  /** Work at bowl and bench that begins at these times leaves its place when it is done. */
  hold(moment: number, times: Float64Array, factors: Float64Array): void {
    for (const { use, pool, placeOf } of this.takenAt.get(moment) ?? []) {
      const { freed } = use;
      if (freed.from !== moment) continue;
      for (let i = 0; i < times.length; i++) {
        const place = placeOf[i] as number;
        const minutes = freed.minutes * this.factor(factors, freed.draw, i) + freed.plus;
        if (place >= 0) pool.freeFrom[place] = (times[i] as number) + minutes;
      }
    }
  }

  private factor(factors: Float64Array, draw: number, morning: number): number {
    return draw < 0 ? 1 : (factors[draw * this.block + morning] as number);
  }

  /** Frees the places of what leaves at these times. */
  free(moment: number, times: Float64Array): void {
    for (const held of this.couldBeFreedAt.get(moment) ?? []) freePlace(held, times);
    for (const held of this.freedAt.get(moment) ?? []) freePlace(held, times);
  }
}

function listed(lists: Map<number, HeldUse[]>, moment: number, held: HeldUse): void {
  const list = lists.get(moment);
  if (list === undefined) lists.set(moment, [held]);
  else list.push(held);
}

/** Takes a place in one morning and tells from when it is free. Where nothing is known to get free, it waits for nothing. */
function takePlace({ pool, placeOf, number }: HeldUse, morning: number, wanted: number): number {
  const { room, freeFrom, heldBy } = pool;
  let best = -1;
  let bestFrom = EVER;
  let first = -1;
  let firstFrom = TAKEN;
  for (let place = morning * room; place < (morning + 1) * room; place++) {
    const from = freeFrom[place] as number;
    if (from <= wanted && (best < 0 || from > bestFrom)) {
      best = place;
      bestFrom = from;
    }
    if (from < firstFrom) {
      first = place;
      firstFrom = from;
    }
  }
  const place = best >= 0 ? best : first;
  if (place < 0) return EVER;
  const from = freeFrom[place] as number;
  placeOf[morning] = place;
  freeFrom[place] = TAKEN;
  heldBy[place] = number;
  return from;
}

/** Frees a place, unless somebody has taken it since it could be freed. */
function freePlace({ pool, placeOf, number }: HeldUse, times: Float64Array): void {
  for (let i = 0; i < times.length; i++) {
    const place = placeOf[i] as number;
    if (place >= 0 && pool.heldBy[place] === number) pool.freeFrom[place] = times[i] as number;
  }
}
