// Builds a schedule block by block, each variable at its earliest time that every pool and chamber allows. Where a maximum
// lag leaves no time, the variable that set the limit is moved later and what came after it is taken up and placed again
// (schedule generation with unscheduling: Franck, Neumann and Schwindt 2001, OR Spektrum 23, section 3).

import type { ChamberLine } from './chamberLine.ts';
import { NO_PATH } from './network.ts';
import { NEVER, type PoolLine } from './poolLine.ts';
import type { Random } from './random.ts';
import type { Block, Shop, StayUse, UseOfPool } from './shop.ts';
import type { ShopState } from './shopState.ts';
import { NOBODY, VariableWindow } from './variableWindow.ts';

/** Times a block may be taken up and placed again before it counts as not placeable. */
const MOST_RETRIES = 300;

/** Children of a block dropped with the whole block tried again, before the rest are placed one by one as they fit. */
const MOST_DROPS = 5;

/** Failures of one variable after which its delays grow, so that a hopeless stretch of the day is crossed quickly. */
const PATIENCE = 8;

export class Builder {
  private readonly shop: Shop;
  private readonly state: ShopState;
  private readonly random: Random;
  /** Per variable: not before this time, raised while a block is being placed. */
  private readonly notBefore: Int32Array;
  /** Per variable: how often it was delayed since its block was begun. */
  private readonly delays: Int32Array;
  /** Per stay: the only chamber it may take, or -1 for any. Set by the search. */
  readonly onlyChamber: Int32Array;
  /** Per variable: how long after its earliest time it is tried at first; 0 for most. Set by the search. */
  readonly jitter: Int32Array;
  private readonly window: VariableWindow;
  private missedBy = 0;
  /** The unit at which the last block failed, -1 for the trunk. */
  failedUnit = -1;

  constructor(shop: Shop, state: ShopState, random: Random) {
    this.shop = shop;
    this.state = state;
    this.random = random;
    this.notBefore = new Int32Array(shop.network.variableCount).fill(NO_PATH);
    this.window = new VariableWindow(shop, state, this.notBefore);
    this.delays = new Int32Array(shop.network.variableCount);
    this.onlyChamber = new Int32Array(shop.stays.length).fill(-1);
    this.jitter = new Int32Array(shop.network.variableCount);
  }

  /**
   * Places a block whose predecessors are placed, children in the given order, nothing before `release`. Children that
   * do not fit and may be omitted are omitted. Returns false, with nothing placed, when the trunk cannot be placed either.
   */
  placeBlock(block: Block, childOrder: readonly number[], release: number): boolean {
    let order = [...childOrder];
    for (let drops = 0; drops < MOST_DROPS; drops++) {
      if (this.placeAll(this.sequence(block, order), release)) return true;
      const failed = order.find((c) => block.children[c]?.unit === this.failedUnit) ?? order[order.length - 1];
      if (failed === undefined || !this.mayOmit(block, failed)) return false;
      order = order.filter((c) => c !== failed);
      if (order.length === 0) return false;
    }
    return this.placeOneByOne(block, order, release);
  }

  private mayOmit(block: Block, child: number): boolean {
    const unit = (block.children[child] as Block['children'][number]).unit;
    return this.shop.problem.units[unit]?.omissionPrice !== Number.POSITIVE_INFINITY;
  }

  /** The trunk with the first child that fits, then each other child where the ones before it leave room. */
  private placeOneByOne(block: Block, order: readonly number[], release: number): boolean {
    const lead = order.findIndex((c) => this.placeAll(this.sequence(block, [c]), release));
    if (lead < 0) return false;
    for (const c of order.slice(lead + 1)) {
      this.placeAll((block.children[c] as Block['children'][number]).variables, release);
    }
    return true;
  }

  /** Adds one child to a block that stands, or the block with that child alone. False when it does not fit. */
  addChild(block: Block, child: number): boolean {
    const isStanding = block.trunk.some((v) => this.state.isPlaced(v));
    const variables = (block.children[child] as Block['children'][number]).variables;
    return this.placeAll(isStanding ? variables : this.sequence(block, [child]), 0);
  }

  /** Places variables of a block whose others stand, in their order, the one at an index not before a time. False: no room. */
  addVariables(variables: readonly number[], index: number, notBefore: number): boolean {
    return this.placeAll(variables, 0, index, notBefore);
  }

  private sequence(block: Block, order: readonly number[]): number[] {
    const followers = new Set(this.followers(block, order));
    const trunk = block.trunk.filter((v) => !followers.has(v));
    return [...trunk, ...order.flatMap((c) => (block.children[c] as Block['children'][number]).variables)];
  }

  /** Ends of bursts that are placed together with the first member. */
  private followers(block: Block, order: readonly number[]): number[] {
    const found: number[] = [];
    for (const c of order) {
      for (const v of (block.children[c] as Block['children'][number]).variables) {
        const entry = this.shop.burstOfVar[v];
        const after = entry == null ? undefined : this.shop.burstAfter[entry.burst];
        if (after?.isOwn) found.push(after.variable);
      }
    }
    return found;
  }

  /** Places variables in their order, nothing before `release`, the one at `held` not before `notBefore`. */
  private placeAll(sequence: readonly number[], release: number, held = 0, notBefore = release): boolean {
    for (const v of sequence) this.delays[v] = 0;
    const free = (from: number): void => {
      for (let i = from; i < sequence.length; i++) this.notBefore[sequence[i] as number] = i === held ? notBefore : release;
    };
    free(0);
    let retries = 0;
    let at = 0;
    while (at < sequence.length) {
      const v = sequence[at] as number;
      if (this.placeVariable(v)) {
        at++;
        continue;
      }
      const back = this.window.culprit === NOBODY || retries++ > MOST_RETRIES ? -1 : sequence.indexOf(this.window.culprit, 0);
      if (back < 0 || back >= at) {
        this.failedUnit = this.unitOf(v);
        this.takeUp(sequence, 0, at);
        return false;
      }
      const blamed = this.window.culprit;
      const soonest =
        this.window.culpritNeeds >= 0 ? this.window.culpritNeeds : (this.state.time[blamed] as number) + this.missedBy;
      this.delays[blamed] = (this.delays[blamed] as number) + 1;
      const needs = soonest + Math.max(0, (this.delays[blamed] as number) - PATIENCE);
      this.takeUp(sequence, back, at);
      this.notBefore[blamed] = needs;
      free(back + 1);
      at = back;
    }
    return true;
  }

  private unitOf(variable: number): number {
    const block = this.shop.blocks[this.shop.blockOfVar[variable] as number] as Block;
    return block.children.find((child) => child.variables.includes(variable))?.unit ?? -1;
  }

  private takeUp(sequence: readonly number[], from: number, until: number): void {
    for (let i = until - 1; i >= from; i--) {
      const v = sequence[i] as number;
      const entry = this.shop.burstOfVar[v];
      const isLead = entry != null && this.state.leadOfBurst[entry.burst] === v;
      this.state.lift(v);
      const after = isLead ? this.shop.burstAfter[entry.burst] : undefined;
      if (after?.isOwn) this.state.lift(after.variable);
    }
  }

  private placeVariable(v: number): boolean {
    const follower = this.window.set(v);
    const jitter = this.jitter[v] as number;
    let from = this.window.lowest + jitter <= this.window.highest ? this.window.lowest + jitter : this.window.lowest;
    for (;;) {
      const at = this.find(v, from);
      if (at > this.window.highest) {
        this.missedBy = at - this.window.highest;
        if (at >= NEVER / 2) this.window.culprit = NOBODY;
        return false;
      }
      if (follower !== NOBODY) this.placeFollower(v, follower, at);
      if (this.state.place(v, at, (u) => this.choosePool(u))) return true;
      if (follower !== NOBODY) this.state.lift(follower);
      from = at + 1;
    }
  }

  /** The task before a burst ends when the first member begins, or as late as it may. */
  private placeFollower(v: number, follower: number, at: number): void {
    const entry = this.shop.burstOfVar[v] as NonNullable<Shop['burstOfVar'][number]>;
    const after = this.shop.burstAfter[entry.burst] as Shop['burstAfter'][number];
    const { highest } = this.window.ofFollower(follower);
    const end = Math.min(at + entry.offset - after.offset, highest);
    if (!this.state.place(follower, end, (u) => this.choosePool(u))) throw new Error('a task that may end is refused its pool');
  }

  /** Earliest time at or after `from` at which every use and stay of the variable fits. */
  private find(v: number, from: number): number {
    const stays = this.shop.staysOfVar[v] as readonly number[];
    const openings = stays.filter((s) => (this.shop.stays[s] as StayUse).startVar === v);
    const [opening] = openings;
    if (openings.length > 1) return this.findForAll(v, openings, from);
    const own = this.findOwn(v, from);
    if (opening === undefined) return own;
    const join = this.findJoin(v, opening, from);
    if (join !== null && join.at <= own && join.at <= this.window.highest) {
      this.state.isJoining[opening] = 1;
      this.state.chamberOfStay[opening] = join.chamber;
      return join.at;
    }
    if (own <= this.window.highest) this.chooseChamber(opening, own);
    return own;
  }

  /** Earliest time at which several stays that begin with one variable find chambers beside each other. */
  private findForAll(v: number, openings: readonly number[], from: number): number {
    let at = from;
    for (;;) {
      at = this.findOwn(v, at);
      if (at > this.window.highest || this.chooseAll(openings, at)) return at;
      at++;
    }
  }

  /** Chooses a chamber for each of the stays, each with those before it in place. */
  private chooseAll(openings: readonly number[], at: number): boolean {
    const held: ChamberLine[] = [];
    for (const s of openings) {
      this.chooseChamber(s, at);
      const chamber = this.state.chambers[this.state.chamberOfStay[s] as number];
      if (chamber === undefined) break;
      const stay = this.shop.stays[s] as StayUse;
      const start = at + stay.startOff;
      chamber.add({ task: s, start, end: start + stay.minLength, low: stay.low, high: stay.high, room: stay.room });
      held.push(chamber);
    }
    held.forEach((chamber, i) => {
      chamber.remove(openings[i] as number);
    });
    return held.length === openings.length;
  }

  private findOwn(v: number, from: number): number {
    const stays = this.shop.staysOfVar[v] as readonly number[];
    const uses = this.shop.usesOfVar[v] as readonly number[];
    let at = from;
    for (;;) {
      let next = at;
      for (const u of uses) {
        next = this.nextForUse(u, v, next);
        if (next > this.window.highest) return next;
      }
      for (const s of stays) {
        next = this.nextForStay(s, v, next);
        if (next > this.window.highest) return next;
      }
      if (next === at) return at;
      at = next;
    }
  }

  private nextForUse(u: number, v: number, at: number): number {
    const use = this.shop.uses[u] as UseOfPool;
    if (use.oncePerLoad && this.isJoining(use.task)) return at;
    const { time } = this.state;
    if (use.fromVar === v) {
      const from = at + use.fromOff;
      const isUntilKnown = use.untilVar !== v && (time[use.untilVar] as number) >= 0;
      if (isUntilKnown) return this.nextBefore(use, from, this.state.untilOf(use)) - use.fromOff;
      if (use.minLength === 0) return at;
      return this.earliestFit(use, from, use.minLength) - use.fromOff;
    }
    if ((time[use.fromVar] as number) >= 0 || use.minLength === 0) return at;
    const shift = use.untilOff - use.minLength;
    return this.earliestFit(use, at + shift, use.minLength) - shift;
  }

  private isJoining(task: number): boolean {
    const v = this.shop.network.startVar[task] as number;
    for (const s of this.shop.staysOfVar[v] as readonly number[]) {
      if ((this.shop.stays[s] as StayUse).task === task) return this.state.isJoining[s] === 1;
    }
    return false;
  }

  private earliestFit(use: UseOfPool, from: number, length: number): number {
    let best = NEVER;
    for (const p of use.pools) {
      const fit = (this.state.pools[p] as PoolLine).nextFit(from, length, use.amount);
      if (fit < best) best = fit;
      if (best === from) return best;
    }
    return best;
  }

  /** Earliest start of a use that must last until a known time. */
  private nextBefore(use: UseOfPool, from: number, until: number): number {
    let best = NEVER;
    for (const p of use.pools) {
      const block = (this.state.pools[p] as PoolLine).lastBlock(from, until, use.amount);
      const start = block < from ? from : block + 1;
      if (start < best) best = start;
    }
    return best;
  }

  private nextForStay(s: number, v: number, at: number): number {
    const stay = this.shop.stays[s] as StayUse;
    if (stay.startVar === v) {
      const from = at + stay.startOff;
      let best = NEVER;
      for (const c of stay.chambers) {
        if (!this.mayTake(s, c)) continue;
        const fit = (this.state.chambers[c] as ChamberLine).nextFit(from, stay.minLength, stay.low, stay.high, stay.room);
        if (fit < best) best = fit;
        if (best === from) break;
      }
      return best === NEVER ? NEVER : best - stay.startOff;
    }
    if (!this.state.isPlaced(stay.startVar)) return at;
    return this.nextStayEnd(s, stay, at);
  }

  /** Earliest end of a stay whose start and chamber are known. */
  private nextStayEnd(s: number, stay: StayUse, at: number): number {
    const start = (this.state.time[stay.startVar] as number) + stay.startOff;
    const chamber = this.state.chambers[this.state.chamberOfStay[s] as number] as ChamberLine;
    if (this.state.isJoining[s] === 1) {
      const load = chamber.stays.find((held) => held.start === start);
      const end = load === undefined ? NEVER : load.end - stay.endOff;
      return end >= at ? end : NEVER;
    }
    const length = at + stay.endOff - start;
    return chamber.nextFit(start, length, stay.low, stay.high, stay.room) === start ? at : at + 1;
  }

  private mayTake(s: number, chamber: number): boolean {
    const only = this.onlyChamber[s] as number;
    return only < 0 || only === chamber;
  }

  private findJoin(v: number, s: number, from: number): { readonly at: number; readonly chamber: number } | null {
    const stay = this.shop.stays[s] as StayUse;
    let best: { at: number; chamber: number } | null = null;
    for (const c of stay.chambers) {
      if (this.shop.problem.chambers[c]?.together !== true || !this.mayTake(s, c)) continue;
      const at = this.earliestJoin(v, s, stay, c, from);
      if (at < (best?.at ?? NEVER)) best = { at, chamber: c };
    }
    return best;
  }

  private earliestJoin(v: number, s: number, stay: StayUse, c: number, from: number): number {
    const chamber = this.state.chambers[c] as ChamberLine;
    this.state.isJoining[s] = 1;
    let after = from + stay.startOff;
    try {
      for (;;) {
        const { at, load } = chamber.nextJoin(after, stay.minLength, stay.maxLength, stay.low, stay.high, stay.room);
        if (load === null || at - stay.startOff > this.window.highest) return NEVER;
        const time = at - stay.startOff;
        const opener = this.shop.stays[load.task] as StayUse;
        const isServed = (this.shop.usesOfVar[v] as readonly number[]).every((u) => this.nextForUse(u, v, time) === time);
        if (opener.before === stay.before && opener.after === stay.after && isServed) return time;
        after = at + 1;
      }
    } finally {
      this.state.isJoining[s] = 0;
    }
  }

  /** Of the chambers free at that time, one whose neighbours ask for the least change of state; chance decides ties. */
  private chooseChamber(s: number, at: number): void {
    const stay = this.shop.stays[s] as StayUse;
    const start = at + stay.startOff;
    let best = -1;
    let bestScore = Number.POSITIVE_INFINITY;
    for (const c of stay.chambers) {
      if (!this.mayTake(s, c)) continue;
      const chamber = this.state.chambers[c] as ChamberLine;
      if (chamber.nextFit(start, stay.minLength, stay.low, stay.high, stay.room) !== start) continue;
      const score = chamber.disruption(start, stay.low, stay.high) + 0.5 * this.random.next();
      if (score < bestScore) {
        best = c;
        bestScore = score;
      }
    }
    this.state.isJoining[s] = 0;
    this.state.chamberOfStay[s] = best;
  }

  private choosePool(u: number): number {
    const use = this.shop.uses[u] as UseOfPool;
    const from = this.state.fromOf(use);
    const length = this.state.untilOf(use) - from;
    const count = use.pools.length;
    const first = count > 1 ? Math.floor(this.random.next() * count) : 0;
    for (let i = 0; i < count; i++) {
      const at = (first + i) % count;
      const p = use.pools[at] as number;
      if (use.durations !== null && use.durations[at] !== this.state.durationOf(use.task)) continue;
      if ((this.state.pools[p] as PoolLine).nextFit(from, length, use.amount) === from) return p;
    }
    return -1;
  }
}
