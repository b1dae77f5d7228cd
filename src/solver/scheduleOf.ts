// Reads a schedule off the state of a finished search.
import { countedChanges, movesOf } from './moves.ts';
import type { Schedule } from './problem.ts';
import type { StayUse } from './shop.ts';
import type { ShopState } from './shopState.ts';

/** The schedule laid out in the state, with the chambers' moves, and how many of them count as changes. */
export function scheduleOf(state: ShopState): { readonly schedule: Schedule; readonly changes: number } {
  const { shop } = state;
  const { problem, network } = shop;
  const edge = (variable: Int32Array, offset: Int32Array): number[] =>
    problem.tasks.map((_, i) => {
      const v = variable[i] as number;
      return state.isPlaced(v) ? (state.time[v] as number) + (offset[i] as number) : -1;
    });
  const pools = problem.tasks.map((task) => task.demands.map(() => -1));
  shop.uses.forEach((use, u) => {
    (pools[use.task] as number[])[use.indexInTask] = state.poolOfUse[u] as number;
  });
  const chamber = problem.tasks.map(() => -1);
  state.chambers.forEach((line, c) => {
    for (const held of line.stays) chamber[(shop.stays[held.task] as StayUse).task] = c;
  });
  let changes = 0;
  const moves = problem.chambers.map((spec, c) => {
    const stays = state.chambers[c]?.stays ?? [];
    const found = movesOf(spec, stays, problem.horizon);
    changes += countedChanges(spec, found, stays);
    return found;
  });
  const start = edge(network.startVar, network.startOff);
  const end = edge(network.endVar, network.endOff);
  return { schedule: { start, end, pools, chamber, moves }, changes };
}
