// Which of the days of a comparison are no stricter than which, and the order to plan them in. Used by compare.
import type { Plan } from '../../model/plan.ts';
import type { Entry } from './entry.ts';
import { hasSameBatches, hasSameOrders, hasSamePrices, isNoStricter } from './isNoStricter.ts';

/** Pairs of days of which the second is no stricter than the first, by their places. */
export class Relations {
  private readonly entries: readonly Entry[];
  private readonly isNoStricter: readonly (readonly boolean[])[];

  constructor(entries: readonly Entry[]) {
    this.entries = entries;
    this.isNoStricter = entries.map(({ scenario: a }) => entries.map(({ scenario: b }) => isNoStricter(a, b)));
  }

  /** Whether `b` is no stricter than `a`. */
  holds(a: Entry, b: Entry): boolean {
    return this.isNoStricter[this.entries.indexOf(a)]?.[this.entries.indexOf(b)] ?? false;
  }

  /** The days but the first, the stricter of two before the roomier; otherwise as they stand, or as they stand backwards. */
  inOrder(): readonly Entry[] {
    const rest = this.entries.slice(1);
    const [first, last] = [rest[0], rest.at(-1)];
    const isFalling = first !== undefined && last !== undefined && this.holds(last, first) && !this.holds(first, last);
    const left = isFalling ? rest.reverse() : rest;
    const ordered: Entry[] = [];
    while (left.length > 0) {
      const next = left.findIndex((one) =>
        left.every((other) => one === other || !this.holds(other, one) || this.holds(one, other)),
      );
      ordered.push(...left.splice(Math.max(0, next), 1));
    }
    return ordered;
  }

  /** Days done whose plans stand on this one too, at the same prices. */
  stricter(entry: Entry): readonly (Entry & { readonly plan: Plan })[] {
    return this.entries.flatMap((other) => {
      const { plan } = other;
      if (other === entry || plan === null || !this.holds(other, entry)) return [];
      return hasSamePrices(other.scenario, entry.scenario) ? [{ ...other, plan }] : [];
    });
  }

  /** Days done that are no stricter than this one, at the same prices. */
  roomier(entry: Entry): readonly (Entry & { readonly plan: Plan })[] {
    return this.entries.flatMap((other) => {
      const { plan } = other;
      if (other === entry || plan === null || !this.holds(entry, other)) return [];
      return hasSamePrices(other.scenario, entry.scenario) ? [{ ...other, plan }] : [];
    });
  }

  /** Whether what is proved of `b` holds of `a` too: it is stricter, at the same prices, with the same batches. */
  mayProve(a: Entry, b: Entry): boolean {
    return this.holds(a, b) && hasSameBatches(a.scenario, b.scenario);
  }

  /** Whether so many trays more on `a` are so many more on `b`. */
  hasSameTrays(a: Entry, b: Entry): boolean {
    return this.holds(a, b) && hasSameOrders(a.scenario, b.scenario);
  }
}
