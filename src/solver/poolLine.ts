// The free capacity of one pool, time unit by time unit. Used by the builder; mutable, one array a pool.
import type { Pool } from './problem.ts';

/** Later than any time: nothing fits. */
export const NEVER = 1_000_000_000;

export class PoolLine {
  /** free[t]: capacity left during [t, t + 1). */
  readonly free: Int32Array;
  private readonly horizon: number;

  constructor(pool: Pool, horizon: number) {
    this.horizon = horizon;
    this.free = new Int32Array(horizon);
    for (const [from, until] of pool.open) this.free.fill(pool.capacity, Math.max(0, from), Math.min(horizon, until));
  }

  /** Earliest time at or after `from` at which `amount` is free for `length`; NEVER when there is none. */
  nextFit(from: number, length: number, amount: number): number {
    let at = Math.max(from, 0);
    let until = at + length;
    while (until <= this.horizon) {
      let t = until - 1;
      while (t >= at && (this.free[t] as number) >= amount) t--;
      if (t < at) return at;
      at = t + 1;
      until = at + length;
    }
    return NEVER;
  }

  /** First time at or after `from` at which `amount` is not free; the horizon when there is none. */
  reach(from: number, amount: number): number {
    let t = from;
    while (t < this.horizon && (this.free[t] as number) >= amount) t++;
    return t;
  }

  /** Last time before `until` at which `amount` is not free, or `from` - 1 when all of [from, until) is free. */
  lastBlock(from: number, until: number, amount: number): number {
    if (until > this.horizon) return until - 1;
    let t = until - 1;
    while (t >= from && (this.free[t] as number) >= amount) t--;
    return t;
  }

  take(from: number, until: number, amount: number): void {
    for (let t = from; t < until; t++) this.free[t] = (this.free[t] as number) - amount;
  }

  give(from: number, until: number, amount: number): void {
    for (let t = from; t < until; t++) this.free[t] = (this.free[t] as number) + amount;
  }
}
