// The learning solver: decide, propagate, learn from the conflict, go back, restart. Knows variables, clauses, arcs and
// propagators; what they stand for is the business of whoever built the model.
import { Activity } from './activity.ts';
import { Analysis } from './analysis.ts';
import { Arcs } from './arcs.ts';
import { Bounds, BY_CLAUSE, DECISION } from './bounds.ts';
import { Clauses } from './clauses.ts';
import type { Literal } from './literal.ts';
import type { Wakes } from './wakes.ts';

/** A side that a propagator watches, and the item of the propagator it belongs to. */
export type Watched = { readonly side: number; readonly item: number };

/** Something that raises bounds when a side it watches has risen; slow ones run when the others have nothing left to say. */
export type Propagator = {
  readonly watched: readonly Watched[];
  readonly wakes: Wakes;
  readonly isSlow: boolean;
  propagate(): boolean;
};

/**
 * How a search ended: a solution stands in the bounds; none exists; none exists under what was assumed; or the limit came.
 */
export type Outcome = 'solution' | 'impossible' | 'refuted' | 'limit';

/** Conflicts before the first restart (times the Luby sequence). */
const RESTART = 150;
/** Learned clauses kept at first, and how many more after each clearing. */
const FIRST_KEPT = 3000;
const MORE_KEPT = 300;

/** The k-th number of 1 1 2 1 1 2 4 ... (Luby, Sinclair and Zuckerman 1993, Information Processing Letters 47). */
function luby(k: number): number {
  let size = 1;
  let power = 0;
  while (size < k + 1) {
    size = 2 * size + 1;
    power++;
  }
  let at = k;
  while (size - 1 !== at) {
    size = (size - 1) >> 1;
    power--;
    at %= size;
  }
  return 2 ** power;
}

export class Engine {
  readonly bounds = new Bounds();
  readonly clauses = new Clauses(this.bounds);
  readonly arcs = new Arcs(this.bounds);
  private propagators: Propagator[] = [];
  /** Pairs of propagator and item, side by side in the order of the sides; where each side's begin, and the last end. */
  private watchers = new Int32Array(0);
  private firstWatcher = new Int32Array(0);
  private wakes: Wakes[] = [];
  private isQueued = new Uint8Array(0);
  private readonly queue: number[] = [];
  private readonly slowQueue: number[] = [];
  private head = 0;
  private analysis: Analysis | null = null;
  private activity: Activity | null = null;
  /** Per variable: the value to decide for first. */
  target = new Int32Array(0);
  /** Conflicts and rises so far: the measure of work. */
  conflicts = 0;
  rises = 0;
  private mostKept = FIRST_KEPT;
  private restarts = 0;
  private isImpossible = false;

  add(propagator: Propagator): void {
    this.propagators.push(propagator);
  }

  /** Ends building. `worth[v]`: which variables to decide first, 0 to 1. False when there is no solution. */
  freeze(worth: Float64Array): boolean {
    const sides = this.bounds.sideCount;
    this.arcs.freeze(sides);
    this.layOutWatchers(sides);
    this.wakes = this.propagators.map((propagator) => propagator.wakes);
    this.isQueued = new Uint8Array(this.propagators.length);
    this.analysis = new Analysis(this.bounds, this.arcs, this.clauses);
    this.activity = new Activity(worth);
    this.target = new Int32Array(this.bounds.sideCount >> 1);
    for (let v = 0; v < this.target.length; v++) this.target[v] = this.bounds.min(v);
    for (let s = 0; s < sides; s++) if (!this.arcs.propagate(s, Number.MIN_SAFE_INTEGER)) this.isImpossible = true;
    for (let p = 0; p < this.propagators.length; p++) this.enqueue(p);
    if (!this.isImpossible && !this.propagate()) this.isImpossible = true;
    return !this.isImpossible;
  }

  private layOutWatchers(sides: number): void {
    const first = new Int32Array(sides + 1);
    for (const { watched } of this.propagators) for (const { side } of watched) first[side + 1] = (first[side + 1] as number) + 2;
    for (let side = 0; side < sides; side++) first[side + 1] = (first[side + 1] as number) + (first[side] as number);
    const fill = first.slice();
    this.watchers = new Int32Array(first[sides] as number);
    this.propagators.forEach(({ watched }, p) => {
      for (const { side, item } of watched) {
        const at = fill[side] as number;
        this.watchers[at] = p;
        this.watchers[at + 1] = item;
        fill[side] = at + 2;
      }
    });
    this.firstWatcher = first;
  }

  private enqueue(p: number): void {
    if (this.isQueued[p] === 1) return;
    this.isQueued[p] = 1;
    (this.propagators[p]?.isSlow === true ? this.slowQueue : this.queue).push(p);
  }

  /** Follows every rise to its end. False on a conflict, which the bounds note. */
  private propagate(): boolean {
    const { bounds } = this;
    for (;;) {
      while (this.head < bounds.size) {
        const at = this.head++;
        const side = bounds.entrySide[at] as number;
        this.rises++;
        const end = this.firstWatcher[side + 1] as number;
        for (let i = this.firstWatcher[side] as number; i < end; i += 2) {
          const p = this.watchers[i] as number;
          (this.wakes[p] as Wakes).touch(this.watchers[i + 1] as number);
          this.enqueue(p);
        }
        const old = bounds.entryOld[at] as number;
        if (!this.arcs.propagate(side, old) || !this.clauses.propagate(side, old)) return false;
      }
      const p = this.queue.pop() ?? this.slowQueue.pop();
      if (p === undefined) return true;
      this.isQueued[p] = 0;
      if (!(this.propagators[p] as Propagator).propagate()) return false;
    }
  }

  private forgetQueue(): void {
    this.isQueued.fill(0);
    this.queue.length = 0;
    this.slowQueue.length = 0;
  }

  /** Goes back to a level; variables that lose their value are open again. */
  private backTo(level: number): void {
    const { bounds } = this;
    const size = bounds.size;
    const activity = this.activity as Activity;
    if (level >= bounds.level) return;
    bounds.backTo(level);
    for (let at = bounds.size; at < size; at++) {
      const side = bounds.entrySide[at] as number;
      activity.offer(side >> 1);
      const end = this.firstWatcher[side + 1] as number;
      for (let i = this.firstWatcher[side] as number; i < end; i += 2)
        (this.wakes[this.watchers[i] as number] as Wakes).touch(this.watchers[i + 1] as number);
    }
    this.head = Math.min(this.head, bounds.size);
    this.forgetQueue();
  }

  /** Adds a fact that holds from now on. False when there is no solution left. */
  assert(side: number, low: number): boolean {
    this.backTo(0);
    if (this.isImpossible || !this.bounds.raise(side, low, DECISION) || !this.propagate()) {
      this.forgetQueue();
      this.isImpossible = true;
    }
    return !this.isImpossible;
  }

  /**
   * Searches for a solution in which every assumption holds, for so many conflicts at most; `mayGoOn` is asked every few.
   * After 'solution' the bounds hold it until the next call.
   */
  search(assumptions: readonly Literal[], mostConflicts: number, mayGoOn: () => boolean): Outcome {
    const until = this.conflicts + mostConflicts;
    if (this.isImpossible) return 'impossible';
    for (;;) {
      this.backTo(0);
      if (!this.propagate()) return this.giveUp();
      if (this.clauses.learnedCount > this.mostKept) {
        this.clauses.forgetHalf();
        this.mostKept += MORE_KEPT;
        if (!this.propagate()) return this.giveUp();
      }
      if (assumptions.length > 0) {
        this.bounds.openLevel();
        for (const { side, low } of assumptions) if (!this.bounds.raise(side, low, DECISION)) return 'refuted';
      }
      const isAssumed = assumptions.length > 0;
      const stretch = Math.min(until - this.conflicts, RESTART * luby(this.restarts++));
      const outcome = this.descend(stretch, isAssumed ? 1 : 0, mayGoOn);
      if (outcome !== 'restart') return outcome;
      if (this.conflicts >= until || !mayGoOn()) return 'limit';
    }
  }

  private giveUp(): 'impossible' {
    this.forgetQueue();
    this.isImpossible = true;
    return 'impossible';
  }

  private descend(stretch: number, baseLevel: number, mayGoOn: () => boolean): Outcome | 'restart' {
    const until = this.conflicts + stretch;
    for (let decisions = 1; ; decisions++) {
      if ((decisions & 255) === 0 && !mayGoOn()) return 'limit';
      if (!this.propagate()) {
        this.forgetQueue();
        this.conflicts++;
        if (this.bounds.level === 0) return this.giveUp();
        const went = this.learn(baseLevel);
        if (went !== 'on') return went;
        if (this.conflicts >= until) return 'restart';
        if ((this.conflicts & 31) === 0 && !mayGoOn()) return 'limit';
        continue;
      }
      if (!this.decide()) return 'solution';
    }
  }

  private learn(baseLevel: number): Outcome | 'on' | 'restart' {
    const analysis = this.analysis as Analysis;
    const activity = this.activity as Activity;
    if (!analysis.learn()) return 'refuted';
    if (analysis.size === 0) return this.giveUp();
    for (const v of analysis.met) activity.bump(v);
    activity.decay();
    const { literals, size, backLevel, glue } = analysis;
    const reason = size > 1 ? (this.clauses.learn(literals, size, glue) << 2) | BY_CLAUSE : DECISION;
    this.backTo(backLevel);
    if (!this.bounds.raise(literals[0] as number, literals[1] as number, reason)) {
      if (this.bounds.level === 0) return this.giveUp();
      throw new Error('a learned clause is false where it should make its first literal true');
    }
    // Below the assumptions: they are made again from the beginning.
    return backLevel < baseLevel ? 'restart' : 'on';
  }

  /** Decides the next open variable for its target. False when every variable has its value. */
  private decide(): boolean {
    const { bounds } = this;
    const activity = this.activity as Activity;
    for (;;) {
      const v = activity.take();
      if (v < 0) return false;
      const min = bounds.min(v);
      const max = bounds.max(v);
      if (min === max) continue;
      activity.offer(v);
      const wanted = Math.min(max, Math.max(min, this.target[v] as number));
      bounds.openLevel();
      if (max > wanted) bounds.raise(2 * v + 1, -wanted, DECISION);
      else bounds.raise(2 * v, wanted, DECISION);
      return true;
    }
  }
}
