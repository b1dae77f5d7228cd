// A schedule of a shop as flat arrays: times per task, a pool per use, a chamber per stay. What the searches hand each other.
import type { Shop, UseOfPool } from './shop.ts';
import type { BlockRecord } from './shopState.ts';

/** Start and end per task (-1: omitted), pool per use (-1: none), chamber per stay (-1: none). */
export type Layout = {
  readonly start: Int32Array;
  readonly end: Int32Array;
  readonly pool: Int32Array;
  readonly chamber: Int32Array;
};

export function emptyLayout(shop: Shop): Layout {
  const tasks = shop.problem.tasks.length;
  return {
    start: new Int32Array(tasks).fill(-1),
    end: new Int32Array(tasks).fill(-1),
    pool: new Int32Array(shop.uses.length).fill(-1),
    chamber: new Int32Array(shop.stays.length).fill(-1),
  };
}

/** The schedule that records of its blocks describe. */
export function layoutOfRecords(shop: Shop, records: readonly BlockRecord[]): Layout {
  const { network, problem } = shop;
  const layout = emptyLayout(shop);
  const time = new Int32Array(network.variableCount).fill(-1);
  for (const record of records) {
    for (const [v, at] of record.times) time[v] = at;
    for (const [use, pool] of record.pools) layout.pool[use] = pool;
    for (const [stay, chamber] of record.chambers) layout.chamber[stay] = chamber;
  }
  problem.tasks.forEach((_, i) => {
    const start = time[network.startVar[i] as number] as number;
    const end = time[network.endVar[i] as number] as number;
    if (start < 0 || end < 0) return;
    layout.start[i] = start + (network.startOff[i] as number);
    layout.end[i] = end + (network.endOff[i] as number);
  });
  return layout;
}

/** Time of a variable in a layout, or -1. */
export function timesOf(shop: Shop, layout: Layout): Int32Array {
  const { network } = shop;
  const time = new Int32Array(network.variableCount).fill(-1);
  shop.problem.tasks.forEach((_, i) => {
    if ((layout.start[i] as number) < 0) return;
    time[network.startVar[i] as number] = (layout.start[i] as number) - (network.startOff[i] as number);
    time[network.endVar[i] as number] = (layout.end[i] as number) - (network.endOff[i] as number);
  });
  return time;
}

/** The layout block by block, in an order in which a state takes it. */
export function recordsOf(shop: Shop, layout: Layout): BlockRecord[] {
  const time = timesOf(shop, layout);
  const records = shop.blocks.flatMap(({ id, trunk, children }) => {
    // Child by child, the earliest first: of two in one load the first is whole before the second joins it.
    const placed = (list: readonly number[]): number[] =>
      list.filter((v) => (time[v] as number) >= 0).sort((a, b) => (time[a] as number) - (time[b] as number) || a - b);
    const parts = children.map((child) => placed(child.variables)).filter((part) => part.length > 0);
    parts.sort(
      (a, b) => (time[a[0] as number] as number) - (time[b[0] as number] as number) || (a[0] as number) - (b[0] as number),
    );
    const variables = [...placed(trunk), ...parts.flat()];
    if (variables.length === 0) return [];
    const uses = new Set(variables.flatMap((v) => shop.usesOfVar[v] as readonly number[]));
    const stays = new Set(variables.flatMap((v) => shop.staysOfVar[v] as readonly number[]));
    return [
      {
        block: id,
        times: variables.map((v) => [v, time[v] as number] as const),
        pools: [...uses].map((u) => [u, poolOf(shop, layout, u)] as const).filter(([, pool]) => pool >= 0),
        chambers: [...stays].map((s) => [s, layout.chamber[s] as number] as const),
      },
    ];
  });
  return records.sort((a, b) => (a.times[0]?.[1] ?? 0) - (b.times[0]?.[1] ?? 0));
}

/** The pool of a use; the only one there is, where there is no choice. */
function poolOf(shop: Shop, layout: Layout, u: number): number {
  const use = shop.uses[u] as UseOfPool;
  const chosen = layout.pool[u] as number;
  return chosen < 0 && use.pools.length === 1 && !use.oncePerLoad ? (use.pools[0] as number) : chosen;
}

/** Times a use takes in a layout: [from, until). */
export function spanOf(shop: Shop, layout: Layout, use: UseOfPool): readonly [number, number] {
  const demand = shop.problem.tasks[use.task]?.demands[use.indexInTask];
  const at = (edge: 'start' | 'end' | undefined): number => (edge === 'start' ? layout.start : layout.end)[use.task] as number;
  return [at(demand?.from.edge) + (demand?.from.offset ?? 0), at(demand?.until.edge) + (demand?.until.offset ?? 0)];
}
