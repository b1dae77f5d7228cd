// When a variable may be placed, from what is placed already, and which placed variable sets the limit. Used by the builder.
import { NO_PATH } from './network.ts';
import type { PoolLine } from './poolLine.ts';
import type { Shop, UseOfPool } from './shop.ts';
import type { ShopState } from './shopState.ts';

/** No variable is to blame: the window ends where the day or the problem says so. */
export const NOBODY = -1;

export class VariableWindow {
  private readonly shop: Shop;
  private readonly state: ShopState;
  private readonly notBefore: Int32Array;
  /** First and last time of the variable last asked about, both included. */
  lowest = 0;
  highest = 0;
  /** The placed variable behind `highest`. */
  culprit = NOBODY;
  /** When the culprit is known to need an absolute time; -1 otherwise. */
  culpritNeeds = -1;

  /** `notBefore[v]`: a variable is not placed before this time, whatever else allows it. */
  constructor(shop: Shop, state: ShopState, notBefore: Int32Array) {
    this.shop = shop;
    this.state = state;
    this.notBefore = notBefore;
  }

  /** Sets the window of a variable. Returns the variable that is to be placed together with it, or NOBODY. */
  set(v: number): number {
    this.fromPlaced(v);
    this.capByReach(v);
    return this.narrowByBurst(v);
  }

  /** Latest time of a variable that follows another, with who limits it; leaves the window as it was. */
  ofFollower(follower: number): { readonly highest: number; readonly culprit: number; readonly culpritNeeds: number } {
    const { lowest, highest, culprit, culpritNeeds } = this;
    this.fromPlaced(follower);
    this.capByReach(follower);
    const found = { highest: this.highest, culprit: this.culprit, culpritNeeds: this.culpritNeeds };
    Object.assign(this, { lowest, highest, culprit, culpritNeeds });
    return found;
  }

  /** Window of a variable from what is placed: sets lowest, highest and the culprit behind highest. */
  private fromPlaced(v: number): void {
    const { network } = this.shop;
    const { time, stamp } = this.state;
    const c = network.component[v] as number;
    const members = network.members[c] as Int32Array;
    const matrix = network.lag[c] as Int32Array;
    const n = members.length;
    const i = network.indexInComponent[v] as number;
    let low = Math.max(network.earliest[v] as number, this.notBefore[v] as number);
    let high = network.latest[v] as number;
    let culprit = NOBODY;
    for (let j = 0; j < n; j++) {
      const w = members[j] as number;
      const at = time[w] as number;
      if (at < 0) continue;
      const after = matrix[j * n + i] as number;
      if (after !== NO_PATH && at + after > low) low = at + after;
      const before = matrix[i * n + j] as number;
      if (before === NO_PATH) continue;
      const limit = at - before;
      if (limit < high || (limit === high && culprit !== NOBODY && (stamp[w] as number) > (stamp[culprit] as number))) {
        high = limit;
        culprit = w;
      }
    }
    this.lowest = low;
    this.highest = high;
    this.culprit = culprit;
    this.culpritNeeds = -1;
  }

  /** Narrows the window of a burst member: after the lead, or as the lead right when the task before may end. */
  private narrowByBurst(v: number): number {
    const entry = this.shop.burstOfVar[v];
    if (entry == null) return NOBODY;
    const burst = this.shop.problem.bursts[entry.burst] as Shop['problem']['bursts'][number];
    const lead = this.state.leadOfBurst[entry.burst] as number;
    if (lead >= 0) {
      const leadStart = (this.state.time[lead] as number) + (this.shop.burstOfVar[lead]?.offset ?? 0);
      this.lowest = Math.max(this.lowest, leadStart - entry.offset);
      this.cap(leadStart + burst.within - entry.offset, lead);
      return NOBODY;
    }
    const after = this.shop.burstAfter[entry.burst] as Shop['burstAfter'][number];
    if (this.state.isPlaced(after.variable)) {
      this.cap((this.state.time[after.variable] as number) + after.offset + burst.wait - entry.offset, after.variable);
      return NOBODY;
    }
    const follower = this.ofFollower(after.variable);
    this.cap(follower.highest + after.offset + burst.wait - entry.offset, follower.culprit, follower.culpritNeeds);
    return after.variable;
  }

  private cap(limit: number, culprit: number, needs = -1): void {
    if (limit >= this.highest) return;
    this.highest = limit;
    this.culprit = culprit;
    this.culpritNeeds = needs;
  }

  /** A use that began at a placed variable lasts until this one: it can last only as long as its pool is free. */
  private capByReach(v: number): void {
    for (const u of this.shop.usesOfVar[v] as readonly number[]) {
      const use = this.shop.uses[u] as UseOfPool;
      if (use.untilVar !== v || use.fromVar === v || !this.state.isPlaced(use.fromVar)) continue;
      const from = this.state.fromOf(use);
      let reach = -1;
      for (const p of use.pools) reach = Math.max(reach, (this.state.pools[p] as PoolLine).reach(from, use.amount));
      this.cap(reach - use.untilOff, use.fromVar, reach + 1 - use.fromOff);
    }
  }
}
