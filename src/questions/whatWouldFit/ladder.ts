// A kind of change as a ladder: each rung a little more of it, with every way to make it. Used by whatWouldFit.

import type { PatchOperation } from '../../model/changes.ts';
import type { Clock } from '../../model/clock.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { FitChange } from '../../model/wouldFit.ts';
import type { Wanted } from './trouble.ts';

/** One way to make a change. */
export type Variant = {
  readonly amount: number;
  readonly operations: readonly PatchOperation[];
  /** What to do, a sentence without its end: "Start the day 20 minutes earlier, at 02:40". */
  readonly does: string;
  /** Minutes by which the day begins earlier. */
  readonly earlierBy: number;
};

/** No change at all. */
export const AS_IT_IS: Variant = { amount: 0, operations: [], does: 'Change nothing', earlierBy: 0 };

export type Ladder = {
  readonly kind: FitChange;
  /** The last rung, 1 or more; rungs count from 1, rung 0 is the day as it is. */
  readonly top: number;
  /** Where to begin looking. */
  readonly first: number;
  /** The ways to make the change of a rung; none when the clock or the scenario has no such change. */
  readonly at: (rung: number) => readonly Variant[];
  /** What the last rung is, for "… does not do": "Beginning eight hours earlier". */
  readonly topWords: string;
  /** Whether a higher rung always allows what a lower one does. */
  readonly isRising: boolean;
};

/** What a ladder is made from. */
export type Ground = { readonly scenario: Scenario; readonly clock: Clock; readonly wanted: Wanted };

/** A ladder, or why this kind of change is of no use here. */
export type LadderOf = (ground: Ground) => Ladder | string;
