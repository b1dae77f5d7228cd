// What is taken when: minutes of every pool, stays of every deck. Used by the baker's rule; slow and obvious.
import type { HeldStay } from '../../src/solver/chamberLine.ts';
import type { Chamber, ShopProblem } from '../../src/solver/problem.ts';

/** Room for rounding in divisions of degrees. */
const EPSILON = 1e-9;

type Range = { readonly low: number; readonly high: number };

/** Minutes a deck needs from one range to another. */
function travel(chamber: Chamber, from: Range, to: Range): number {
  const up = Math.max(0, to.low - from.high) / chamber.riseRate;
  const down = Math.max(0, from.low - to.high) / chamber.fallRate;
  return Math.ceil(Math.max(up, down) - EPSILON);
}

function inLimits(chamber: Chamber, { low, high }: Range): Range {
  return { low: Math.max(low, chamber.min), high: Math.min(high, chamber.max) };
}

export class Occupied {
  private readonly problem: ShopProblem;
  private readonly free: readonly Int32Array[];
  private readonly stays: readonly HeldStay[][];

  constructor(problem: ShopProblem) {
    this.problem = problem;
    this.free = problem.pools.map(({ capacity, open }) => {
      const minutes = new Int32Array(problem.horizon);
      for (const [from, until] of open) minutes.fill(capacity, Math.max(0, from), until);
      return minutes;
    });
    this.stays = problem.chambers.map(() => []);
  }

  /** The first of the pools with so much free all the while; -1 when there is none. */
  poolWithRoom(pools: readonly number[], from: number, until: number, amount: number): number {
    if (from < 0 || until > this.problem.horizon) return -1;
    const hasRoom = (pool: number): boolean => {
      const minutes = this.free[pool];
      for (let t = from; t < until; t++) if ((minutes?.[t] ?? 0) < amount) return false;
      return true;
    };
    return pools.find(hasRoom) ?? -1;
  }

  /** Takes (or with a negative amount gives back) room of a pool. */
  take(pool: number, from: number, until: number, amount: number): void {
    const minutes = this.free[pool];
    if (minutes === undefined) return;
    for (let t = from; t < until; t++) minutes[t] = (minutes[t] ?? 0) - amount;
  }

  /** Whether a deck has room for a stay and can be at its range in time, before and after. */
  mayStay(chamber: number, stay: HeldStay): boolean {
    const spec = this.problem.chambers[chamber];
    if (spec === undefined) return false;
    const range = inLimits(spec, stay);
    const initial = { low: spec.initial, high: spec.initial };
    if (range.low > range.high || stay.start < travel(spec, initial, range)) return false;
    const others = this.stays[chamber] ?? [];
    const isClear = others.every((held) => {
      const theirs = inLimits(spec, held);
      if (range.low <= theirs.high && theirs.low <= range.high) return true;
      return held.end + travel(spec, theirs, range) <= stay.start || stay.end + travel(spec, range, theirs) <= held.start;
    });
    if (!isClear) return false;
    for (let t = stay.start; t < stay.end; t++) {
      const held = others.filter((other) => other.start <= t && t < other.end).reduce((sum, other) => sum + other.room, 0);
      if (held + stay.room > spec.room) return false;
    }
    return true;
  }

  addStay(chamber: number, stay: HeldStay): void {
    this.stays[chamber]?.push(stay);
    this.stays[chamber]?.sort((a, b) => a.start - b.start || a.task - b.task);
  }

  removeStay(chamber: number, task: number): void {
    const list = this.stays[chamber];
    const at = list?.findIndex((stay) => stay.task === task) ?? -1;
    if (at >= 0) list?.splice(at, 1);
  }

  staysOf(chamber: number): readonly HeldStay[] {
    return this.stays[chamber] ?? [];
  }
}
