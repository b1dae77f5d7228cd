// Clauses over literals of bounds, two of each watched (Moskewicz, Madigan, Zhao, Zhang and Malik 2001, DAC 38, section 2).
// A clause whose literals are all false but one makes that one true. Part of the learning solver.
import { type Bounds, BY_CLAUSE } from './bounds.ts';

/** Words of a clause before its literals: size, and how far apart in levels its literals were when it was learned. */
const HEADER = 2;

/** Words of a watch: threshold, clause, and a literal of the clause that spares a look when true. */
const WATCH = 4;

/** What sides begin with that nothing watches: most of them. */
const NO_WATCHES = new Int32Array(0);

/** Learned clauses whose literals came from so few levels are kept for good. */
const GLUE_KEPT = 2;

export class Clauses {
  private readonly bounds: Bounds;
  private arena: Int32Array<ArrayBuffer> = new Int32Array(1 << 14);
  private arenaSize = 0;
  private watches: Int32Array<ArrayBuffer>[] = [];
  private watchCount: number[] = [];
  /** Learned clauses, oldest first. */
  private learned: number[] = [];
  private given: number[] = [];

  constructor(bounds: Bounds) {
    this.bounds = bounds;
  }

  get learnedCount(): number {
    return this.learned.length;
  }

  /** Adds a clause of the problem, literals as pairs of side and number. False when it makes the problem impossible. Level 0 only. */
  add(literals: readonly number[]): boolean {
    const kept: number[] = [];
    for (let i = 0; i < literals.length; i += 2) {
      const side = literals[i] as number;
      const low = literals[i + 1] as number;
      if (this.bounds.isTrue(side, low)) return true;
      if (!this.bounds.isFalse(side, low)) kept.push(side, low);
    }
    if (kept.length === 0) return false;
    if (kept.length === 2) return this.bounds.raise(kept[0] as number, kept[1] as number, 0);
    this.given.push(this.attach(kept, kept.length / 2, 0));
    return true;
  }

  /** Adds a learned clause; its first literal is the one it makes true now, its second the latest of the others. */
  learn(literals: Int32Array, size: number, glue: number): number {
    const clause = this.attach(literals, size, glue);
    this.learned.push(clause);
    return clause;
  }

  private attach(literals: ArrayLike<number>, size: number, glue: number): number {
    const words = HEADER + 2 * size;
    if (this.arenaSize + words > this.arena.length) {
      const larger = new Int32Array(Math.max(this.arenaSize + words, 2 * this.arena.length));
      larger.set(this.arena);
      this.arena = larger;
    }
    const clause = this.arenaSize;
    this.arena[clause] = size;
    this.arena[clause + 1] = glue;
    for (let i = 0; i < 2 * size; i++) this.arena[clause + HEADER + i] = literals[i] as number;
    this.arenaSize += words;
    this.watchBoth(clause);
    return clause;
  }

  private watchBoth(clause: number): void {
    const a = clause + HEADER;
    const arena = this.arena;
    this.watch(arena[a] as number, arena[a + 1] as number, clause, arena[a + 2] as number, arena[a + 3] as number);
    this.watch(arena[a + 2] as number, arena[a + 3] as number, clause, arena[a] as number, arena[a + 1] as number);
  }

  /** Watches a literal: the clause is looked at when its opposite side rises past the threshold. */
  private watch(side: number, low: number, clause: number, otherSide: number, otherLow: number): void {
    const list = side ^ 1;
    while (this.watches.length <= list) {
      this.watches.push(NO_WATCHES);
      this.watchCount.push(0);
    }
    let words = this.watches[list] as Int32Array<ArrayBuffer>;
    const at = (this.watchCount[list] as number) * WATCH;
    if (at === words.length) {
      const larger = new Int32Array(Math.max(4 * WATCH, 2 * at));
      larger.set(words);
      this.watches[list] = larger;
      words = larger;
    }
    words[at] = 1 - low;
    words[at + 1] = clause;
    words[at + 2] = otherSide;
    words[at + 3] = otherLow;
    this.watchCount[list] = (this.watchCount[list] as number) + 1;
  }

  /** Looks at the clauses whose watched literal a rise from `old` made false. False on a conflict. */
  propagate(side: number, old: number): boolean {
    if (side >= this.watches.length) return true;
    const { bounds, arena } = this;
    const low = bounds.low;
    const now = low[side] as number;
    const words = this.watches[side] as Int32Array<ArrayBuffer>;
    const until = (this.watchCount[side] as number) * WATCH;
    let kept = 0;
    for (let at = 0; at < until; at += WATCH) {
      const threshold = words[at] as number;
      const clause = words[at + 1] as number;
      let otherSide = words[at + 2] as number;
      let otherLow = words[at + 3] as number;
      let isKept = true;
      let isUnit = false;
      if (threshold > old && threshold <= now && (low[otherSide] as number) < otherLow) {
        const a = clause + HEADER;
        if (arena[a] === (side ^ 1) && arena[a + 1] === 1 - threshold) {
          arena[a] = arena[a + 2] as number;
          arena[a + 1] = arena[a + 3] as number;
          arena[a + 2] = side ^ 1;
          arena[a + 3] = 1 - threshold;
        }
        otherSide = arena[a] as number;
        otherLow = arena[a + 1] as number;
        if ((low[otherSide] as number) < otherLow) {
          const end = a + 2 * (arena[clause] as number);
          let next = a + 4;
          while (next < end && -(low[(arena[next] as number) ^ 1] as number) < (arena[next + 1] as number)) next += 2;
          if (next < end) {
            const nextSide = arena[next] as number;
            const nextLow = arena[next + 1] as number;
            arena[next] = side ^ 1;
            arena[next + 1] = 1 - threshold;
            arena[a + 2] = nextSide;
            arena[a + 3] = nextLow;
            this.watch(nextSide, nextLow, clause, otherSide, otherLow);
            isKept = false;
          } else isUnit = true;
        }
      }
      if (isKept) {
        words[kept] = threshold;
        words[kept + 1] = clause;
        words[kept + 2] = otherSide;
        words[kept + 3] = otherLow;
        kept += WATCH;
      }
      if (isUnit && !bounds.raise(otherSide, otherLow, (clause << 2) | BY_CLAUSE)) {
        words.copyWithin(kept, at + WATCH, until);
        this.watchCount[side] = (kept + until - at - WATCH) / WATCH;
        return false;
      }
    }
    this.watchCount[side] = kept / WATCH;
    return true;
  }

  /** Calls back with the literals that made the literal of `side` true: the opposites of the others. */
  explain(clause: number, side: number, add: (side: number, low: number) => void): void {
    const a = clause + HEADER;
    const end = a + 2 * (this.arena[clause] as number);
    for (let at = a; at < end; at += 2) {
      const other = this.arena[at] as number;
      if (other !== side) add(other ^ 1, 1 - (this.arena[at + 1] as number));
    }
  }

  /** Drops the half of the learned clauses that is least likely to help, and what is true for good. Level 0 only. */
  forgetHalf(): void {
    const { arena } = this;
    const loose = this.learned.filter((clause) => (arena[clause + 1] as number) > GLUE_KEPT);
    const order = new Map(loose.map((clause, age) => [clause, age]));
    const worth = (clause: number): number => (arena[clause + 1] as number) - (order.get(clause) as number) / loose.length;
    const dropped = new Set([...loose].sort((a, b) => worth(b) - worth(a)).slice(0, loose.length >> 1));
    this.rebuild(
      this.given,
      this.learned.filter((clause) => !dropped.has(clause)),
    );
  }

  /** Lays the kept clauses out anew, without literals that are false for good. */
  private rebuild(given: readonly number[], learned: readonly number[]): void {
    const old = this.arena;
    this.arena = new Int32Array(old.length);
    this.arenaSize = 0;
    this.watchCount.fill(0);
    const move = (clauses: readonly number[]): number[] => {
      const moved: number[] = [];
      for (const clause of clauses) {
        const literals = this.openLiterals(old, clause);
        if (literals === null) continue;
        if (literals.length >= 4) moved.push(this.attach(literals, literals.length / 2, old[clause + 1] as number));
        else this.bounds.raise(literals[0] as number, literals[1] as number, 0);
      }
      return moved;
    };
    this.given = move(given);
    this.learned = move(learned);
  }

  private openLiterals(arena: Int32Array, clause: number): number[] | null {
    const open: number[] = [];
    for (let i = 0; i < (arena[clause] as number); i++) {
      const side = arena[clause + HEADER + 2 * i] as number;
      const low = arena[clause + HEADER + 2 * i + 1] as number;
      if (this.bounds.isTrue(side, low)) return null;
      if (!this.bounds.isFalse(side, low)) open.push(side, low);
    }
    return open;
  }
}
