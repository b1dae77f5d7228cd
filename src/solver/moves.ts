// The path of a chamber's state through its stays with the fewest moves: a shortest path over (level, time) in which a move
// arrives when a stay begins or leaves when one ends. Used once per schedule, when the search is over.
import { asksForState, type HeldStay } from './chamberLine.ts';
import type { Chamber, Move } from './problem.ts';

/** Time a chamber is at its first state before it is needed, when there is time: states settle. */
const LEAD = 10;
const EPSILON = 1e-9;

type Tube = { readonly low: Float64Array; readonly high: Float64Array };

function tubeOf(chamber: Chamber, stays: readonly HeldStay[], horizon: number): Tube {
  const low = new Float64Array(horizon + 1).fill(Math.min(chamber.min, chamber.initial));
  const high = new Float64Array(horizon + 1).fill(Math.max(chamber.max, chamber.initial));
  for (const stay of stays) {
    for (let t = stay.start; t <= stay.end; t++) {
      low[t] = Math.max(low[t] as number, stay.low);
      high[t] = Math.min(high[t] as number, stay.high);
    }
  }
  return { low, high };
}

/** States worth holding: ends and middles of the ranges and of what two ranges share, within the chamber's limits. */
function levelsOf(chamber: Chamber, stays: readonly HeldStay[]): number[] {
  const ranges = new Map<string, readonly [number, number]>();
  for (const { low, high } of stays) ranges.set(`${low} ${high}`, [low, high]);
  const list = [...ranges.values()];
  for (const [aLow, aHigh] of [...list]) {
    for (const [bLow, bHigh] of [...ranges.values()]) {
      const low = Math.max(aLow, bLow);
      const high = Math.min(aHigh, bHigh);
      if (low <= high) list.push([low, high]);
    }
  }
  const levels = new Set<number>();
  for (const [rawLow, rawHigh] of list) {
    const low = Math.max(rawLow, chamber.min);
    const high = Math.min(rawHigh, chamber.max);
    const middle = (low + high) / 2;
    levels
      .add(low)
      .add(high)
      .add(Math.round(middle) >= low && Math.round(middle) <= high ? Math.round(middle) : middle);
  }
  return [...levels].sort((a, b) => a - b);
}

function durationOf(chamber: Chamber, from: number, to: number): number {
  const rate = to > from ? chamber.riseRate : chamber.fallRate;
  return Math.ceil(Math.abs(to - from) / rate - EPSILON);
}

function isInside(tube: Tube, start: number, end: number, from: number, to: number): boolean {
  for (let t = start; t <= end; t++) {
    const state = end === start ? to : from + ((to - from) * (t - start)) / (end - start);
    if (state < (tube.low[t] as number) - EPSILON || state > (tube.high[t] as number) + EPSILON) return false;
  }
  return true;
}

/** How far a level is from the middle of the ranges it serves, for a minute: a tie-break between paths. */
function strayFrom(stays: readonly HeldStay[], level: number): number {
  let stray = 0;
  for (const stay of stays) stray += Math.abs(level - (stay.low + stay.high) / 2) / (1 + stay.high - stay.low);
  return stray;
}

/** The stays there are in each minute up to `last`, excluded. */
function staysByMinute(stays: readonly HeldStay[], last: number): HeldStay[][] {
  const byMinute: HeldStay[][] = Array.from({ length: last }, () => []);
  for (const stay of stays) for (let t = stay.start; t < stay.end; t++) byMinute[t]?.push(stay);
  return byMinute;
}

/** A move between two levels, by their numbers. */
type LevelMove = { readonly from: number; readonly to: number; readonly start: number };

type Step = { readonly price: number; readonly from: number; readonly start: number };

/** Fewest moves first, then no first move where none is needed, then the least straying from the middles. */
const MOVE_PRICE = 1e7;
const FIRST_MOVE_PRICE = 1e5;

class LevelPaths {
  private readonly stays: readonly HeldStay[];
  private readonly tube: Tube;
  private readonly levels: readonly number[];
  /** Every two levels between which there is a move, and how long it takes; none back to the first. */
  private readonly pairs: readonly { readonly from: number; readonly to: number; readonly duration: number }[];
  private readonly firstStart: number;
  /** best[t][level]: cheapest way to be at a level at t, and where the last move came from. */
  private readonly price: Float64Array[];
  private readonly cameFrom: (Step | null)[][];

  constructor(chamber: Chamber, stays: readonly HeldStay[], horizon: number) {
    this.stays = stays;
    this.tube = tubeOf(chamber, stays, horizon);
    this.levels = [chamber.initial, ...levelsOf(chamber, stays)];
    this.pairs = this.levels.flatMap((b, to) =>
      this.levels.flatMap((a, from) => {
        const duration = durationOf(chamber, a, b);
        return to === 0 || duration === 0 ? [] : [{ from, to, duration }];
      }),
    );
    this.firstStart = Math.min(...stays.map((stay) => stay.start));
    const last = Math.max(...stays.map((stay) => stay.end));
    this.price = Array.from({ length: last + 1 }, () => new Float64Array(this.levels.length).fill(Number.POSITIVE_INFINITY));
    this.cameFrom = Array.from({ length: last + 1 }, () => new Array(this.levels.length).fill(null));
  }

  private movePrice(from: number, end: number): number {
    return from === 0 && end <= this.firstStart ? FIRST_MOVE_PRICE : MOVE_PRICE;
  }

  private arrive({ from, to, start }: LevelMove, end: number): void {
    const row = this.price[end] as Float64Array;
    const before = (this.price[start] as Float64Array)[from] as number;
    const price = before + this.movePrice(from, end);
    if (price >= (row[to] as number)) return;
    if (!isInside(this.tube, start, end, this.levels[from] as number, this.levels[to] as number)) return;
    row[to] = price;
    (this.cameFrom[end] as (Step | null)[])[to] = { price, from, start };
  }

  /** Moves that leave when a stay ends, by the minute they arrive. */
  private leavingMoves(): LevelMove[][] {
    const byEnd: LevelMove[][] = this.price.map(() => []);
    for (const start of new Set(this.stays.map((stay) => stay.end)))
      for (const { from, to, duration } of this.pairs) byEnd[start + duration]?.push({ from, to, start });
    return byEnd;
  }

  /** The moves of the cheapest path, or null when the levels do not suffice. */
  find(): Move[] | null {
    const last = this.price.length - 1;
    const starts = new Set(this.stays.map((stay) => stay.start));
    if (this.firstStart >= LEAD) starts.add(this.firstStart - LEAD);
    const leaving = this.leavingMoves();
    const present = staysByMinute(this.stays, last);
    (this.price[0] as Float64Array)[0] = 0;
    for (let t = 0; t <= last; t++) {
      if (t > 0) this.hold(t, present[t - 1] as HeldStay[]);
      if (starts.has(t)) this.arriveInTime(t);
      for (const move of leaving[t] as LevelMove[]) this.arrive(move, t);
    }
    return this.trace(last);
  }

  /** Moves that arrive when a stay begins. */
  private arriveInTime(end: number): void {
    for (const { from, to, duration } of this.pairs) {
      const start = end - duration;
      if (start >= 0) this.arrive({ from, to, start }, end);
    }
  }

  /** Stays at each level for a minute more; `present`: the stays there are in it. */
  private hold(t: number, present: readonly HeldStay[]): void {
    const before = this.price[t - 1] as Float64Array;
    const row = this.price[t] as Float64Array;
    for (let level = 0; level < this.levels.length; level++) {
      const state = this.levels[level] as number;
      if (before[level] === Number.POSITIVE_INFINITY) continue;
      if (state < (this.tube.low[t] as number) - EPSILON || state > (this.tube.high[t] as number) + EPSILON) continue;
      const price = (before[level] as number) + strayFrom(present, state);
      if (price < (row[level] as number)) {
        row[level] = price;
        (this.cameFrom[t] as (Step | null)[])[level] = { price, from: level, start: t - 1 };
      }
    }
  }

  private trace(last: number): Move[] | null {
    const row = this.price[last] as Float64Array;
    let level = row.indexOf(Math.min(...row));
    if (row[level] === Number.POSITIVE_INFINITY) return null;
    const moves: Move[] = [];
    let t = last;
    while (t > 0) {
      const step = (this.cameFrom[t] as (Step | null)[])[level];
      if (step == null) return null;
      if (step.from !== level) {
        moves.unshift({ start: step.start, end: t, from: this.levels[step.from] as number, to: this.levels[level] as number });
      }
      level = step.from;
      t = step.start;
    }
    return moves;
  }
}

/** A path that always exists when the tube of reachable states is nowhere empty: move only when the tube forces it. */
function lazyMoves(chamber: Chamber, stays: readonly HeldStay[], horizon: number): Move[] {
  const { low, high } = tubeOf(chamber, stays, horizon);
  for (let t = horizon - 1; t >= 0; t--) {
    low[t] = Math.max(low[t] as number, (low[t + 1] as number) - chamber.riseRate);
    high[t] = Math.min(high[t] as number, (high[t + 1] as number) + chamber.fallRate);
  }
  const moves: Move[] = [];
  let state = chamber.initial;
  for (let t = 1; t <= horizon; t++) {
    const next = Math.min(high[t] as number, Math.max(low[t] as number, state));
    if (Math.abs(next - state) > EPSILON) {
      const previous = moves[moves.length - 1];
      const slope = next - state;
      const isSame =
        previous !== undefined &&
        previous.end === t - 1 &&
        Math.abs((previous.to - previous.from) / (previous.end - previous.start) - slope) < EPSILON;
      if (isSame) moves[moves.length - 1] = { ...previous, end: t, to: next };
      else moves.push({ start: t - 1, end: t, from: state, to: next });
    }
    state = next;
  }
  return moves;
}

/** Moves of one chamber, in order; none when it holds no stay and none is under way. */
export function movesOf(chamber: Chamber, held: readonly HeldStay[], horizon: number): readonly Move[] {
  const stays = held.filter(asksForState);
  const anew = stays.length === 0 ? [] : atOnce(chamber, freshMoves(chamber, stays, horizon));
  const along = chamber.underWay === undefined ? null : movesAlong(chamber, chamber.underWay, stays, horizon);
  return along !== null && countedChanges(chamber, along, stays) <= countedChanges(chamber, anew, stays) ? along : anew;
}

/** A chamber that has set off for its limits does not stop short of them: its first move begins now. */
function atOnce(chamber: Chamber, moves: readonly Move[]): readonly Move[] {
  const [first, ...rest] = moves;
  const isShort = chamber.initial < chamber.min || chamber.initial > chamber.max;
  if (chamber.underWay === undefined || first === undefined || !isShort) return moves;
  return [{ ...first, start: 0, end: first.end - first.start }, ...rest];
}

function freshMoves(chamber: Chamber, stays: readonly HeldStay[], horizon: number): readonly Move[] {
  return new LevelPaths(chamber, stays, horizon).find() ?? lazyMoves(chamber, stays, horizon);
}

/** Moves that begin with the one under way; null when a stay does not let it end. */
function movesAlong(
  chamber: Chamber,
  { end, to }: NonNullable<Chamber['underWay']>,
  stays: readonly HeldStay[],
  horizon: number,
): readonly Move[] | null {
  const first = { start: 0, end, from: chamber.initial, to };
  const tube = tubeOf(chamber, stays, horizon);
  if (!isInside(tube, 0, end, chamber.initial, to)) return null;
  const later = stays.flatMap((stay) =>
    stay.end <= end ? [] : [{ ...stay, start: Math.max(0, stay.start - end), end: stay.end - end }],
  );
  const then = { ...chamber, initial: to };
  const rest = later.length === 0 ? [] : freshMoves(then, later, horizon - end);
  const isKept = rest.every((move) => move.end <= horizon - end) && passes(rest, to, later, chamber);
  return isKept ? [first, ...rest.map((move) => ({ ...move, start: move.start + end, end: move.end + end }))] : null;
}

/** Whether moves from a state keep every stay within its range. */
function passes(moves: readonly Move[], initial: number, stays: readonly HeldStay[], chamber: Chamber): boolean {
  const stateAt = (t: number): number => {
    let state = initial;
    for (const move of moves) {
      if (move.start >= t) break;
      state = t >= move.end ? move.to : move.from + ((move.to - move.from) * (t - move.start)) / (move.end - move.start);
    }
    return state;
  };
  const isSlow = moves.every(({ start, end, from, to }) => {
    const rate = (to - from) / (end - start);
    return rate <= chamber.riseRate + EPSILON && rate >= -chamber.fallRate - EPSILON;
  });
  return (
    isSlow &&
    stays.every(({ start, end, low, high }) => {
      for (let t = start; t <= end; t++) if (stateAt(t) < low - EPSILON || stateAt(t) > high + EPSILON) return false;
      return true;
    })
  );
}

/** Moves that count as changes: all but the arrival at the first state, when that comes before the first stay, and the one under way. */
export function countedChanges(chamber: Chamber, moves: readonly Move[], stays: readonly HeldStay[]): number {
  const first = moves[0];
  if (first === undefined) return 0;
  const { underWay, isSettled } = chamber;
  if (underWay !== undefined)
    return first.start === 0 && first.end === underWay.end && first.to === underWay.to ? moves.length - 1 : moves.length;
  if (isSettled === true) return moves.length;
  const firstStart = Math.min(...stays.filter(asksForState).map((stay) => stay.start));
  return first.end <= firstStart ? moves.length - 1 : moves.length;
}
