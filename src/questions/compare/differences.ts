// Whether a day is better, the same or worse than the day as it is, and whether that is proved. Used by compare.
import type { Capacity, DayFigures, JudgedDifference } from '../../model/comparison.ts';
import type { Scenario } from '../../model/scenario.ts';
import { hasSameOrders, hasSamePrices, isNoStricter } from './isNoStricter.ts';

/** Prices are stated to six decimals. */
const ROUNDING = 1e-6;

export type Judged = { readonly scenario: Scenario; readonly figures: DayFigures };

const UNKNOWN: JudgedDifference = { is: 'not-comparable', isProved: false };

/**
 * Prices side by side. Of two of which one is no stricter the roomier never has to cost more: where its lower bound is the price of
 * both, the stricter plan is the best as well, and the room adds nothing.
 */
export function priceDifference(base: Judged, other: Judged): JudgedDifference {
  if (!hasSamePrices(base.scenario, other.scenario)) return UNKNOWN;
  const [was, is] = [base.figures.score, other.figures.score];
  if (Math.abs(was.cost - is.cost) > ROUNDING) {
    const isBetter = is.cost < was.cost;
    const isProved = isBetter ? is.cost < was.lowerBound - ROUNDING : is.lowerBound > was.cost + ROUNDING;
    return { is: isBetter ? 'better' : 'worse', isProved };
  }
  const isBest = ({ cost, lowerBound }: { cost: number; lowerBound: number }): boolean => lowerBound >= cost - ROUNDING;
  const isProved =
    (isBest(was) && isBest(is)) ||
    (isBest(is) && isNoStricter(base.scenario, other.scenario)) ||
    (isBest(was) && isNoStricter(other.scenario, base.scenario));
  return { is: 'same', isProved };
}

function reaches(limit: number | null, found: number): boolean {
  return limit !== null && limit <= found;
}

/** Trays on time side by side; only where the same is wanted. */
export function capacityDifference(base: Judged, other: Judged): JudgedDifference {
  const [was, is]: readonly (Capacity | null)[] = [base.figures.capacity, other.figures.capacity];
  if (was == null || is == null || !hasSameOrders(base.scenario, other.scenario)) return UNKNOWN;
  const [before, now] = [was.foundTrays, is.foundTrays];
  if (now > before) return { is: 'better', isProved: was.limitTrays !== null && now > was.limitTrays };
  if (now < before) return { is: 'worse', isProved: is.limitTrays !== null && before > is.limitTrays };
  const isProved =
    (reaches(was.limitTrays, before) && reaches(is.limitTrays, now)) ||
    (reaches(is.limitTrays, now) && isNoStricter(base.scenario, other.scenario)) ||
    (reaches(was.limitTrays, before) && isNoStricter(other.scenario, base.scenario));
  return { is: 'same', isProved };
}
