// First schedules for one pair of hands: point after point in the order of their times, the most promising beginnings kept
// (beam search: Ow and Morton 1988, IJPR 26), each next piece of work one that could begin before some other would have ended
// (Giffler and Thompson 1960, Operations Research 8). Each step is done by the core (core/), which is compiled ahead to
// WebAssembly: a beam has a few tenths of a second, in which JavaScript would hardly be compiled. Used by handsServed.ts.
import { coreInstance } from '../coreInstance.ts';
import { emptyLayout, type Layout } from '../layout.ts';
import type { Random } from '../random.ts';
import type { Shop } from '../shop.ts';
import { type BeamShop, beamShopOf } from './beamShop.ts';
import { coreCode } from './coreCode.ts';
import { handOver } from './handOver.ts';

/** Beginnings kept at a time, drawn for each attempt: many attempts find more than one that looks at much, but not on every day. */
const WIDTHS = [8, 16, 32, 64];
/** Beginnings are kept for good, to go back to, at every so many points. */
const KEPT_EVERY = 4;
/** Memory for all that are kept, in numbers of four bytes: where it is short, the larger widths are not drawn. */
const ROOM = 2 ** 24;

/** How beginnings are weighed: drawn between these for each attempt. In time units, but for the weight of a lack of slack. */
const NOISE = [2, 6] as const;
const SLACK = [20, 100] as const;
const LACK_WEIGHT = [0.5, 3] as const;

/** Where every beginning has come to a dead end, and where one is a whole schedule: points taken back, twice as many each time. */
const FIRST_BACK = 4;
const BACK_FROM_WHOLE = 16;
/** How much longer what could not be done in time waits before it begins, and how much more slack weighs from then on. */
const LATER = 30;
const HEAVIER = 1.5;

type Rule = { readonly width: number; readonly noise: number; readonly slack: number; lackWeight: number };

/** What the core offers (core/offered.ts): addresses are of its memory, in bytes; yes and no are 1 and 0. */
type Core = {
  readonly memory: { readonly buffer: ArrayBuffer };
  words(count: number): number;
  begin(shop: number, widest: number, keptEvery: number, room: number): number;
  clear(): void;
  goOn(depth: number, width: number, noise: number, slack: number, lackWeight: number): number;
  delay(later: number): void;
  endOf(depth: number): number;
  bestRow(depth: number): number;
  poolPart(): number;
  chamberPart(): number;
  setLimit(time: number): void;
  stepsLooked(): number;
};

/** The beam for a shop in which one pair of hands does most of the work; null for others, and for one too large for it. */
export function beamOf(shop: Shop, random: Random): Beam | null {
  const beamShop = beamShopOf(shop);
  if (beamShop === null) return null;
  const beam = new Beam(beamShop, random);
  return beam.isRoomy ? beam : null;
}

export class Beam {
  private readonly beam: BeamShop;
  private readonly random: Random;
  private readonly core: Core;
  private readonly widths: readonly number[];

  constructor(beam: BeamShop, random: Random) {
    this.beam = beam;
    this.random = random;
    this.core = coreInstance(coreCode, { steps: { chance: () => random.next() } }) as Core;
    const shop = handOver(beam, random);
    const at = this.core.words(shop.length);
    this.listAt(at, shop.length).set(shop);
    const widest = this.core.begin(at, Math.max(...WIDTHS), KEPT_EVERY, ROOM);
    this.widths = WIDTHS.filter((width) => width <= widest);
  }

  /** Whether its memory holds a beginning of the least width at every depth; otherwise it is of no use. */
  get isRoomy(): boolean {
    return this.widths.length > 0;
  }

  /** Steps looked at so far: the measure of work. */
  get steps(): number {
    return this.core.stepsLooked();
  }

  /** Beginnings that cannot end before this time are dropped: the end of the schedule found last, unless somebody sets it. */
  set limit(time: number) {
    this.core.setLimit(time);
  }

  /** Schedules, one attempt after another without end; null again and again while there is none yet. */
  *schedules(): Generator<Layout | null, never> {
    for (;;) {
      const rule = {
        width: this.widths[this.random.below(this.widths.length)] as number,
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
    const { core } = this;
    const { choices } = this.beam;
    core.clear();
    let back = FIRST_BACK;
    for (let depth = 0; ; ) {
      if (depth < choices && core.goOn(depth, rule.width, rule.noise, rule.slack, rule.lackWeight) === 1) {
        depth++;
        yield null;
        continue;
      }
      if (depth === choices) {
        this.limit = core.endOf(depth);
        yield this.read(depth);
        back = BACK_FROM_WHOLE;
      } else {
        yield null;
        rule.lackWeight *= HEAVIER;
        core.delay(LATER);
      }
      if (depth <= back) return;
      depth -= back;
      depth -= depth % KEPT_EVERY;
      back *= 2;
    }
  }

  private listAt(address: number, length: number): Int32Array {
    return new Int32Array(this.core.memory.buffer, address, length);
  }

  /** The schedule that the most promising beginning has become. */
  private read(depth: number): Layout {
    const { shop } = this.beam;
    const { network, uses, stays } = shop;
    const layout = emptyLayout(shop);
    const chamberPart = this.core.chamberPart();
    const row = this.listAt(this.core.bestRow(depth), chamberPart + stays.length);
    const timeOf = (variable: Int32Array, offset: Int32Array, task: number): number =>
      (row[variable[task] as number] as number) + (offset[task] as number);
    shop.problem.tasks.forEach((_, i) => {
      layout.start[i] = timeOf(network.startVar, network.startOff, i);
      layout.end[i] = timeOf(network.endVar, network.endOff, i);
    });
    const poolPart = this.core.poolPart();
    layout.pool.set(row.subarray(poolPart, poolPart + uses.length));
    uses.forEach((use, u) => {
      if ((layout.pool[u] as number) < 0) layout.pool[u] = use.pools[0] as number;
    });
    layout.chamber.set(row.subarray(chamberPart));
    return layout;
  }
}
