// total >= sum of weight x variable, weights above 0: raises the total, and caps each variable by what the total leaves it.
// Part of the learning solver.
import { type Bounds, BY_NOTE } from './bounds.ts';
import type { Watched } from './engine.ts';
import { Wakes } from './wakes.ts';

export type Term = { readonly variable: number; readonly weight: number };

export class WeightedSum {
  readonly isSlow = false;
  readonly wakes = new Wakes(1);
  readonly watched: readonly Watched[];
  private readonly bounds: Bounds;
  private readonly total: number;
  private readonly sides: Int32Array;
  private readonly weights: Float64Array;

  /** Weights are whole numbers; a weight below 0 counts the variable's negative. */
  constructor(bounds: Bounds, total: number, terms: readonly Term[]) {
    this.bounds = bounds;
    this.total = 2 * total;
    this.sides = Int32Array.from(terms, ({ variable, weight }) => (weight > 0 ? 2 * variable : 2 * variable + 1));
    this.weights = Float64Array.from(terms, ({ weight }) => Math.abs(weight));
    this.watched = [...new Set([...this.sides, this.total ^ 1])].map((side) => ({ side, item: 0 }));
  }

  propagate(): boolean {
    this.wakes.clear();
    const { bounds, sides, weights } = this;
    const { low } = bounds;
    let sum = 0;
    for (let i = 0; i < sides.length; i++) sum += (weights[i] as number) * (low[sides[i] as number] as number);
    if (sum > (low[this.total] as number) && !bounds.raise(this.total, sum, (this.noteAll(-1) << 2) | BY_NOTE)) return false;
    const spare = -(low[this.total ^ 1] as number) - sum;
    for (let i = 0; i < sides.length; i++) {
      const side = sides[i] as number;
      const most = (low[side] as number) + Math.floor(spare / (weights[i] as number));
      if (most >= -(low[side ^ 1] as number)) continue;
      const note = this.noteAll(i);
      bounds.note(note, this.total ^ 1, low[this.total ^ 1] as number);
      if (!bounds.raise(side ^ 1, -most, (note << 2) | BY_NOTE)) return false;
    }
    return true;
  }

  private noteAll(except: number): number {
    const { bounds, sides } = this;
    const note = bounds.beginNote();
    for (let i = 0; i < sides.length; i++) {
      if (i !== except) bounds.note(note, sides[i] as number, bounds.low[sides[i] as number] as number);
    }
    return note;
  }
}
