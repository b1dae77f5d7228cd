// When the span is priced from the first mark and several schedules cost the same, the one that begins latest is wanted:
// everything together, then the earliest blocks one by one, are put back later as long as the price does not rise.

import type { Search } from './search.ts';
import type { Block } from './shop.ts';

/** Steps by which a start is moved later, the largest first, in time units. */
const STEPS = [240, 120, 60, 30, 15, 8, 4, 2, 1];

/** Most blocks tried one by one: those that begin first. */
const MOST_BLOCKS = 12;

function blocksByStart(search: Search): readonly { readonly id: number; readonly start: number }[] {
  const { shop, time } = search.state;
  const starts = shop.blocks.flatMap((block: Block) => {
    const placed = [...block.trunk, ...block.children.flatMap((child) => child.variables)].filter((v) =>
      search.state.isPlaced(v),
    );
    return placed.length === 0 ? [] : [{ id: block.id, start: Math.min(...placed.map((v) => time[v] as number)) }];
  });
  return starts.sort((a, b) => a.start - b.start || a.id - b.id);
}

/** Moves the best schedule later where that costs nothing, while there is time. */
export function postpone(search: Search, mayGoOn: () => boolean): void {
  for (const step of STEPS) {
    let isMoving = true;
    while (isMoving && mayGoOn()) {
      const order = blocksByStart(search);
      const first = order[0];
      isMoving =
        first !== undefined &&
        search.tryLater(
          order.map(({ id }) => id),
          first.start + step,
        );
    }
  }
  let isMoving = true;
  while (isMoving) {
    isMoving = false;
    for (const { id, start } of blocksByStart(search).slice(0, MOST_BLOCKS)) {
      for (const step of STEPS) if (mayGoOn() && search.tryLater([id], start + step)) isMoving = true;
    }
  }
}
