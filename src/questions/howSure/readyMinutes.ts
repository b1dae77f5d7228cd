// When each order was ready, over many mornings: counted by the whole minute, so that it takes little room however many they are.

/** Minutes before and after the planned one that are told apart; what lies further out counts as the outermost. */
const BEFORE = 480;
const AFTER = 1440;

export class ReadyMinutes {
  private readonly plannedMinutes: readonly (number | null)[];
  private readonly counts: Int32Array;

  /** `plannedMinutes`: when the plan has each order ready; null when it never is. */
  constructor(plannedMinutes: readonly (number | null)[]) {
    this.plannedMinutes = plannedMinutes;
    this.counts = new Int32Array(plannedMinutes.length * (BEFORE + AFTER + 1));
  }

  add(order: number, minute: number): void {
    const planned = this.plannedMinutes[order];
    if (planned === null || planned === undefined) return;
    const from = Math.ceil(minute - planned - 1e-6);
    const bin = order * (BEFORE + AFTER + 1) + Math.max(0, Math.min(BEFORE + AFTER, from + BEFORE));
    this.counts[bin] = (this.counts[bin] ?? 0) + 1;
  }

  /** The minute by which an order is ready in this share of the mornings; null when it never is. */
  readyBy(order: number, share: number, mornings: number): number | null {
    const planned = this.plannedMinutes[order];
    if (planned === null || planned === undefined) return null;
    const wanted = share * mornings;
    let counted = 0;
    for (let from = 0; from <= BEFORE + AFTER; from++) {
      counted += this.counts[order * (BEFORE + AFTER + 1) + from] ?? 0;
      if (counted >= wanted) return planned + from - BEFORE;
    }
    return null;
  }
}
