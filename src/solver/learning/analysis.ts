// Learns a clause from a conflict: its reasons are followed back until one literal of the last level is left that implies the
// rest (first unique implication point: Marques-Silva and Sakallah 1999, IEEE Transactions on Computers 48), literals being
// bounds that are explained when asked (lazy clause generation: Ohrimenko, Stuckey and Codish 2009, Constraints 14).
import type { Arcs } from './arcs.ts';
import { type Bounds, BY_ARC, BY_CLAUSE, BY_NOTE, DECISION, NO_SIDE } from './bounds.ts';
import type { Clauses } from './clauses.ts';

const UNNEEDED = -2_000_000_000;

export class Analysis {
  private readonly bounds: Bounds;
  private readonly arcs: Arcs;
  private readonly clauses: Clauses;
  /** Per side: how far it must have risen for the conflict, or UNNEEDED. */
  private readonly need: Int32Array;
  /** Per side: the trail entry behind its need. */
  private readonly entry: Int32Array;
  private readonly touched: number[] = [];
  private readonly isTouched: Uint8Array;
  private openAtLevel = 0;
  private level = 0;
  /** The learned clause: pairs of side and number, the asserting literal first, the latest other second. */
  literals = new Int32Array(256);
  size = 0;
  backLevel = 0;
  /** How many levels its literals come from. */
  glue = 0;
  /** Variables met on the way, for the order of decisions. */
  readonly met: number[] = [];
  private isImplied = true;
  private checkedEntry = 0;
  private readonly addNeed = (side: number, low: number): void => this.require(side, low);
  private readonly checkNeed = (side: number, low: number): void => this.checkImplied(side, low);

  constructor(bounds: Bounds, arcs: Arcs, clauses: Clauses) {
    this.bounds = bounds;
    this.arcs = arcs;
    this.clauses = clauses;
    this.need = new Int32Array(bounds.sideCount).fill(UNNEEDED);
    this.entry = new Int32Array(bounds.sideCount).fill(-1);
    this.isTouched = new Uint8Array(bounds.sideCount);
  }

  /**
   * Follows the conflict of the bounds back. `size` is 0 afterwards when it holds for good: there is no solution. False when
   * it comes from several decisions of one level.
   */
  learn(): boolean {
    const { bounds } = this;
    this.level = bounds.level;
    this.openAtLevel = 0;
    this.met.length = 0;
    this.explain(bounds.conflictReason, bounds.conflictSide, bounds.conflictLow, this.addNeed);
    if (bounds.conflictSide !== NO_SIDE) this.require(bounds.conflictSide ^ 1, 1 - bounds.conflictLow);
    if (this.openAtLevel === 0 && !this.takeLatestLevel()) {
      this.size = 0;
      return true;
    }
    let at = bounds.size - 1;
    for (;;) {
      while (!this.isBehindNeed(at)) at--;
      if (this.openAtLevel === 1) break;
      const side = bounds.entrySide[at] as number;
      const low = this.need[side] as number;
      const reason = bounds.entryReason[at] as number;
      if (reason === DECISION) {
        this.clear();
        return false;
      }
      this.need[side] = UNNEEDED;
      this.openAtLevel--;
      this.explain(reason, side, low, this.addNeed);
      at--;
    }
    this.write(at);
    this.clear();
    return true;
  }

  /** When nothing of the present level is to blame: goes on from the latest level that is. False when there is none. */
  private takeLatestLevel(): boolean {
    const { entryLevel } = this.bounds;
    const levelOf = (side: number): number => entryLevel[this.entry[side] as number] as number;
    this.level = this.touched.reduce((latest, side) => Math.max(latest, levelOf(side)), 0);
    this.openAtLevel = this.touched.filter((side) => levelOf(side) === this.level).length;
    return this.level > 0;
  }

  private isBehindNeed(at: number): boolean {
    const side = this.bounds.entrySide[at] as number;
    return (this.need[side] as number) !== UNNEEDED && this.entry[side] === at;
  }

  private explain(reason: number, side: number, low: number, add: (side: number, low: number) => void): void {
    const which = reason >> 2;
    switch (reason & 3) {
      case BY_CLAUSE:
        this.clauses.explain(which, side, add);
        return;
      case BY_ARC:
        this.arcs.explain(which, low, add);
        return;
      case BY_NOTE: {
        const { notes } = this.bounds;
        const end = which + 1 + 2 * (notes[which] as number);
        for (let at = which + 1; at < end; at += 2) add(notes[at] as number, notes[at + 1] as number);
        return;
      }
      default:
    }
  }

  /** Asks that a literal, true now, is among the reasons. */
  private require(side: number, low: number): void {
    const known = this.need[side] as number;
    if (known >= low) return;
    const at = this.bounds.entryOf(side, low);
    if (at < 0) return;
    const level = this.bounds.entryLevel[at] as number;
    if (level === 0) return;
    if (this.isTouched[side] === 0) {
      this.isTouched[side] = 1;
      this.touched.push(side);
    }
    if (known !== UNNEEDED && this.bounds.entryLevel[this.entry[side] as number] === this.level) this.openAtLevel--;
    if (level === this.level) this.openAtLevel++;
    this.need[side] = low;
    this.entry[side] = at;
    this.met.push(side >> 1);
  }

  private write(assertingEntry: number): void {
    const { bounds } = this;
    const asserting = bounds.entrySide[assertingEntry] as number;
    const count = this.touched.length + 1;
    if (2 * count > this.literals.length) this.literals = new Int32Array(4 * count);
    this.put(0, asserting);
    let size = 1;
    let latest = 0;
    const levels = new Set<number>();
    for (const side of this.touched) {
      if (side === asserting || this.need[side] === UNNEEDED || this.isRedundant(side)) continue;
      const level = bounds.entryLevel[this.entry[side] as number] as number;
      levels.add(level);
      this.put(size, side);
      if (level > latest) {
        latest = level;
        if (size !== 1) this.swapWithSecond(size);
      }
      size++;
    }
    this.size = size;
    this.backLevel = latest;
    this.glue = levels.size + 1;
  }

  private put(at: number, side: number): void {
    this.literals[2 * at] = side ^ 1;
    this.literals[2 * at + 1] = 1 - (this.need[side] as number);
  }

  private swapWithSecond(at: number): void {
    const { literals } = this;
    const side = literals[2] as number;
    const low = literals[3] as number;
    literals[2] = literals[2 * at] as number;
    literals[3] = literals[2 * at + 1] as number;
    literals[2 * at] = side;
    literals[2 * at + 1] = low;
  }

  /** Whether needs of earlier entries imply this one already. */
  private isRedundant(side: number): boolean {
    const at = this.entry[side] as number;
    const reason = this.bounds.entryReason[at] as number;
    if (reason === DECISION) return false;
    this.isImplied = true;
    this.checkedEntry = at;
    this.explain(reason, side, this.need[side] as number, this.checkNeed);
    return this.isImplied;
  }

  private checkImplied(side: number, low: number): void {
    if (!this.isImplied || ((this.need[side] as number) >= low && (this.entry[side] as number) < this.checkedEntry)) return;
    const at = this.bounds.entryOf(side, low);
    if (at >= 0 && this.bounds.entryLevel[at] !== 0) this.isImplied = false;
  }

  private clear(): void {
    for (const side of this.touched) {
      this.need[side] = UNNEEDED;
      this.isTouched[side] = 0;
    }
    this.touched.length = 0;
  }
}
