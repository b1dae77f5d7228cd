// Whether a problem is small: then it is worth learning all of a few parts of it, and any first schedule will do. Used by solve.ts, the
// neighbourhoods and the proof of a lane.
import type { ShopProblem } from './problem.ts';

/** By turns: to some 24 units much of the time is well spent on the whole, from some 26 on parts of it bring more. */
const FEW_UNITS = 24;

export function isSmall({ units }: ShopProblem): boolean {
  return units.length <= FEW_UNITS;
}
