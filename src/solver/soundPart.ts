// What of a schedule made for another version of a problem still stands in this one, unit by unit. Used to start a solve.
import { scheduleOfLayout } from './audit.ts';
import { ChamberLine } from './chamberLine.ts';
import { checkSchedule } from './checkSchedule.ts';
import { emptyLayout, type Layout, spanOf } from './layout.ts';
import { PoolLine } from './poolLine.ts';
import type { Link } from './problem.ts';
import type { Shop, UseOfPool } from './shop.ts';

/** Takes units of a layout one after the other; one that does not fit beside those before it is left out. */
class Taking {
  readonly layout: Layout;
  private readonly shop: Shop;
  private readonly wanted: Layout;
  private readonly pools: readonly PoolLine[];
  private readonly chambers: readonly ChamberLine[];
  private readonly usesOfTask: readonly number[][];
  private readonly stayOfTask: readonly number[];
  private readonly linksOfTask: readonly Link[][];
  private readonly openerOf = new Map<string, number>();
  private undo: (() => void)[] = [];

  constructor(shop: Shop, wanted: Layout) {
    const { problem } = shop;
    this.shop = shop;
    this.wanted = wanted;
    this.layout = emptyLayout(shop);
    this.pools = problem.pools.map((pool) => new PoolLine(pool, problem.horizon));
    this.chambers = problem.chambers.map((chamber) => new ChamberLine(chamber, problem.horizon));
    const usesOfTask: number[][] = problem.tasks.map(() => []);
    shop.uses.forEach((use, u) => {
      usesOfTask[use.task]?.push(u);
    });
    this.usesOfTask = usesOfTask;
    const stayOfTask = problem.tasks.map(() => -1);
    shop.stays.forEach((stay, s) => {
      stayOfTask[stay.task] = s;
    });
    this.stayOfTask = stayOfTask;
    const linksOfTask: Link[][] = problem.tasks.map(() => []);
    for (const link of problem.links) for (const task of [link.from, link.to]) linksOfTask[task]?.push(link);
    this.linksOfTask = linksOfTask;
  }

  isTaken(task: number): boolean {
    return (this.layout.start[task] as number) >= 0;
  }

  /** Takes tasks together, or none of them. */
  take(tasks: readonly number[]): boolean {
    this.undo = [];
    if (tasks.every((task) => this.takeTask(task))) return true;
    for (const back of this.undo.reverse()) back();
    return false;
  }

  private takeTask(i: number): boolean {
    const task = this.shop.problem.tasks[i];
    const start = this.wanted.start[i] as number;
    const end = this.wanted.end[i] as number;
    if (task === undefined || start < task.earliestStart || start > (task.latestStart ?? start) || end > task.latestEnd)
      return false;
    if (end - start < task.minDuration || end - start > task.maxDuration) return false;
    this.layout.start[i] = start;
    this.layout.end[i] = end;
    this.undo.push(() => {
      this.layout.start[i] = -1;
      this.layout.end[i] = -1;
    });
    if (!this.linksOfTask[i]?.every((link) => this.isMet(link))) return false;
    const opener = this.enter(i, start, end);
    if (opener === null) return false;
    return (this.usesOfTask[i] as readonly number[]).every((u) => {
      const use = this.shop.uses[u] as UseOfPool;
      return use.oncePerLoad && opener !== i ? this.shareOf(u, i, opener) : this.serve(u, use, end - start);
    });
  }

  /** A use of a load that is served once: by whoever serves it for the task that opened the load. */
  private shareOf(u: number, task: number, opener: number): boolean {
    const once = (of: number): number[] =>
      (this.usesOfTask[of] as number[]).filter((v) => this.shop.uses[v]?.oncePerLoad === true);
    const theirs = once(opener)[once(task).indexOf(u)];
    this.layout.pool[u] = theirs === undefined ? -1 : (this.layout.pool[theirs] as number);
    this.undo.push(() => {
      this.layout.pool[u] = -1;
    });
    return true;
  }

  private isMet(link: Link): boolean {
    if (!this.isTaken(link.from) || !this.isTaken(link.to)) return true;
    const at = (task: number, edge: 'start' | 'end'): number => this.layout[edge][task] as number;
    const lag = at(link.to, link.toEdge) - at(link.from, link.fromEdge);
    return lag >= link.min && lag <= link.max;
  }

  /** The task that opened the load a task is in, itself when it is the first or in none; null when its chamber does not take it. */
  private enter(task: number, start: number, end: number): number | null {
    const s = this.stayOfTask[task] as number;
    const stay = this.shop.problem.tasks[task]?.stay;
    if (stay === undefined) return task;
    const c = this.wanted.chamber[s] as number;
    const line = this.chambers[c];
    const chamber = this.shop.problem.chambers[c];
    if (line === undefined || chamber === undefined || !stay.chambers.includes(c)) return null;
    const load = chamber.together ? line.stays.filter((held) => held.start === start && held.end === end) : [];
    const held = { task: s, start, end, low: stay.low, high: stay.high, room: stay.room };
    if (load.length === 0) {
      if (line.nextFit(start, end - start, stay.low, stay.high, stay.room) !== start) return null;
    } else if (line.nextJoin(start, end - start, end - start, stay.low, stay.high, stay.room).at !== start) return null;
    line.add(held);
    if (load.length === 0) this.openerOf.set(`${c} ${start}`, task);
    this.layout.chamber[s] = c;
    this.undo.push(() => {
      line.remove(s);
      this.layout.chamber[s] = -1;
    });
    return load.length === 0 ? task : (this.openerOf.get(`${c} ${start}`) ?? task);
  }

  private serve(u: number, use: UseOfPool, lasts: number): boolean {
    const [from, until] = spanOf(this.shop, this.layout, use);
    if (until <= from) return true;
    const durations = this.shop.problem.tasks[use.task]?.demands[use.indexInTask]?.durations;
    const named = this.wanted.pool[u] as number;
    const inOrder = [...use.pools].sort((a, b) => Number(b === named) - Number(a === named));
    const pool = inOrder.find((p) => {
      const duration = durations?.[use.pools.indexOf(p)];
      const line = this.pools[p] as PoolLine;
      return (duration === undefined || duration === lasts) && from >= 0 && line.reach(from, use.amount) >= until;
    });
    if (pool === undefined) return false;
    const line = this.pools[pool] as PoolLine;
    line.take(from, until, use.amount);
    this.layout.pool[u] = pool;
    this.undo.push(() => {
      line.give(from, until, use.amount);
      this.layout.pool[u] = -1;
    });
    return true;
  }

  /** Leaves tasks out again that were taken. Their places stay taken: nothing is taken after it. */
  drop(tasks: readonly number[]): void {
    for (const task of tasks) {
      this.layout.start[task] = -1;
      this.layout.end[task] = -1;
    }
  }
}

/** Units that are ready some time, each with those above it, in the order in which they begin. */
function chainsOf(shop: Shop, wanted: Layout): readonly (readonly number[])[] {
  const { units, tasks } = shop.problem;
  const parents = new Set(units.map((unit) => unit.parent));
  const chains = units.flatMap((unit, u) => {
    if (parents.has(u)) return [];
    const above = unit.parent === null ? [] : (units[unit.parent]?.tasks ?? []);
    return [[...above, ...unit.tasks]];
  });
  const alone = tasks.flatMap((_, i) => ((shop.unitOfTask[i] as number) < 0 ? [[i]] : []));
  const begins = (chain: readonly number[]): number => Math.min(...chain.map((task) => wanted.start[task] as number));
  const whole = [...chains, ...alone].filter((chain) => chain.every((task) => (wanted.start[task] as number) >= 0));
  return whole.sort((a, b) => begins(a) - begins(b) || (a.at(-1) as number) - (b.at(-1) as number));
}

export type SoundPart = {
  readonly layout: Layout;
  /** Whether all of it stands. */
  readonly isWhole: boolean;
};

/**
 * The part of a schedule that breaks no rule of this problem: units are taken in the order of their times while they fit, then
 * blocks of units that lost what ties them together are left out. `wanted` may lack units and name places that are not there.
 */
export function soundPart(shop: Shop, wanted: Layout): SoundPart {
  const taking = new Taking(shop, wanted);
  const chains = chainsOf(shop, wanted);
  let isWhole = true;
  for (const chain of chains) {
    if (!taking.take(chain.filter((task) => !taking.isTaken(task)))) isWhole = false;
  }
  const { layout } = taking;
  for (const burst of shop.problem.bursts) {
    const begins = burst.members.flatMap(({ task, lead }) => {
      const start = layout.start[task] as number;
      return start < 0 ? [] : [start - lead];
    });
    if (begins.length === 0) continue;
    const first = Math.min(...begins);
    const wait = first - (layout.end[burst.after] as number);
    if (wait >= 0 && wait <= burst.wait && Math.max(...begins) - first <= burst.within) continue;
    isWhole = false;
    const members = new Set(burst.members.map(({ task }) => task));
    taking.drop(chains.filter((chain) => chain.some((task) => members.has(task))).flat());
  }
  if (checkSchedule(shop.problem, scheduleOfLayout(shop, layout)).length > 0)
    return { layout: emptyLayout(shop), isWhole: false };
  return { layout, isWhole };
}
