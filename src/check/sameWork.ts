// Whether a step is where it was and by whom it was: the place without its position, the people for each kind of work.
import type { HandsOn, Place } from '../model/plan.ts';

/** The same kind and id. A place that is not stated is unlimited and the same as any. */
export function isSamePlace(one: Place | undefined, other: Place | undefined): boolean {
  return one === undefined || other === undefined || (one.kind === other.kind && one.id === other.id);
}

/** Who does which work, as text to compare: minutes do not count, nor how often. */
export function whoDoesWhat(handsOn: readonly HandsOn[]): string {
  return [...new Set(handsOn.map((work) => JSON.stringify([work.for, work.person])))].sort().join(' ');
}
