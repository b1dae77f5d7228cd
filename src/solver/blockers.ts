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

/** Which of the relaxations, each taken alone, lets the unit in beside the recorded schedule. */
export function blockersOf(
  problem: ShopProblem,
  records: readonly BlockRecord[],
  unit: number,
  relaxations: readonly Relaxation[],
): readonly boolean[] {
  return relaxations.map((relaxation) => fitsIn(relaxed(problem, relaxation), records, unit));
}

function fitsIn(problem: ShopProblem, records: readonly BlockRecord[], unit: number): boolean {
  const shop = shopOf(problem);
  const state = new ShopState(shop);
  for (const record of records) state.restore(record);
  const builder = new Builder(shop, state, { random: randomOf(1) });
  const block = shop.blocks[shop.blockOfUnit[unit] as number] as Block;
  return builder.addChild(
    block,
    block.children.findIndex((child) => child.unit === unit),
  );
}
