// A schedule in the making: which variables are placed when, which pools serve them, which chambers hold them.
// Placing and lifting a variable are exact opposites. Used by the builder and the search; mutable.
import { ChamberLine } from './chamberLine.ts';
import { PoolLine } from './poolLine.ts';
import type { Shop, StayUse, UseOfPool } from './shop.ts';

export const UNPLACED = -1;

/** What a block looked like, enough to put it back. */
export type BlockRecord = {
  readonly block: number;
  readonly times: readonly (readonly [variable: number, time: number])[];
  readonly pools: readonly (readonly [use: number, pool: number])[];
  readonly chambers: readonly (readonly [stay: number, chamber: number])[];
};

export class ShopState {
  readonly shop: Shop;
  readonly pools: readonly PoolLine[];
  readonly chambers: readonly ChamberLine[];
  readonly time: Int32Array;
  readonly poolOfUse: Int32Array;
  readonly chamberOfStay: Int32Array;
  /** 1 when the stay joined a load that another stay had opened; set before its start is placed. */
  readonly isJoining: Uint8Array;
  readonly leadOfBurst: Int32Array;
  /** Rises with every placing, so that of two variables the later placed is known. */
  readonly stamp: Int32Array;
  private clock = 0;

  constructor(shop: Shop) {
    this.shop = shop;
    this.pools = shop.problem.pools.map((pool) => new PoolLine(pool, shop.problem.horizon));
    this.chambers = shop.problem.chambers.map((chamber) => new ChamberLine(chamber, shop.problem.horizon));
    this.time = new Int32Array(shop.network.variableCount).fill(UNPLACED);
    this.poolOfUse = new Int32Array(shop.uses.length).fill(-1);
    this.chamberOfStay = new Int32Array(shop.stays.length).fill(-1);
    this.isJoining = new Uint8Array(shop.stays.length);
    this.leadOfBurst = new Int32Array(shop.problem.bursts.length).fill(-1);
    this.stamp = new Int32Array(shop.network.variableCount);
  }

  isPlaced(variable: number): boolean {
    return this.time[variable] !== UNPLACED;
  }

  fromOf(use: UseOfPool): number {
    return (this.time[use.fromVar] as number) + use.fromOff;
  }

  untilOf(use: UseOfPool): number {
    return (this.time[use.untilVar] as number) + use.untilOff;
  }

  /** How long a task whose ends are placed lasts. */
  durationOf(task: number): number {
    const { startVar, startOff, endVar, endOff } = this.shop.network;
    const start = (this.time[startVar[task] as number] as number) + (startOff[task] as number);
    return (this.time[endVar[task] as number] as number) + (endOff[task] as number) - start;
  }

  /** Places a variable: stays whose both ends are known now take their chamber, uses their pool. False (and undone) when a pool is short. */
  place(variable: number, time: number, choosePool: (use: number) => number): boolean {
    this.time[variable] = time;
    this.clock += 1;
    this.stamp[variable] = this.clock;
    const entry = this.shop.burstOfVar[variable];
    if (entry != null && this.leadOfBurst[entry.burst] === -1) this.leadOfBurst[entry.burst] = variable;
    for (const s of this.shop.staysOfVar[variable] as readonly number[]) this.enterWhenWhole(s);
    for (const u of this.shop.usesOfVar[variable] as readonly number[]) {
      const use = this.shop.uses[u] as UseOfPool;
      if (!this.isPlaced(use.fromVar) || !this.isPlaced(use.untilVar)) continue;
      const from = this.fromOf(use);
      const until = this.untilOf(use);
      if (until <= from || (use.oncePerLoad && this.isTaskJoining(use.task))) continue;
      const pool = choosePool(u);
      if (pool < 0) {
        this.lift(variable);
        return false;
      }
      (this.pools[pool] as PoolLine).take(from, until, use.amount);
      this.poolOfUse[u] = pool;
    }
    return true;
  }

  private enterWhenWhole(s: number): void {
    const stay = this.shop.stays[s] as StayUse;
    if (!this.isPlaced(stay.startVar) || !this.isPlaced(stay.endVar)) return;
    const start = (this.time[stay.startVar] as number) + stay.startOff;
    const end = (this.time[stay.endVar] as number) + stay.endOff;
    const chamber = this.chambers[this.chamberOfStay[s] as number] as ChamberLine;
    chamber.add({ task: s, start, end, low: stay.low, high: stay.high, room: stay.room });
  }

  private isTaskJoining(task: number): boolean {
    const s = this.stayOfTask(task);
    return s >= 0 && this.isJoining[s] === 1;
  }

  private stayOfTask(task: number): number {
    for (const s of this.shop.staysOfVar[this.shop.network.startVar[task] as number] as readonly number[]) {
      if ((this.shop.stays[s] as StayUse).task === task) return s;
    }
    return -1;
  }

  /** Takes a variable out again. Of a load that stays, another tray inherits the uses served once. */
  lift(variable: number): void {
    for (const s of this.shop.staysOfVar[variable] as readonly number[]) {
      const stay = this.shop.stays[s] as StayUse;
      if (this.isPlaced(stay.startVar) && this.isPlaced(stay.endVar)) {
        const chamber = this.chambers[this.chamberOfStay[s] as number] as ChamberLine;
        if (chamber.stays.some((held) => held.task === s)) {
          chamber.remove(s);
          this.bequeath(s, stay);
        }
      }
      if (stay.startVar === variable) this.isJoining[s] = 0;
    }
    for (const u of this.shop.usesOfVar[variable] as readonly number[]) {
      const pool = this.poolOfUse[u] as number;
      if (pool < 0) continue;
      const use = this.shop.uses[u] as UseOfPool;
      (this.pools[pool] as PoolLine).give(this.fromOf(use), this.untilOf(use), use.amount);
      this.poolOfUse[u] = -1;
    }
    const entry = this.shop.burstOfVar[variable];
    if (entry != null && this.leadOfBurst[entry.burst] === variable) this.leadOfBurst[entry.burst] = -1;
    this.time[variable] = UNPLACED;
  }

  private bequeath(s: number, stay: StayUse): void {
    if (this.isJoining[s] === 0) {
      const start = (this.time[stay.startVar] as number) + stay.startOff;
      const chamber = this.chambers[this.chamberOfStay[s] as number];
      const heir = chamber?.stays.find((held) => held.start === start && held.task !== s && this.isJoining[held.task] === 1);
      if (heir !== undefined) {
        this.isJoining[heir.task] = 0;
        this.handOver(stay.task, (this.shop.stays[heir.task] as StayUse).task);
      }
    }
  }

  private onceUses(task: number): number[] {
    const { startVar, endVar } = this.shop.network;
    const near = new Set([
      ...(this.shop.usesOfVar[startVar[task] as number] ?? []),
      ...(this.shop.usesOfVar[endVar[task] as number] ?? []),
    ]);
    return [...near]
      .filter((u) => (this.shop.uses[u] as UseOfPool).oncePerLoad && (this.shop.uses[u] as UseOfPool).task === task)
      .sort((a, b) => a - b);
  }

  private handOver(fromTask: number, toTask: number): void {
    const to = this.onceUses(toTask);
    this.onceUses(fromTask).forEach((u, i) => {
      this.poolOfUse[to[i] as number] = this.poolOfUse[u] as number;
      this.poolOfUse[u] = -1;
    });
  }

  /** The pool that serves a use; for a stay that joined a load, the pool that serves the whole load. */
  servingPool(u: number): number {
    const own = this.poolOfUse[u] as number;
    const use = this.shop.uses[u] as UseOfPool;
    if (own >= 0 || !use.oncePerLoad) return own;
    const s = this.stayOfTask(use.task);
    const chamber = this.chambers[this.chamberOfStay[s] as number];
    const mine = chamber?.stays.find((held) => held.task === s);
    const opener = chamber?.stays.find((held) => held.start === mine?.start && this.isJoining[held.task] === 0);
    if (opener === undefined) return -1;
    const openerUses = this.onceUses((this.shop.stays[opener.task] as StayUse).task);
    return this.poolOfUse[openerUses[this.onceUses(use.task).indexOf(u)] as number] as number;
  }

  record(block: number): BlockRecord {
    const { trunk, children } = this.shop.blocks[block] as Shop['blocks'][number];
    const placed = [...trunk, ...children.flatMap((child) => child.variables)].filter((v) => this.isPlaced(v));
    placed.sort((a, b) => (this.stamp[a] as number) - (this.stamp[b] as number));
    const uses = new Set(placed.flatMap((v) => this.shop.usesOfVar[v] as readonly number[]));
    const stays = new Set(placed.flatMap((v) => this.shop.staysOfVar[v] as readonly number[]));
    return {
      block,
      times: placed.map((v) => [v, this.time[v] as number]),
      pools: [...uses].map((u) => [u, this.servingPool(u)] as const).filter(([, pool]) => pool >= 0),
      chambers: [...stays].map((s) => [s, this.chamberOfStay[s] as number]),
    };
  }

  /** Puts a block back as recorded. Whatever it needs must be free. */
  restore(record: BlockRecord): void {
    const pools = new Map(record.pools);
    for (const [s, chamber] of record.chambers) this.chamberOfStay[s] = chamber;
    for (const [v, time] of record.times) {
      this.setJoining(v, time);
      const isBack = this.place(v, time, (u) => pools.get(u) ?? -1);
      if (!isBack) throw new Error(`a recorded block does not go back (variable ${v} at ${time})`);
    }
  }

  /** Whether the stays that begin at a variable find a load to join: the first one back opens it. */
  private setJoining(variable: number, time: number): void {
    for (const s of this.shop.staysOfVar[variable] as readonly number[]) {
      const stay = this.shop.stays[s] as StayUse;
      if (stay.startVar !== variable) continue;
      const c = this.chamberOfStay[s] as number;
      const isTogether = this.shop.problem.chambers[c]?.together === true;
      this.isJoining[s] = isTogether && this.chambers[c]?.stays.some((held) => held.start === time + stay.startOff) ? 1 : 0;
    }
  }

  clear(block: number): void {
    const { trunk, children } = this.shop.blocks[block] as Shop['blocks'][number];
    for (const child of children) for (const v of child.variables) if (this.isPlaced(v)) this.lift(v);
    for (const v of trunk) if (this.isPlaced(v)) this.lift(v);
  }
}
