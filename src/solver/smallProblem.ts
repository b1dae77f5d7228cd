// Whether a problem is small: then it is worth learning all of a few parts of it, and any first schedule will do. Used by solve.ts, the
// neighbourhoods and the proof of a lane.
import type { ShopProblem } from './problem.ts';

/** By turns at 2 s, 18 days of 26 to 36 units: parts of a day bring more than the whole. With fewer units that was not tried. */
const FEW_UNITS = 24;

export function isSmall({ units }: ShopProblem): boolean {
  return units.length <= FEW_UNITS;
}
