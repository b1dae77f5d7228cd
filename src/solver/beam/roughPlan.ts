// A rough plan of what is begun in a schedule in the making: its stays in chambers, then its uses of pools, each where it can
// begin soonest. Says how tight that is. Used by the estimate.
import type { StayUse, UseOfPool } from '../shop.ts';
import { type BeamShop, NEVER } from './beamShop.ts';
import { HELD, type Rows } from './rows.ts';
import type { Tightness } from './tightness.ts';

export class RoughPlan {
  private readonly beam: BeamShop;
  private readonly rows: Rows;
  private readonly tightness: Tightness;
  private readonly slotFree: Int32Array;
  private readonly listed: Int32Array;
  private readonly lastGroup: Int32Array;
  /** Per point: roughly when it will come, at first by what the server alone allows. */
  readonly time: Int32Array;

  constructor(beam: BeamShop, rows: Rows, tightness: Tightness) {
    const { network, uses, stays, problem } = beam.shop;
    this.beam = beam;
    this.rows = rows;
    this.tightness = tightness;
    this.time = new Int32Array(network.variableCount);
    this.slotFree = new Int32Array(beam.slotCount);
    this.listed = new Int32Array(Math.max(uses.length, stays.length));
    this.lastGroup = new Int32Array(problem.chambers.length);
  }

  /** Plans a row, from the times there are, and weighs what comes of it. */
  lay(row: number): void {
    const at = row * this.rows.width;
    this.planStays(at);
    this.planPools(at);
  }

  /** Stays begun, each in turn in the chamber where it can begin soonest. */
  private planStays(at: number): void {
    const { beam, time: plan, slotFree, lastGroup, listed } = this;
    const { stays } = beam.shop;
    const { data, high } = this.rows;
    let count = 0;
    for (let s = 0; s < stays.length; s++) {
      const v = stays[s]?.startVar as number;
      if (!this.tightness.isBegun(at, v)) continue;
      const due = data[at + high + v] as number;
      let k = count++;
      while (k > 0 && (data[at + high + (stays[listed[k - 1] as number]?.startVar as number)] as number) > due) {
        listed[k] = listed[k - 1] as number;
        k--;
      }
      listed[k] = s;
    }
    if (count === 0) return;
    this.seeChambers(at);
    for (let i = 0; i < count; i++) {
      const s = listed[i] as number;
      const stay = stays[s] as StayUse;
      const slot = this.soonestSlot(s, stay, (plan[stay.startVar] as number) + stay.startOff);
      if (slot < 0) continue;
      const begin = this.begin;
      slotFree[slot] = begin + stay.minLength;
      lastGroup[this.chosen] = beam.groupOf[s] as number;
      plan[stay.startVar] = begin - stay.startOff;
      const end = begin + stay.minLength - stay.endOff;
      if (end > (plan[stay.endVar] as number)) plan[stay.endVar] = end;
      this.tightness.weigh(at, stay.startVar, begin - stay.startOff);
    }
  }
  private begin = 0;
  private chosen = 0;

  /** The slot in which a stay can begin soonest; sets `begin` and `chosen`, its chamber. */
  private soonestSlot(s: number, stay: StayUse, from: number): number {
    const { beam, slotFree, lastGroup } = this;
    const g = beam.groupOf[s] as number;
    let found = -1;
    this.begin = NEVER;
    for (const c of stay.chambers) {
      const slot = beam.chamberSlot[c] as number;
      const room = beam.shop.problem.chambers[c]?.room ?? 0;
      const last = lastGroup[c] as number;
      const gap = last < 0 ? 0 : (beam.gap[c]?.[last * beam.groupCount + g] as number);
      const least = Math.max(from, beam.reach[c]?.[g] as number);
      // After a change of state all slots wait for the last to be free.
      let all = 0;
      if (gap > 0) for (let k = slot; k < slot + room; k++) all = Math.max(all, (slotFree[k] as number) + gap);
      for (let k = slot; k < slot + room; k++) {
        const begin = Math.max(least, gap > 0 ? all : (slotFree[k] as number));
        if (begin >= this.begin) continue;
        this.begin = begin;
        this.chosen = c;
        found = k;
      }
    }
    if (found >= 0) this.waitForAll(s, this.chosen);
    return found;
  }

  private waitForAll(s: number, c: number): void {
    const { beam, slotFree, lastGroup } = this;
    const last = lastGroup[c] as number;
    if (last < 0 || beam.gap[c]?.[last * beam.groupCount + (beam.groupOf[s] as number)] === 0) return;
    const slot = beam.chamberSlot[c] as number;
    const room = beam.shop.problem.chambers[c]?.room ?? 0;
    for (let k = slot; k < slot + room; k++) slotFree[k] = Math.max(slotFree[k] as number, this.begin);
  }

  /** When each chamber's slots are free, and the group it held last. */
  private seeChambers(at: number): void {
    const { beam, rows, slotFree, lastGroup } = this;
    const { data, low } = rows;
    const { chambers } = beam.shop.problem;
    for (let c = 0; c < chambers.length; c++) {
      const base = at + c * beam.groupCount;
      let last = -1;
      let latest = -1;
      for (let g = 0; g < beam.groupCount; g++) {
        const isInside = (data[base + rows.inside + g] as number) > 0;
        const end = isInside ? NEVER : (data[base + rows.lastEnd + g] as number);
        if (end <= latest) continue;
        latest = end;
        last = g;
      }
      lastGroup[c] = last;
      const slot = beam.chamberSlot[c] as number;
      for (let k = slot; k < slot + (chambers[c]?.room ?? 0); k++) {
        const held = data[at + rows.slot + k] as number;
        const stay = held >= 0 ? undefined : beam.shop.stays[HELD - held];
        slotFree[k] = stay === undefined ? held : (data[at + low + stay.endVar] as number) + stay.endOff;
      }
    }
  }

  /** Uses begun of each other pool, in the order in which they come. */
  private planPools(at: number): void {
    const { beam, time: plan, listed } = this;
    const { uses, problem } = beam.shop;
    for (let p = 0; p < problem.pools.length; p++) {
      let count = 0;
      for (const u of beam.usesOfPool[p] as Int32Array) {
        const v = uses[u]?.fromVar as number;
        if (!this.tightness.isBegun(at, v)) continue;
        const time = plan[v] as number;
        let k = count++;
        while (k > 0 && (plan[uses[listed[k - 1] as number]?.fromVar as number] as number) > time) {
          listed[k] = listed[k - 1] as number;
          k--;
        }
        listed[k] = u;
      }
      if (count > 0) this.planPool(at, p, count);
    }
  }

  private planPool(at: number, p: number, count: number): void {
    const { beam, time: plan, slotFree, listed, rows } = this;
    const { data, low } = rows;
    const slot = beam.poolSlot[p] as number;
    const capacity = beam.shop.problem.pools[p]?.capacity ?? 0;
    for (let k = slot; k < slot + capacity; k++) {
      const held = data[at + rows.slot + k] as number;
      const use = held >= 0 ? undefined : beam.shop.uses[HELD - held];
      slotFree[k] =
        use === undefined ? held : Math.max(plan[use.untilVar] as number, data[at + low + use.untilVar] as number) + use.untilOff;
    }
    for (let i = 0; i < count; i++) {
      const use = beam.shop.uses[listed[i] as number] as UseOfPool;
      const from = (plan[use.fromVar] as number) + use.fromOff;
      let best = slot;
      for (let k = slot + 1; k < slot + capacity; k++) {
        if (Math.max(from, slotFree[k] as number) < Math.max(from, slotFree[best] as number)) best = k;
      }
      const begin = Math.max(from, slotFree[best] as number);
      const isOpen = use.fromVar !== use.untilVar;
      slotFree[best] = Math.max(begin + use.minLength, isOpen ? (plan[use.untilVar] as number) + use.untilOff : 0);
      this.tightness.weigh(at, use.fromVar, begin - use.fromOff);
    }
  }
}
