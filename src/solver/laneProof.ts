// What a lane proves: its prover, from when it is first needed, and whether more proving is worth the rounds. Used by lane.ts.
import type { Layout } from './layout.ts';
import { Prover } from './learning/prover.ts';
import { ShopModel } from './learning/shopModel.ts';
import type { Shop } from './shop.ts';
import { isSmall } from './smallProblem.ts';

/** Conflicts of a turn. */
const PROOF_CONFLICTS = 400;

/** Vain conflicts at one floor after which a proving lane also improves. */
const PATIENCE = 6000;

/**
 * Gap, as a share of the price, from which a proof is far off: then, after so many vain conflicts at one floor, a proving lane improves
 * too, and proves in this share of its rounds.
 */
const WIDE_GAP = 0.03;
const WIDE_GAP_OF_SMALL = 0.06;
const WIDE_SHARE = 0.25;
const WIDE_PATIENCE = 800;

/** `layout`: a cheaper schedule, or null. `floor`: what is proved now. `conflicts`: what it took. */
type Proved = { readonly layout: Layout | null; readonly floor: number; readonly conflicts: number };

export class LaneProof {
  private readonly shop: Shop;
  private readonly scale: number;
  private readonly wideGap: number;
  private prover: Prover | null = null;
  /** Rounds of the lane in which it proved. */
  private rounds = 0;
  /** Whether the model has a schedule of its floor's price: it cannot prove more. */
  private isFloorMet = false;

  /** `scale`: of the model, see scaleOf. */
  constructor(shop: Shop, scale: number) {
    this.shop = shop;
    this.scale = scale;
    this.wideGap = isSmall(shop.problem) ? WIDE_GAP_OF_SMALL : WIDE_GAP;
  }

  /** A schedule of all units at this price is at hand: only floors below it are worth a proof. */
  lower(total: number): void {
    this.prover?.lower(this.inModel(total));
  }

  /** Whether the lane had better improve this turn, the best schedule costing `total`, with so many rounds and turns behind it. */
  isStuck(total: number, floor: number, rounds: number, turn: number): boolean {
    if (this.isFloorMet) return true;
    const idle = this.prover?.idle ?? 0;
    const isFarOff = total - floor > this.wideGap * total && idle >= WIDE_PATIENCE;
    return (isFarOff && this.rounds > WIDE_SHARE * rounds) || (idle > PATIENCE && turn % 3 !== 0);
  }

  /** Proves for a turn, from what is known; `total`: Infinity where there is no schedule of all units. */
  prove(floor: number, total: number, mayGoOn: () => boolean): Proved {
    const prover = this.prover ?? this.newProver(floor, total);
    this.prover = prover;
    const before = prover.conflicts;
    prover.prove(PROOF_CONFLICTS, mayGoOn);
    this.isFloorMet = prover.isDone;
    const layout = prover.found;
    prover.found = null;
    return { layout, floor: prover.floor / this.scale, conflicts: prover.conflicts - before };
  }

  /** Counts rounds in which the lane proved. */
  count(rounds: number): void {
    this.rounds += rounds;
  }

  private newProver(floor: number, total: number): Prover {
    const model = new ShopModel(this.shop, this.scale, () => true, true);
    return new Prover(model, Math.ceil(floor * model.scale - 1e-6), this.inModel(total));
  }

  /** The price of a schedule of all units in the model's units. */
  private inModel(total: number): number {
    return Math.floor(total * this.scale + 1e-6);
  }
}
