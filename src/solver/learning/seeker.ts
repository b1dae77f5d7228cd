// Looks through a model for any schedule it has, a stretch at a time; or shows that there is none, or none below a price. Used by a
// lane while it has no schedule of all units.
import type { Layout } from '../layout.ts';
import type { ShopModel } from './shopModel.ts';

export class Seeker {
  private readonly model: ShopModel;
  /** What a schedule is to cost less than, in the model's units; null: any will do. */
  private below: number | null = null;
  /** Whether all was looked through. */
  isOver = false;
  /** Once it is over: no schedule of the model costs less. Infinity: there is none at all. */
  floor = 0;

  constructor(model: ShopModel) {
    this.model = model;
  }

  /** Conflicts so far. */
  get conflicts(): number {
    return this.model.engine.conflicts;
  }

  /** A schedule, or null when none was found in so many conflicts. */
  look(mostConflicts: number, mayGoOn: () => boolean): Layout | null {
    const { engine, isPossible, scale } = this.model;
    const outcome = isPossible ? engine.search([], mostConflicts, mayGoOn) : 'impossible';
    if (outcome === 'impossible') {
      this.isOver = true;
      this.floor = this.below === null ? Number.POSITIVE_INFINITY : this.below / scale;
    }
    return outcome === 'solution' ? this.model.read() : null;
  }

  /** From now on only a schedule that costs less than this counts. */
  askBelow(price: number): void {
    const { engine, objective, scale } = this.model;
    this.below = Math.floor(price * scale + 1e-6);
    engine.assert(2 * objective + 1, 1 - this.below);
  }
}
