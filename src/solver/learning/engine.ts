// The learning solver as the models use it: variables, clauses, lags and capacities in, solutions out. The work is done by the core
// (core/), which is compiled ahead to WebAssembly: it runs at full speed from the first conflict on, where compiling JavaScript while it
// runs would take half of a plan of two seconds. One instance of the core serves one engine and goes with it.
import { coreInstance } from '../coreInstance.ts';
import { coreCode } from './coreCode.ts';
import type { Literal } from './literal.ts';

/** One use of a capacity: from a variable plus an offset until a variable plus an offset; only when `condition` is true, or always. */
export type CrowdUse = {
  readonly from: number;
  readonly fromOff: number;
  readonly until: number;
  readonly untilOff: number;
  readonly amount: number;
  readonly condition: Literal | null;
  /** Least time it takes. */
  readonly length: number;
};

export type Term = { readonly variable: number; readonly weight: number };

/**
 * How a search ended: a solution stands in the bounds; none exists; none exists under what was assumed; or the limit came.
 */
export type Outcome = 'solution' | 'impossible' | 'refuted' | 'limit';

/** By the numbers that the core gives them. */
const OUTCOMES: readonly Outcome[] = ['solution', 'impossible', 'refuted', 'limit'];

/** No variable has values beyond this; a literal that asks for more, or less, asks for this. */
const MOST_VALUE = 1_900_000_000;

function within(low: number): number {
  return Math.max(-MOST_VALUE, Math.min(MOST_VALUE, low));
}

/** Conflicts that the core counts up to. */
const MOST_CONFLICTS = 2 ** 31 - 1;

/** What the core offers (core/offered.ts): addresses are of its memory, in bytes; yes and no are 1 and 0. */
type Core = {
  readonly memory: { readonly buffer: ArrayBuffer };
  sharedWords(count: number): number;
  addVariable(least: number, most: number): number;
  leastOf(variable: number): number;
  mostOf(variable: number): number;
  addArc(from: number, to: number, lag: number, ifSide: number, ifLow: number): void;
  addClause(literals: number, count: number): number;
  addCrowd(capacity: number, instants: number, uses: number, count: number): void;
  addEnergy(capacity: number, instants: number, uses: number, count: number): void;
  addSum(total: number, terms: number, count: number): void;
  freeze(worth: number): number;
  assertRise(side: number, low: number): number;
  search(assumptions: number, count: number, mostConflicts: number): number;
  conflictCount(): number;
  targetAddress(): number;
};

/** Side of no literal. */
const NO_SIDE = -1;

export class Engine {
  private readonly core: Core;
  private mayGoOn: () => boolean = () => true;
  private variables = 0;
  /** What the engine decides for, as long as the memory of the core stays where it is. */
  private targets = new Int32Array(0);
  /** Lags that hold on no condition. */
  readonly sureArcs: { readonly from: number; readonly to: number; readonly lag: number }[] = [];

  constructor() {
    this.core = coreInstance(coreCode, { engine: { mayGoOn: () => this.mayGoOn() } }) as Core;
  }

  get variableCount(): number {
    return this.variables;
  }

  /** Adds a variable of whole values `least` to `most`, both included, within a milliard of 0. Returns its number. */
  addVariable(least: number, most: number): number {
    this.variables++;
    return this.core.addVariable(least, most);
  }

  /** Least and most value that a variable may have now; of a solution both are its value. */
  min(variable: number): number {
    return this.core.leastOf(variable);
  }

  max(variable: number): number {
    return this.core.mostOf(variable);
  }

  /** Asks that variable `to` is at least variable `from` plus `lag`, on a condition or always. */
  addArc(from: number, to: number, lag: number, condition: Literal | null = null): void {
    if (condition === null) this.sureArcs.push({ from, to, lag });
    this.core.addArc(from, to, lag, condition?.side ?? NO_SIDE, condition === null ? 0 : within(condition.low));
  }

  /** Asks that some literal is true. False when it makes the problem impossible. */
  addClause(literals: readonly Literal[]): boolean {
    return (
      this.core.addClause(
        this.hand(2 * literals.length, (list) => writeLiterals(list, literals)),
        literals.length,
      ) === 1
    );
  }

  /** `capacity[t]` during [t, t + 1) holds the uses. */
  addCrowd(capacity: Int32Array, uses: readonly CrowdUse[]): void {
    const at = this.handUses(capacity, uses);
    this.core.addCrowd(at, capacity.length, at + 4 * capacity.length, uses.length);
  }

  /** The slower arguments about a capacity that `addCrowd` was told of as well. */
  addEnergy(capacity: Int32Array, uses: readonly CrowdUse[]): void {
    const at = this.handUses(capacity, uses);
    this.core.addEnergy(at, capacity.length, at + 4 * capacity.length, uses.length);
  }

  /** Asks that variable `total` is at least the sum of weight times variable; weights are whole numbers. */
  addSum(total: number, terms: readonly Term[]): void {
    const at = this.hand(2 * terms.length, (list) => {
      terms.forEach(({ variable, weight }, i) => {
        list[2 * i] = variable;
        list[2 * i + 1] = weight;
      });
    });
    this.core.addSum(total, at, terms.length);
  }

  /** Ends building. `worth[v]`: which variables to decide first, 0 to 1. False when there is no solution. */
  freeze(worth: Float64Array): boolean {
    const at = this.hand(2 * worth.length, (list) => list.set(new Int32Array(worth.slice().buffer)));
    return this.core.freeze(at) === 1;
  }

  /** Per variable: the value to decide for first. Once building has ended; read anew after each call of the engine. */
  get target(): Int32Array {
    const { buffer } = this.core.memory;
    if (this.targets.buffer !== buffer) this.targets = new Int32Array(buffer, this.core.targetAddress(), this.variables);
    return this.targets;
  }

  /** Conflicts so far: the measure of work. */
  get conflicts(): number {
    return this.core.conflictCount();
  }

  /** Adds a fact that holds from now on. False when there is no solution left. */
  assert(side: number, low: number): boolean {
    return this.core.assertRise(side, within(low)) === 1;
  }

  /**
   * Searches for a solution in which every assumption holds, for so many conflicts at most; `mayGoOn` is asked every few.
   * After 'solution' the bounds hold it until the next call.
   */
  search(assumptions: readonly Literal[], mostConflicts: number, mayGoOn: () => boolean): Outcome {
    this.mayGoOn = mayGoOn;
    const at = this.hand(2 * assumptions.length, (list) => writeLiterals(list, assumptions));
    const outcome = this.core.search(at, assumptions.length, Math.min(MOST_CONFLICTS, Math.ceil(mostConflicts)));
    return OUTCOMES[outcome] as Outcome;
  }

  /** Hands numbers over to the core. Returns where they are until the next are handed over. */
  private hand(count: number, write: (list: Int32Array) => void): number {
    const at = this.core.sharedWords(count);
    write(new Int32Array(this.core.memory.buffer, at, count));
    return at;
  }

  private handUses(capacity: Int32Array, uses: readonly CrowdUse[]): number {
    return this.hand(capacity.length + 8 * uses.length, (list) => {
      list.set(capacity);
      uses.forEach(({ from, fromOff, until, untilOff, amount, condition, length }, i) => {
        const { side, low } = condition ?? { side: NO_SIDE, low: 0 };
        list.set([from, fromOff, until, untilOff, amount, side, low, length], capacity.length + 8 * i);
      });
    });
  }
}

function writeLiterals(list: Int32Array, literals: readonly Literal[]): void {
  literals.forEach(({ side, low }, i) => {
    list[2 * i] = side;
    list[2 * i + 1] = within(low);
  });
}
