// Why a unit is omitted: with the rest of the schedule as it stands, which single resource, were it unlimited, would let it in.
import { Builder } from './builder.ts';
import type { Chamber, Pool, ShopProblem } from './problem.ts';
import { randomOf } from './random.ts';
import type { Block } from './shop.ts';
import { shopOf } from './shop.ts';
import { type BlockRecord, ShopState } from './shopState.ts';

/** More room than any schedule needs. */
const PLENTY = 1_000_000;

/** One way to loosen a problem. */
export type Relaxation =
  | { readonly kind: 'pools'; readonly pools: readonly number[] }
  | { readonly kind: 'chamber-room' }
  | { readonly kind: 'chamber-rates' }
  | { readonly kind: 'longer-day'; readonly by: number };

function widened(pool: Pool, horizon: number): Pool {
  return { ...pool, capacity: PLENTY, open: [[0, horizon]] };
}

/** The problem with one thing loosened. */
export function relaxed(problem: ShopProblem, relaxation: Relaxation): ShopProblem {
  switch (relaxation.kind) {
    case 'pools':
      return {
        ...problem,
        pools: problem.pools.map((pool, p) => (relaxation.pools.includes(p) ? widened(pool, problem.horizon) : pool)),
      };
    case 'chamber-room':
      return { ...problem, chambers: problem.chambers.map((chamber): Chamber => ({ ...chamber, room: PLENTY })) };
    case 'chamber-rates':
      return {
        ...problem,
        chambers: problem.chambers.map((chamber): Chamber => ({ ...chamber, riseRate: PLENTY, fallRate: PLENTY })),
      };
    case 'longer-day': {
      const horizon = problem.horizon + relaxation.by;
      const stretch = (pool: Pool): Pool => ({
        ...pool,
        open: pool.open.map(([from, until]) => [from, until >= problem.horizon ? horizon : until] as const),
      });
      const tasks = problem.tasks.map((task) => ({ ...task, latestEnd: task.latestEnd + relaxation.by }));
      return { ...problem, horizon, tasks, pools: problem.pools.map(stretch) };
    }
  }
}

/** Which of the units fit, each taken alone, beside the recorded schedule when one thing is loosened. */
export function fitWhenRelaxed(
  problem: ShopProblem,
  records: readonly BlockRecord[],
  units: readonly number[],
  relaxation: Relaxation,
): readonly boolean[] {
  const shop = shopOf(relaxed(problem, relaxation));
  const state = new ShopState(shop);
  for (const record of records) state.restore(record);
  const builder = new Builder(shop, state, randomOf(1));
  return units.map((unit) => {
    const block = shop.blocks[shop.blockOfUnit[unit] as number] as Block;
    const child = block.children.findIndex((one) => one.unit === unit);
    const isStanding = block.trunk.some((v) => state.isPlaced(v));
    if (!builder.addChild(block, child)) return false;
    if (isStanding) for (const v of block.children[child]?.variables ?? []) state.lift(v);
    else state.clear(block.id);
    return true;
  });
}
