// Minimum lags between variables, some on a condition: when `condition` is true, to >= from + lag. Part of the learning solver.
import { type Bounds, BY_ARC, BY_NOTE, NO_SIDE } from './bounds.ts';
import type { Literal } from './literal.ts';

/** Where each key's run begins among keys counted, and where the last ends. */
function firstOf(keys: ArrayLike<number>, count: number): Int32Array<ArrayBuffer> {
  const first = new Int32Array(count + 1);
  for (let i = 0; i < keys.length; i++) {
    const key = keys[i] as number;
    if (key >= 0) first[key + 1] = (first[key + 1] as number) + 1;
  }
  for (let key = 0; key < count; key++) first[key + 1] = (first[key + 1] as number) + (first[key] as number);
  return first;
}

export class Arcs {
  private readonly bounds: Bounds;
  private readonly from: number[] = [];
  private readonly to: number[] = [];
  private readonly lag: number[] = [];
  private readonly ifSide: number[] = [];
  private readonly ifLow: number[] = [];
  /** Arcs in the order of the side they start from, and the first of each side; laid out by `freeze`. */
  private first = new Int32Array(0);
  private fromOf = new Int32Array(0);
  private toOf = new Int32Array(0);
  private lagOf = new Int32Array(0);
  private ifSideOf = new Int32Array(0);
  private ifLowOf = new Int32Array(0);
  /** Arcs by the side of their condition. */
  private firstIf = new Int32Array(0);
  private onIf = new Int32Array(0);

  constructor(bounds: Bounds) {
    this.bounds = bounds;
  }

  /** Asks that variable `to` is at least variable `from` plus `lag`, on a condition or always. */
  add(from: number, to: number, lag: number, condition: Literal | null = null): void {
    this.push(2 * from, 2 * to, lag, condition);
    this.push(2 * to + 1, 2 * from + 1, lag, condition);
  }

  private push(from: number, to: number, lag: number, condition: Literal | null): void {
    this.from.push(from);
    this.to.push(to);
    this.lag.push(lag);
    this.ifSide.push(condition?.side ?? NO_SIDE);
    this.ifLow.push(condition?.low ?? 0);
  }

  /** Lays the arcs out for propagation. Called once, when all are added. */
  freeze(sideCount: number): void {
    this.first = firstOf(this.from, sideCount);
    // By counting: arcs of a side keep the order in which they were added.
    const next = this.first.slice();
    const place = new Int32Array(this.from.length);
    this.from.forEach((side, arc) => {
      const at = next[side] as number;
      place[arc] = at;
      next[side] = at + 1;
    });
    const inOrder = (list: readonly number[]): Int32Array<ArrayBuffer> => {
      const laid = new Int32Array(list.length);
      for (let arc = 0; arc < list.length; arc++) laid[place[arc] as number] = list[arc] as number;
      return laid;
    };
    this.fromOf = inOrder(this.from);
    this.toOf = inOrder(this.to);
    this.lagOf = inOrder(this.lag);
    this.ifSideOf = inOrder(this.ifSide);
    this.ifLowOf = inOrder(this.ifLow);
    this.firstIf = firstOf(this.ifSideOf, sideCount);
    const fill = this.firstIf.slice();
    this.onIf = new Int32Array(this.firstIf[sideCount] as number);
    this.ifSideOf.forEach((side, arc) => {
      if (side < 0) return;
      this.onIf[fill[side] as number] = arc;
      fill[side] = (fill[side] as number) + 1;
    });
  }

  /** Carries a rise of a side along its arcs, and along those whose condition it fulfils. False on a conflict. */
  propagate(side: number, old: number): boolean {
    const { low } = this.bounds;
    const now = low[side] as number;
    const { toOf, lagOf } = this;
    const end = this.first[side + 1] as number;
    for (let arc = this.first[side] as number; arc < end; arc++) {
      if (now + (lagOf[arc] as number) > (low[toOf[arc] as number] as number) && !this.pull(arc)) return false;
    }
    const endIf = this.firstIf[side + 1] as number;
    for (let i = this.firstIf[side] as number; i < endIf; i++) {
      const arc = this.onIf[i] as number;
      const needed = this.ifLowOf[arc] as number;
      if (needed > old && needed <= now && !this.pull(arc)) return false;
    }
    return true;
  }

  /** Applies one arc as far as its condition goes. */
  private pull(arc: number): boolean {
    const { bounds } = this;
    const { low } = bounds;
    const from = this.fromOf[arc] as number;
    const to = this.toOf[arc] as number;
    const reached = (low[from] as number) + (this.lagOf[arc] as number);
    if (reached <= (low[to] as number)) return true;
    const ifSide = this.ifSideOf[arc] as number;
    const ifLow = this.ifLowOf[arc] as number;
    if (ifSide === NO_SIDE || (low[ifSide] as number) >= ifLow) return bounds.raise(to, reached, (arc << 2) | BY_ARC);
    if (reached <= -(low[to ^ 1] as number) || -(low[ifSide ^ 1] as number) < ifLow) return true;
    const note = bounds.beginNote();
    bounds.note(note, from, low[from] as number);
    bounds.note(note, to ^ 1, 1 - reached);
    return bounds.raise(ifSide ^ 1, 1 - ifLow, (note << 2) | BY_NOTE);
  }

  /** Why the arc's end reached `low`. */
  explain(arc: number, low: number, add: (side: number, low: number) => void): void {
    add(this.fromOf[arc] as number, low - (this.lagOf[arc] as number));
    if (this.ifSideOf[arc] !== NO_SIDE) add(this.ifSideOf[arc] as number, this.ifLowOf[arc] as number);
  }
}
