// Schedules that owe nothing to those before, for a lane that is stuck: by the beam where one pair of hands does the work of
// all, otherwise from blocks in random order.
import { type Beam, beamOf, STEPS_PER_ROUND } from './beam/beam.ts';
import { NEVER } from './beam/beamShop.ts';
import type { Cost } from './cost.ts';
import type { Layout } from './layout.ts';
import type { Random } from './random.ts';
import type { Search } from './search.ts';
import type { Shop } from './shop.ts';

/** Exchanges after blocks in random order, and their heat. */
const EXCHANGES = 200;
const HEAT = 0.01;

/** Steps of the beam before it counts as without a schedule. */
const MOST_STEPS = 30_000;

export type FreshStart = { readonly layout: Layout; readonly cost: Cost; readonly rounds: number };

export class FreshStarts {
  private readonly shop: Shop;
  private readonly search: Search;
  private readonly random: Random;
  /** Undefined before it is first asked for. */
  private beam: Beam | null | undefined;

  constructor(shop: Shop, search: Search, random: Random) {
    this.shop = shop;
    this.search = search;
    this.random = random;
  }

  /** The next one; the search keeps it when it is the best yet. */
  next(): FreshStart {
    if (this.beam === undefined) this.beam = beamOf(this.shop, this.random);
    const served = this.beam === null ? { layout: null, rounds: 0 } : beamed(this.beam);
    if (served.layout !== null) return { ...served, layout: served.layout, cost: this.search.adopt(served.layout) };
    return { ...this.search.startAfresh(EXCHANGES, HEAT), rounds: served.rounds + EXCHANGES };
  }
}

function beamed(beam: Beam): { readonly layout: Layout | null; readonly rounds: number } {
  const before = beam.steps;
  const rounds = (): number => Math.ceil((beam.steps - before) / STEPS_PER_ROUND);
  beam.limit = NEVER;
  for (const layout of beam.schedules())
    if (layout !== null || beam.steps - before >= MOST_STEPS) return { layout, rounds: rounds() };
  return { layout: null, rounds: rounds() };
}
