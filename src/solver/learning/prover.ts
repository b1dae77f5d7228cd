// Raises the floor under the price: assumes a price, searches for a schedule of it, and when every way of making one ends in a
// contradiction the floor is higher (destructive bounding: Klein and Scholl 1999, EJOR 112). The first price that cannot be
// refuted is the best there is. Used by a lane.
import type { Layout } from '../layout.ts';
import { atMost } from './literal.ts';
import type { ShopModel } from './shopModel.ts';

export class Prover {
  private readonly model: ShopModel;
  /** No schedule of all planned units is cheaper, in the model's units. */
  floor: number;
  /** The cheapest schedule found, until it is taken. */
  found: Layout | null = null;
  /** Conflicts since the floor last rose. */
  idle = 0;
  private ceiling: number;
  /** How far above the floor the next price is tried: larger while prices are refuted quickly. */
  private step = 1;

  /** `floor`: what is proved already. `ceiling`: price of a schedule at hand; Infinity: none is. */
  constructor(model: ShopModel, floor: number, ceiling: number) {
    this.model = model;
    this.ceiling = ceiling;
    this.floor = floor;
    this.rise(floor);
    this.lower(ceiling);
  }

  /** Conflicts so far. */
  get conflicts(): number {
    return this.model.engine.conflicts;
  }

  get isDone(): boolean {
    return this.floor >= this.ceiling;
  }

  /** A cheaper schedule is at hand: only floors below it are worth a proof. */
  lower(ceiling: number): void {
    this.ceiling = Math.min(this.ceiling, ceiling);
    if (this.isDone || this.ceiling === Number.POSITIVE_INFINITY) return;
    if (!this.model.isPossible || !this.model.engine.assert(2 * this.model.objective + 1, 1 - this.ceiling))
      this.floor = this.ceiling;
  }

  private rise(floor: number): void {
    const { engine, objective } = this.model;
    const isLeft = this.model.isPossible && engine.assert(2 * objective, floor);
    this.floor = isLeft ? Math.max(floor, engine.min(objective)) : this.ceiling;
    this.idle = 0;
  }

  /**
   * Works for so many conflicts at most on a price at or above the floor: refuted, it raises the floor at once by all between.
   * Returns whether the floor rose or a schedule was found.
   */
  prove(mostConflicts: number, mayGoOn: () => boolean): boolean {
    if (this.isDone) return false;
    const { engine, objective } = this.model;
    const before = engine.conflicts;
    const aim = Math.min(this.floor + this.step, this.ceiling) - 1;
    const outcome = engine.search([atMost(objective, aim)], mostConflicts, mayGoOn);
    switch (outcome) {
      case 'solution':
        this.found = this.model.read();
        this.step = 1;
        this.lower(engine.min(objective));
        return true;
      case 'refuted':
        this.rise(aim + 1);
        this.step *= 2;
        return true;
      case 'impossible':
        this.floor = this.ceiling;
        return true;
      default:
        this.idle += engine.conflicts - before;
        this.step = Math.max(1, this.step >> 1);
        return false;
    }
  }
}
