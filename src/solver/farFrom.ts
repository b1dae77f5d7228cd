// Whether a schedule is far from the cheapest, as far as is known: then small steps of every kind bring most, and nothing is proved
// soon. Used by lane.ts and the improver.
import type { ShopProblem } from './problem.ts';

/** A price that is above the floor by this share of it is far. */
const FAR = 0.3;

/** Problems of so few units are searched as a whole in no time. */
const FEW_UNITS = 16;

export function isFarFrom(floor: number, total: number, { units }: ShopProblem): boolean {
  return units.length > FEW_UNITS && total - floor > FAR * total;
}
