// total >= sum of weight x side, weights above 0: raises the total, and caps each variable by what the total leaves it. Sums are
// doubles: whole numbers up to 2^53. Part of the learning core.

import { at, put, putReal, realAt, reals, words } from '../../assembly/memory';
import { BY_NOTE, beginNote, low, note, raise } from './bounds';
import { Propagator } from './propagator';

export class WeightedSum extends Propagator {
  /** The side of the total's lower bound. */
  private readonly total: i32;
  private readonly count: i32;
  private readonly sides: usize;
  private readonly weights: usize;

  /** `terms`: pairs of variable and weight, so many; a weight below 0 counts the variable's negative. */
  constructor(total: i32, terms: usize, count: i32) {
    super(false, 1);
    this.total = 2 * total;
    this.count = count;
    this.sides = words(count);
    this.weights = reals(count);
    for (let i = 0; i < count; i++) {
      const variable = at(terms, 2 * i);
      const weight = at(terms, 2 * i + 1);
      put(this.sides, i, weight > 0 ? 2 * variable : 2 * variable + 1);
      putReal(this.weights, i, <f64>abs(weight));
      this.watchWhole(at(this.sides, i));
    }
    this.watchWhole(this.total ^ 1);
  }

  propagate(): bool {
    this.clearWakes();
    const count = this.count;
    const sides = this.sides;
    const weights = this.weights;
    const total = this.total;
    let sum: f64 = 0;
    for (let i = 0; i < count; i++) sum += realAt(weights, i) * <f64>at(low, at(sides, i));
    if (sum > <f64>at(low, total) && !raise(total, <i32>sum, (this.noteAll(-1) << 2) | BY_NOTE)) return false;
    const spare = <f64>-at(low, total ^ 1) - sum;
    for (let i = 0; i < count; i++) {
      const side = at(sides, i);
      const most = <f64>at(low, side) + Math.floor(spare / realAt(weights, i));
      if (most >= <f64>-at(low, side ^ 1)) continue;
      const begun = this.noteAll(i);
      note(begun, total ^ 1, at(low, total ^ 1));
      if (!raise(side ^ 1, <i32>-most, (begun << 2) | BY_NOTE)) return false;
    }
    return true;
  }

  private noteAll(except: i32): i32 {
    const begun = beginNote();
    for (let i = 0; i < this.count; i++) {
      if (i !== except) note(begun, at(this.sides, i), at(low, at(this.sides, i)));
    }
    return begun;
  }
}
