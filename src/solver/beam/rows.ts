// Schedules in the making, one a row of one array: what is placed, what the rest may still be, and what each place holds.
import type { BeamShop } from './beamShop.ts';

/** A slot that holds something whose end is not placed yet keeps its number as this less the number. */
export const HELD = -1;

/** How many values each half of a mark can have. */
export const MARKS = 2 ** 26;

/** Before any time. */
export const LONG_AGO = -1_000_000;

export class Rows {
  readonly data: Int32Array;
  /** Where in a row each part begins. Times: -1 while not placed. Slots: free from that time on, or held. */
  readonly time = 0;
  readonly low: number;
  readonly high: number;
  readonly slot: number;
  readonly lastEnd: number;
  readonly inside: number;
  readonly pool: number;
  readonly chamber: number;
  readonly lead: number;
  readonly mark: number;
  /** The latest time of a point placed by itself. */
  readonly now: number;
  readonly width: number;

  constructor(beam: BeamShop, count: number) {
    const { network, uses, stays, problem } = beam.shop;
    const points = network.variableCount;
    const groups = problem.chambers.length * beam.groupCount;
    this.low = points;
    this.high = 2 * points;
    this.slot = 3 * points;
    this.lastEnd = this.slot + beam.slotCount;
    this.inside = this.lastEnd + groups;
    this.pool = this.inside + groups;
    this.chamber = this.pool + uses.length;
    this.lead = this.chamber + stays.length;
    this.mark = this.lead + problem.bursts.length;
    this.now = this.mark + 2;
    this.width = this.now + 1;
    this.data = new Int32Array(count * this.width);
  }

  /** Makes a row the empty schedule. */
  clear(row: number, beam: BeamShop): void {
    const { data, width } = this;
    const at = row * width;
    const { earliest, latest } = beam.shop.network;
    data.fill(0, at, at + width);
    data.fill(-1, at, at + this.low);
    data.set(earliest, at + this.low);
    data.set(latest, at + this.high);
    data.fill(LONG_AGO, at + this.lastEnd, at + this.inside);
    data.fill(-1, at + this.pool, at + this.mark);
  }

  copy(from: number, to: number): void {
    const { width } = this;
    this.data.copyWithin(to * width, from * width, (from + 1) * width);
  }

  /** A number that rows share when the same points are placed in them. */
  markOf(row: number): number {
    const at = row * this.width + this.mark;
    return (this.data[at] as number) * MARKS + (this.data[at + 1] as number);
  }
}
