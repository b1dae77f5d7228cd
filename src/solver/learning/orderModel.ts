// Pairs of uses of one capacity that can never be side by side, as part of a model: a choice which goes first, unless the lags that
// hold in any case leave none. Used by shopModel.ts.
import type { CrowdUse, Engine } from './engine.ts';
import { isFalse, isTrue, type Literal, negated } from './literal.ts';

/** A yes-or-no variable that, when true, keeps `to` at least `lag` after `from`. */
type Order = { readonly flag: number; readonly from: number; readonly to: number; readonly lag: number };

/** More than any model has. */
const MOST_VARIABLES = 2 ** 24;

export class OrderModel {
  private readonly engine: Engine;
  private readonly clause: (...literals: readonly Literal[]) => void;
  private readonly pairs: (readonly [CrowdUse, CrowdUse])[] = [];
  /** By pair of variables and by lag. */
  private readonly flagsOfPair = new Map<number, Map<number, number>>();
  private readonly orders: Order[] = [];

  constructor(engine: Engine, clause: (...literals: readonly Literal[]) => void) {
    this.engine = engine;
    this.clause = clause;
  }

  /** Two uses are to come one after the other. */
  keepApart(a: CrowdUse, b: CrowdUse): void {
    this.pairs.push([a, b]);
  }

  /** Models the order of the pairs, once every lag that holds in any case is in the engine. */
  addOrders(): void {
    const lags = new SureLags(this.engine);
    for (const [a, b] of this.pairs) {
      if (this.isOver(a, b) || this.isOver(b, a) || lags.part(a, b) || lags.part(b, a)) continue;
      if (lags.forbid(b, a)) this.follow(a, b);
      else if (lags.forbid(a, b)) this.follow(b, a);
      else this.choose(a, b);
    }
  }

  /** Whether one is over before the other may begin. */
  private isOver(first: CrowdUse, second: CrowdUse): boolean {
    const { engine } = this;
    return engine.max(first.until) + first.untilOff <= engine.min(second.from) + second.fromOff;
  }

  private follow(first: CrowdUse, second: CrowdUse): void {
    const lag = first.untilOff - second.fromOff;
    const unless = unlessBoth(first, second);
    if (unless.length === 0) this.engine.addArc(first.until, second.from, lag);
    else this.clause(...unless, isTrue(this.flag(first.until, second.from, lag)));
  }

  private choose(a: CrowdUse, b: CrowdUse): void {
    const first = this.flag(a.until, b.from, a.untilOff - b.fromOff);
    const unless = unlessBoth(a, b);
    if (unless.length === 0) {
      this.engine.addArc(b.until, a.from, b.untilOff - a.fromOff, isFalse(first));
      return;
    }
    const second = this.flag(b.until, a.from, b.untilOff - a.fromOff);
    this.clause(...unless, isTrue(first), isTrue(second));
  }

  /** A yes-or-no variable that, when true, keeps `to` at least `lag` after `from`. */
  flag(from: number, to: number, lag: number): number {
    const pair = from * MOST_VARIABLES + to;
    const ofPair = this.flagsOfPair.get(pair) ?? new Map<number, number>();
    const known = ofPair.get(lag);
    if (known !== undefined) return known;
    const flag = this.engine.addVariable(0, 1);
    ofPair.set(lag, flag);
    this.flagsOfPair.set(pair, ofPair);
    if (from === to) {
      if (lag > 0) this.clause(isFalse(flag));
      return flag;
    }
    this.engine.addArc(from, to, lag, isTrue(flag));
    this.orders.push({ flag, from, to, lag });
    return flag;
  }

  /** Makes what is so at the engine's times what it decides for first. */
  aimAt(target: Int32Array): void {
    for (const { flag, from, to, lag } of this.orders) {
      target[flag] = (target[to] as number) >= (target[from] as number) + lag ? 1 : 0;
    }
  }
}

/** What is true when not both are there. */
function unlessBoth(a: CrowdUse, b: CrowdUse): Literal[] {
  return [a, b].flatMap(({ condition }) => (condition === null ? [] : [negated(condition)]));
}

/** How far variables are apart at least by the lags of an engine that hold in any case: the longest path from one to the other. */
class SureLags {
  private readonly leads: { readonly to: number; readonly lag: number }[][];
  private readonly after = new Map<number, Float64Array>();

  constructor(engine: Engine) {
    this.leads = Array.from({ length: engine.variableCount }, () => []);
    for (const { from, to, lag } of engine.sureArcs) this.leads[from]?.push({ to, lag });
  }

  /** Whether one use is over when another begins. */
  part(first: CrowdUse, second: CrowdUse): boolean {
    return (this.from(first.until)[second.from] as number) + second.fromOff - first.untilOff >= 0;
  }

  /** Whether one use cannot come before another: it does not end before that has begun. */
  forbid(first: CrowdUse, second: CrowdUse): boolean {
    return (this.from(second.from)[first.until] as number) + first.untilOff - second.fromOff > 0;
  }

  /** Of each variable how far it is behind this one at least; -Infinity: nothing is known. */
  private from(variable: number): Float64Array {
    const known = this.after.get(variable);
    if (known !== undefined) return known;
    const far = new Float64Array(this.leads.length).fill(Number.NEGATIVE_INFINITY);
    far[variable] = 0;
    const waiting = [variable];
    const isWaiting = new Uint8Array(far.length);
    // Lags that contradict each other would go on for ever; what was found by then holds all the same.
    const most = far.length ** 2;
    for (let k = 0; k < waiting.length && k < most; k++) {
      const here = waiting[k] as number;
      isWaiting[here] = 0;
      for (const { to, lag } of this.leads[here] as SureLags['leads'][number]) {
        const reached = (far[here] as number) + lag;
        if (reached <= (far[to] as number)) continue;
        far[to] = reached;
        if (isWaiting[to] === 1) continue;
        isWaiting[to] = 1;
        waiting.push(to);
      }
    }
    this.after.set(variable, far);
    return far;
  }
}
