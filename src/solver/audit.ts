// Counts a schedule's price again, slowly and from nothing but the schedule and the problem, and checks every rule. Debug runs
// hold each schedule the searches accept against it.
import { checkSchedule } from './checkSchedule.ts';
import type { Cost } from './cost.ts';
import { MISSING_PRICE } from './cost.ts';
import { movedInLayout } from './homes.ts';
import type { Layout } from './layout.ts';
import { countedChanges, movesOf } from './moves.ts';
import type { Move, Schedule, ShopProblem } from './problem.ts';
import type { Shop } from './shop.ts';

/** A layout as a schedule, its chambers' moves worked out. */
export function scheduleOfLayout(shop: Shop, layout: Layout): Schedule {
  const { problem } = shop;
  const pools = problem.tasks.map((task) => task.demands.map(() => -1));
  const served = new Set<string>();
  shop.uses.forEach((use, u) => {
    const s = shop.stays.findIndex((stay) => stay.task === use.task);
    const isShared = use.oncePerLoad && problem.chambers[layout.chamber[s] as number]?.together === true;
    const load = `${layout.chamber[s]} ${layout.start[use.task]} ${problem.tasks[use.task]?.demands[use.indexInTask]?.from.edge}`;
    if (!(isShared && served.has(load))) (pools[use.task] as number[])[use.indexInTask] = layout.pool[u] as number;
    if (isShared) served.add(load);
  });
  const chamber = problem.tasks.map(() => -1);
  shop.stays.forEach((stay, s) => {
    if ((layout.start[stay.task] as number) >= 0) chamber[stay.task] = layout.chamber[s] as number;
  });
  const moves = problem.chambers.map((_, c): readonly Move[] =>
    movesOf(problem.chambers[c] as ShopProblem['chambers'][number], staysIn(shop, layout, c), problem.horizon),
  );
  return { start: [...layout.start], end: [...layout.end], pools, chamber, moves };
}

function staysIn(shop: Shop, layout: Layout, chamber: number) {
  const held = shop.stays.flatMap((stay, task) => {
    const start = layout.start[stay.task] as number;
    if (start < 0 || layout.chamber[task] !== chamber) return [];
    return [{ task, start, end: layout.end[stay.task] as number, low: stay.low, high: stay.high, room: stay.room }];
  });
  return held.sort((a, b) => a.start - b.start);
}

/** Price of a schedule, counted from the problem alone. */
export function slowPrice(shop: Shop, layout: Layout): number {
  const { problem } = shop;
  const at = (mark: { readonly task: number; readonly edge: 'start' | 'end'; readonly offset: number }): number => {
    const edge = (mark.edge === 'start' ? layout.start : layout.end)[mark.task] as number;
    return edge < 0 ? -1 : edge + mark.offset;
  };
  const ready = problem.units.map((unit) => (unit.ready === null ? -1 : at(unit.ready)));
  const parents = new Set(problem.units.map((unit) => unit.parent));
  let price = 0;
  problem.units.forEach((unit, u) => {
    const isLeaf = !parents.has(u);
    if (ready[u] === -1 && unit.ready !== null && unit.omissionPrice !== Number.POSITIVE_INFINITY) price += unit.omissionPrice;
    if (isLeaf && unit.omissionPrice === Number.POSITIVE_INFINITY)
      price += MISSING_PRICE * unit.tasks.filter((task) => (layout.start[task] as number) < 0).length;
  });
  problem.tasks.forEach((_, i) => {
    if (shop.unitOfTask[i] === -1 && (layout.start[i] as number) < 0) price += MISSING_PRICE;
  });
  problem.families.forEach((family, f) => {
    const times = ready.filter((time, u) => time >= 0 && problem.units[u]?.family === f).sort((a, b) => a - b);
    times.forEach((time, k) => {
      price += family.latePrice * Math.max(0, time - (family.dues[k] ?? Number.POSITIVE_INFINITY));
    });
  });
  const marks = problem.firstMarks.map(at).filter((time) => time >= 0);
  const first = problem.prices.fromFirstMark && marks.length > 0 ? Math.min(...marks) : 0;
  price += problem.prices.makespan * (Math.max(0, ...ready) - first);
  problem.chambers.forEach((chamber, c) => {
    const stays = staysIn(shop, layout, c);
    price += problem.prices.stateChange * countedChanges(chamber, movesOf(chamber, stays, problem.horizon), stays);
  });
  price += (problem.prices.move ?? 0) * movedInLayout(shop, layout);
  return price;
}

/** Throws when a schedule breaks a rule or does not cost what the search says. */
export function audit(shop: Shop, layout: Layout, cost: Cost): void {
  const faults = cost.missing > 0 ? [] : [...checkSchedule(shop.problem, scheduleOfLayout(shop, layout))];
  const price = slowPrice(shop, layout);
  if (Math.abs(price - cost.total) > 1e-6 * Math.max(1, price))
    faults.push(`it costs ${price}, the search counted ${cost.total}`);
  if (faults.length > 0) throw new Error(`a schedule of the search is wrong: ${faults.join('; ')}`);
}
