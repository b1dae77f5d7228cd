// What a solve has found, or has so far: the best schedule, its price, the floor under every price. Used by course.ts and solve.ts.
import type { Bound } from './bounds/bound.ts';
import type { PackingOutcome } from './bounds/chamberLoads.ts';
import type { Cost } from './cost.ts';
import type { Schedule } from './problem.ts';
import { scheduleOf } from './scheduleOf.ts';
import type { Shop } from './shop.ts';
import { type BlockRecord, ShopState } from './shopState.ts';

/** Why a solve ended. */
export type Stopped = 'proved' | 'enough' | 'time' | 'effort' | 'cancelled';

export type Solution = {
  readonly schedule: Schedule;
  readonly cost: Cost;
  /** Changes counted on the moves of the schedule; at least those in `cost`. */
  readonly changes: number;
  readonly bound: Bound;
  readonly stopped: Stopped;
  readonly rounds: number;
  readonly packing: PackingOutcome;
  /** Whether all of the schedule to start from stood in this problem; true without one. */
  readonly isStartWhole: boolean;
  /** The schedule block by block, for those who ask what would fit beside it. */
  readonly records: readonly BlockRecord[];
};

/** Reads the schedule off its records, which stand in an order in which they can be restored. */
export function solutionOf(shop: Shop, found: Omit<Solution, 'schedule' | 'changes'>): Solution {
  // In a state of its own: a search that goes on is not to notice.
  const state = new ShopState(shop);
  for (const record of found.records) state.restore(record);
  return { ...found, ...scheduleOf(state) };
}
