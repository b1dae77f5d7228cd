// Whether a problem is small: then it is worth learning all of a few parts of it, and any first schedule will do. Used by solve.ts, the
// improver and the proof of a lane.
import type { ShopProblem } from './problem.ts';

/** By turns, with counted rounds: to some 24 units longer looks end cheaper, from some 30 on shorter ones. */
const FEW_UNITS = 24;

export function isSmall({ units }: ShopProblem): boolean {
  return units.length <= FEW_UNITS;
}
