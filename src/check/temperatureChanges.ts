// Counts the temperature changes of a deck. The first heat-up is not one; a deck that bakes before any move has ended
// started at a good temperature, had no first heat-up, and every move counts.
import type { SetPoint } from '../model/plan.ts';

/** `firstBakeStart` is undefined when nothing bakes on the deck. A move that goes nowhere is no move. */
export function temperatureChanges(setPoints: readonly SetPoint[], firstBakeStart: number | undefined): number {
  const moves = setPoints.filter(({ fromC, toC }) => fromC !== toC);
  if (moves.length === 0) return 0;
  const firstArrival = moves.reduce((earliest, { end }) => Math.min(earliest, end), Number.POSITIVE_INFINITY);
  const wasGoodAtTheStart = firstBakeStart !== undefined && firstBakeStart < firstArrival;
  return wasGoodAtTheStart ? moves.length : moves.length - 1;
}
