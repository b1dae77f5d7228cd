// Schedules for one pair of hands from the beam, some steps at a time. Used by serveHands.ts before the lanes set off, and by the lane
// that proves, which has no schedule to go on from at first.
import { type Beam, beamOf } from './beam/beam.ts';
import type { Layout } from './layout.ts';
import type { Random } from './random.ts';
import type { Shop } from './shop.ts';
import { soundPart } from './soundPart.ts';

/** Most steps: what more of them find is soon found sooner by other ways. */
const MOST_STEPS = 60_000;

export class HandsServed {
  private readonly shop: Shop;
  private readonly beam: Beam;
  private readonly schedules: Generator<Layout | null, never>;

  private constructor(shop: Shop, beam: Beam) {
    this.shop = shop;
    this.beam = beam;
    this.schedules = beam.schedules();
  }

  /** Null where not one pair of hands does the work of all. */
  static of(shop: Shop, random: Random): HandsServed | null {
    const beam = beamOf(shop, random);
    return beam === null ? null : new HandsServed(shop, beam);
  }

  /** Steps so far. */
  get steps(): number {
    return this.beam.steps;
  }

  get isOver(): boolean {
    return this.steps >= MOST_STEPS;
  }

  /** Goes on for so many steps; the last schedule found in them, which ends sooner than those before, or null. */
  go(steps: number, mayGoOn: () => boolean): Layout | null {
    const until = this.steps + steps;
    let found: Layout | null = null;
    while (this.steps < until && mayGoOn()) {
      const layout = this.schedules.next().value;
      if (layout !== null && soundPart(this.shop, layout).isWhole) found = layout;
    }
    return found;
  }
}
