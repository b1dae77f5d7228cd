// First schedules for one pair of hands: point after point in the order of their times, the most promising beginnings kept
// (beam search: Ow and Morton 1988, IJPR 26), each next piece of work one that could begin before some other would have ended
// (Giffler and Thompson 1960, Operations Research 8). Used by handsServed.ts.
import { emptyLayout, type Layout } from '../layout.ts';
import type { Random } from '../random.ts';
import type { Shop, StayUse } from '../shop.ts';
import { type BeamShop, beamShopOf, NEVER } from './beamShop.ts';
import { Estimate } from './estimate.ts';
import { BLOCKED, DEAD, Placing } from './placing.ts';
import { Rows } from './rows.ts';

/** Beginnings kept at a time: few, for many attempts find more than one that looks at much. */
const WIDTH = 8;

/** How beginnings are weighed: drawn between these for each attempt. In time units, but for the weight of a lack of slack. */
const NOISE = [2, 6] as const;
const SLACK = [20, 100] as const;
const LACK_WEIGHT = [0.5, 3] as const;
const LATE_WEIGHT = 4;

/** Where every beginning has come to a dead end, and where one is a whole schedule: points taken back, twice as many each time. */
const FIRST_BACK = 4;
const BACK_FROM_WHOLE = 16;
/** How much longer what could not be done in time waits before it begins, and how much more slack weighs from then on. */
const LATER = 30;
const HEAVIER = 1.5;

/** For a point with which no stay begins. */
const NO_CHAMBER: readonly number[] = [-1];

type Rule = { readonly noise: number; readonly slack: number; lackWeight: number };

/** One way to go on from a row. */
type Step = {
  readonly row: number;
  readonly point: number;
  readonly time: number;
  readonly chamber: number;
  readonly score: number;
  /** The same for beginnings that have placed the same points. */
  readonly mark: number;
};

/** The beam for a shop in which one pair of hands does most of the work; null for others. */
export function beamOf(shop: Shop, random: Random): Beam | null {
  const beam = beamShopOf(shop);
  return beam === null ? null : new Beam(beam, random);
}

export class Beam {
  private readonly beam: BeamShop;
  private readonly random: Random;
  private readonly rows: Rows;
  private readonly placing: Placing;
  private readonly estimate: Estimate;
  private readonly scratch: number;
  /** Rows kept at each depth. */
  private readonly kept: Int32Array;
  /** What can come next in the row last asked about. */
  private readonly nextPoint: number[] = [];
  private readonly nextChamber: number[] = [];
  private readonly nextTime: number[] = [];
  /** Per point that waits for none: how often it was to blame for a dead end, and when it had begun. */
  private readonly blame: Int32Array;
  private readonly begun: Int32Array;
  /** Beginnings that cannot end before this time are dropped: the end of the schedule found last, unless somebody sets it. */
  limit = NEVER;
  /** Steps looked at so far: the measure of work. */
  steps = 0;

  constructor(beam: BeamShop, random: Random) {
    this.beam = beam;
    this.random = random;
    this.scratch = WIDTH * (beam.choices + 1);
    this.rows = new Rows(beam, this.scratch + 1);
    this.placing = new Placing(beam, this.rows, random);
    this.estimate = new Estimate(beam, this.rows);
    this.kept = new Int32Array(beam.choices + 1);
    this.blame = new Int32Array(beam.order.length);
    this.begun = new Int32Array(beam.order.length);
  }

  /** Schedules, one attempt after another without end; null again and again while there is none yet. */
  *schedules(): Generator<Layout | null, never> {
    for (;;) {
      const rule = {
        noise: this.draw(NOISE),
        slack: Math.round(this.draw(SLACK)),
        lackWeight: this.draw(LACK_WEIGHT),
      };
      yield* this.attempt(rule);
    }
  }

  private draw([from, until]: readonly [number, number]): number {
    return from + (until - from) * this.random.next();
  }

  /** Places all points, going back some way from dead ends and from whole schedules, until that leads back to nothing. */
  private *attempt(rule: Rule): Generator<Layout | null> {
    const { beam, rows, placing } = this;
    rows.clear(0, beam);
    this.kept[0] = 1;
    placing.notBefore.fill(0);
    this.blame.fill(0);
    let back = FIRST_BACK;
    for (let depth = 0; ; ) {
      const steps = depth === beam.choices ? [] : this.stepsFrom(depth, rule);
      if (steps.length > 0) {
        depth++;
        this.keep(depth, steps);
        yield null;
        continue;
      }
      if (depth === beam.choices) {
        this.limit = this.endOf(depth * WIDTH);
        yield this.read(depth * WIDTH);
        back = BACK_FROM_WHOLE;
      } else {
        yield null;
        rule.lackWeight *= HEAVIER;
        this.delay();
      }
      if (depth <= back) return;
      depth -= back;
      back *= 2;
    }
  }

  private stepsFrom(depth: number, rule: Rule): Step[] {
    // Counted even where none can be taken, so that whoever counts steps comes to an end.
    this.steps++;
    const steps: Step[] = [];
    for (let i = 0; i < (this.kept[depth] as number); i++) this.expand(depth * WIDTH + i, rule, steps);
    return steps.sort((a, b) => a.score - b.score || a.time - b.time);
  }

  /** Keeps the best steps, one of those that have placed the same points. */
  private keep(depth: number, steps: readonly Step[]): void {
    const seen = new Set<number>();
    let count = 0;
    for (const step of steps) {
      if (seen.has(step.mark)) continue;
      seen.add(step.mark);
      const row = depth * WIDTH + count++;
      this.rows.copy(step.row, row);
      this.placing.place(row, step.point, step.time, step.chamber);
      if (count === WIDTH) break;
    }
    this.kept[depth] = count;
  }

  /** What was to blame most often waits longer from now on. */
  private delay(): void {
    const { blame, begun, placing } = this;
    const most = blame.reduce((worst, times, v) => (times > (blame[worst] as number) ? v : worst), 0);
    if ((blame[most] as number) > 0)
      placing.notBefore[most] = Math.max(placing.notBefore[most] as number, begun[most] as number) + LATER;
    blame.fill(0);
  }

  /** Adds the ways to go on from a row. */
  private expand(row: number, rule: Rule, steps: Step[]): void {
    const { rows, estimate, scratch, nextPoint, nextTime, nextChamber } = this;
    const count = this.lookAhead(row);
    if (count === 0) return;
    const until = this.soonestEnd(count);
    estimate.aim(row);
    for (let i = 0; i < count; i++) {
      const point = nextPoint[i] as number;
      const time = nextTime[i] as number;
      const chamber = nextChamber[i] as number;
      if (time >= until) continue;
      this.steps++;
      rows.copy(row, scratch);
      if (!this.placing.place(scratch, point, time, chamber)) continue;
      const end = estimate.of(scratch, rule.slack);
      if (end >= this.limit || end >= NEVER) continue;
      const { late, lack } = estimate.tightness;
      const pressure = LATE_WEIGHT * late + rule.lackWeight * lack;
      const score = end + pressure + rule.noise * this.random.next();
      steps.push({ row, point, time, chamber, score, mark: rows.markOf(scratch) });
    }
  }

  /** When the first of the next pieces of work could have ended: what begins later would only come after it. */
  private soonestEnd(count: number): number {
    const { beam, nextPoint, nextTime } = this;
    let first = NEVER;
    let end = NEVER;
    for (let i = 0; i < count; i++) {
      const v = nextPoint[i] as number;
      const time = nextTime[i] as number;
      const length = beam.serverLength[v] as number;
      first = Math.min(first, time);
      if (length > 0) end = Math.min(end, time + (beam.serverOffset[v] as number) + length);
    }
    return Math.max(first + 1, end);
  }

  /** Notes which points can come next in a row, and when; returns how many, 0 when some point can come no more. */
  private lookAhead(row: number): number {
    const { beam, rows } = this;
    const { data } = rows;
    const at = row * rows.width;
    let count = 0;
    for (let v = 0; v < beam.order.length; v++) {
      if ((data[at + v] as number) >= 0 || beam.isFollower[v] === 1 || !this.isNext(at, v)) continue;
      const s = beam.stayFrom[v] as number;
      const chambers = s < 0 ? NO_CHAMBER : (beam.shop.stays[s] as StayUse).chambers;
      let isAlive = false;
      for (const c of chambers) {
        const time = this.placing.earliest(row, v, c);
        if (time < DEAD) isAlive = true;
        if (time >= BLOCKED) continue;
        this.nextPoint[count] = v;
        this.nextChamber[count] = c;
        this.nextTime[count] = time;
        count++;
      }
      if (isAlive) continue;
      this.accuse(at, v);
      return 0;
    }
    return count;
  }

  /** Whether all that a point waits for is placed. */
  private isNext(at: number, v: number): boolean {
    const { beam } = this;
    const { data } = this.rows;
    const twin = beam.twinBefore[v] as number;
    if (twin >= 0 && (data[at + twin] as number) < 0) return false;
    const before = beam.before[v] as Int32Array;
    for (let i = 0; i < before.length; i++) if ((data[at + (before[i] as number)] as number) < 0) return false;
    return true;
  }

  /** Blames the first of the points a dead one waited for: it began too soon. */
  private accuse(at: number, v: number): void {
    const { beam, blame, begun } = this;
    const first = (beam.before[v] as Int32Array).find((u) => (beam.before[u] as Int32Array).length === 0) ?? v;
    blame[first] = (blame[first] as number) + 1;
    begun[first] = Math.max(0, this.rows.data[at + first] as number);
  }

  private endOf(row: number): number {
    const { data, width } = this.rows;
    const { tail } = this.beam;
    return tail.reduce((end, after, v) => Math.max(end, (data[row * width + v] as number) + after), 0);
  }

  private read(row: number): Layout {
    const { shop } = this.beam;
    const { network } = shop;
    const { data, width, pool, chamber, lead } = this.rows;
    const at = row * width;
    const layout = emptyLayout(shop);
    const timeOf = (variable: Int32Array, offset: Int32Array, task: number): number =>
      (data[at + (variable[task] as number)] as number) + (offset[task] as number);
    shop.problem.tasks.forEach((_, i) => {
      layout.start[i] = timeOf(network.startVar, network.startOff, i);
      layout.end[i] = timeOf(network.endVar, network.endOff, i);
    });
    layout.pool.set(data.subarray(at + pool, at + chamber));
    shop.uses.forEach((use, u) => {
      if ((layout.pool[u] as number) < 0) layout.pool[u] = use.pools[0] as number;
    });
    layout.chamber.set(data.subarray(at + chamber, at + lead));
    return layout;
  }
}
