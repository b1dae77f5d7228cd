// How long a chamber needs between stays whose ranges share no state. Used by the learning solver's model and by the beam.
import type { Chamber } from './problem.ts';

export type Range = { readonly low: number; readonly high: number };

const EPSILON = 1e-9;

/**
 * The states of a range that a chamber can have. One that begins outside its limits may be there too, as ChamberLine has it: one that is
 * cold, say, and stays so while it is full.
 */
export function rangeIn({ min, max, initial }: Chamber, { low, high }: Range): Range {
  return { low: Math.max(low, Math.min(min, initial)), high: Math.min(high, Math.max(max, initial)) };
}

/** Time between the end of a stay and the start of the next, for the state to move; 0 when they share one. */
export function gapBetween(chamber: Chamber, first: Range, second: Range): number {
  if (second.low > first.high + EPSILON) return Math.ceil((second.low - first.high) / chamber.riseRate - EPSILON);
  if (second.high < first.low - EPSILON) return Math.ceil((first.low - second.high) / chamber.fallRate - EPSILON);
  return 0;
}

/** When a chamber can have a state of a range at the earliest. */
export function reachedAt(chamber: Chamber, range: Range): number {
  return gapBetween(chamber, { low: chamber.initial, high: chamber.initial }, range);
}
