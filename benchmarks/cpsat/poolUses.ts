// Pools of a shop problem: every demand an interval on the pool that serves it, closed hours as fixed intervals.
import type { Demand, Pool, ShopProblem } from '../../src/solver/problem.ts';
import { constant, type ModelDraft, plus } from './modelDraft.ts';
import type { Affine } from './proto.ts';
import { edgeOf, type ShopTimes, type TaskTimes } from './taskTimes.ts';

/** Per task and demand: the pools that may serve it, with the literals that say so; empty literals: whenever it is planned. */
export type PoolChoice = readonly (readonly { readonly pool: number; readonly chosen: readonly number[] }[])[];

type Use = { readonly interval: number; readonly amount: number };

function closedSpans(pool: Pool, horizon: number): [number, number][] {
  const spans: [number, number][] = [];
  let from = 0;
  for (const [open, close] of pool.open) {
    if (open > from) spans.push([from, open]);
    from = Math.max(from, close);
  }
  if (from < horizon) spans.push([from, horizon]);
  return spans;
}

/** Length of a demand; null when it never lasts any time. */
function sizeOf(demand: Demand, times: TaskTimes): Affine | null {
  const extra = demand.until.offset - demand.from.offset;
  if (demand.from.edge === demand.until.edge) return extra > 0 ? constant(extra) : null;
  if (demand.from.edge === 'end') throw new Error('a demand from the end of a task to its start has no place in this model');
  return plus(times.size, extra);
}

function addDemand(
  draft: ModelDraft,
  problem: ShopProblem,
  demand: Demand,
  times: TaskTimes,
  usesOfPool: readonly Use[][],
): { readonly pool: number; readonly chosen: readonly number[] }[] {
  const size = sizeOf(demand, times);
  const start = plus(edgeOf(times, demand.from.edge), demand.from.offset);
  const end = plus(edgeOf(times, demand.until.edge), demand.until.offset);
  if (size === null) return demand.pools.slice(0, 1).map((pool) => ({ pool, chosen: [] }));
  draft.between([[start, 1]], 0, problem.horizon, times.present);
  draft.between([[end, 1]], 0, problem.horizon, times.present);
  const choices = demand.pools.map((pool) => ({ pool, chosen: demand.pools.length === 1 ? [] : [draft.literal()] }));
  if (choices.length > 1)
    draft.oneOf(
      choices.flatMap(({ chosen }) => chosen),
      times.present,
    );
  for (const { pool, chosen } of choices) {
    const interval = draft.interval(start, size, end, [...times.present, ...chosen]);
    usesOfPool[pool]?.push({ interval, amount: demand.amount });
  }
  return choices;
}

/** Adds all pools. Returns, per task, its demands' choices. */
export function addPools(draft: ModelDraft, problem: ShopProblem, times: ShopTimes): readonly PoolChoice[] {
  const usesOfPool: Use[][] = problem.pools.map(() => []);
  const choices = problem.tasks.map((task, i) => {
    const own = times.tasks[i];
    return own === undefined ? [] : task.demands.map((demand) => addDemand(draft, problem, demand, own, usesOfPool));
  });
  problem.pools.forEach((pool, p) => {
    const uses = usesOfPool[p] ?? [];
    if (uses.length === 0) return;
    const closed = closedSpans(pool, problem.horizon).map(([from, until]) => ({
      interval: draft.interval(constant(from), constant(until - from), constant(until)),
      amount: pool.capacity,
    }));
    draft.capacity(pool.capacity, [...uses, ...closed]);
  });
  return choices;
}
