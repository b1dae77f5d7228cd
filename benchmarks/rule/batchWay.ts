// The way of one batch through the bakehouse: every step as soon as it may be, or not at all. Used by the baker's rule.
import type { Compiled } from '../../src/compile/shopProblem.ts';
import type { Burst, Link, Schedule, ShopTask } from '../../src/solver/problem.ts';
import type { Occupied } from './occupied.ts';

/** How often the trays of a batch are tried behind another way of its dough before the minute counts as unfit. */
const MOST_TRIES = 25;

type Placed = {
  readonly task: number;
  readonly start: number;
  readonly end: number;
  readonly pools: readonly number[];
  readonly chamber: number;
};

export class BatchWay {
  private readonly compiled: Compiled;
  private readonly occupied: Occupied;
  private tries = 0;
  private readonly placed = new Map<number, Placed>();
  private readonly linkTo = new Map<number, Link>();
  private readonly burstOfBatch: readonly Burst[];
  /** Per first task of a tray: all its tasks. */
  private readonly chainOf: ReadonlyMap<number, readonly number[]>;

  constructor(compiled: Compiled, occupied: Occupied) {
    const { problem } = compiled;
    if (problem.chambers.some((chamber) => chamber.together)) throw new Error("baker's rule: it loads decks tray by tray only");
    this.compiled = compiled;
    this.occupied = occupied;
    for (const link of problem.links) this.linkTo.set(link.to, link);
    this.chainOf = new Map(compiled.trays.map(({ tasks }) => [tasks[0] ?? -1, tasks]));
    this.burstOfBatch = compiled.batchUnits.map((unit) => {
      const burst = problem.bursts.find(({ after }) => problem.units[unit]?.tasks.includes(after));
      if (burst === undefined) throw new Error("baker's rule: a batch without trays");
      return burst;
    });
  }

  /** Begins a batch at a minute when its whole way is free; else leaves everything as it was. */
  begin(batch: number, minute: number): boolean {
    const tasks = this.compiled.problem.units[this.compiled.batchUnits[batch] ?? -1]?.tasks ?? [];
    this.tries = 0;
    return this.placeChain(tasks, 0, minute, minute, () => this.placeTrays(batch, tasks[tasks.length - 1] ?? -1));
  }

  /** Trays one after another, each as soon as it may; the first when the dough is done, the others within the burst. */
  private placeTrays(batch: number, last: number): boolean {
    const burst = this.burstOfBatch[batch];
    const done = this.placed.get(last)?.end;
    if (burst === undefined || done === undefined || ++this.tries > MOST_TRIES) return false;
    const finished: number[] = [];
    let first = done;
    for (const { task, lead } of burst.members) {
      const latest = first + (finished.length === 0 ? burst.wait : burst.within);
      const chain = this.chainOf.get(task) ?? [];
      if (!this.placeChain(chain, 0, first + lead, latest + lead, () => true)) {
        for (const step of finished) this.remove(step);
        return false;
      }
      if (finished.length === 0) first = (this.placed.get(task)?.start ?? 0) - lead;
      finished.push(...chain);
    }
    return true;
  }

  /** Places the tasks from `at` on, the first of them to start within the limits; `rest` has the last word. */
  private placeChain(tasks: readonly number[], at: number, earliest: number, latest: number, rest: () => boolean): boolean {
    const number = tasks[at];
    const task = this.compiled.problem.tasks[number ?? -1];
    if (number === undefined || task === undefined) return rest();
    for (let start = Math.max(earliest, task.earliestStart); start <= latest; start++) {
      const longest = Math.min(task.maxDuration, Math.min(task.latestEnd, this.compiled.problem.horizon) - start);
      for (let minutes = task.minDuration; minutes <= longest; minutes++) {
        const pools = this.poolsFor(task, start, start + minutes);
        // A place that is not free for this long is not free for longer either.
        if (pools === 'place-taken') break;
        if (pools === 'hands-taken') continue;
        if (this.tryStay(tasks, at, { task: number, start, end: start + minutes, pools, chamber: -1 }, rest)) return true;
      }
    }
    return false;
  }

  private tryStay(tasks: readonly number[], at: number, bare: Placed, rest: () => boolean): boolean {
    const stay = this.compiled.problem.tasks[bare.task]?.stay;
    if (stay === undefined) return this.tryRest(tasks, at, bare, rest);
    const held = { task: bare.task, start: bare.start, end: bare.end, low: stay.low, high: stay.high, room: stay.room };
    for (const chamber of stay.chambers) {
      if (!this.occupied.mayStay(chamber, held)) continue;
      this.occupied.addStay(chamber, held);
      if (this.tryRest(tasks, at, { ...bare, chamber }, rest)) return true;
      this.occupied.removeStay(chamber, bare.task);
    }
    return false;
  }

  private tryRest(tasks: readonly number[], at: number, now: Placed, rest: () => boolean): boolean {
    this.occupy(now, 1);
    this.placed.set(now.task, now);
    const link = this.linkTo.get(tasks[at + 1] ?? -1);
    const from = now.end + (link?.min ?? 0);
    const until = now.end + (link?.max ?? 0);
    if (this.placeChain(tasks, at + 1, from, until, rest)) return true;
    this.occupy(now, -1);
    this.placed.delete(now.task);
    return false;
  }

  private spans(
    task: ShopTask,
    start: number,
    end: number,
  ): { pools: readonly number[]; from: number; until: number; amount: number }[] {
    return task.demands.map(({ pools, amount, from, until }) => ({
      pools,
      amount,
      from: (from.edge === 'start' ? start : end) + from.offset,
      until: (until.edge === 'start' ? start : end) + until.offset,
    }));
  }

  private poolsFor(task: ShopTask, start: number, end: number): readonly number[] | 'place-taken' | 'hands-taken' {
    const spans = this.spans(task, start, end);
    const pools = spans.map(({ pools: among, from, until, amount }) => this.occupied.poolWithRoom(among, from, until, amount));
    const isWhole = (d: number): boolean => task.demands[d]?.from.edge === 'start';
    if (pools.some((pool, d) => pool < 0 && isWhole(d))) return 'place-taken';
    return pools.includes(-1) ? 'hands-taken' : pools;
  }

  private occupy(placed: Placed, sign: 1 | -1): void {
    const task = this.compiled.problem.tasks[placed.task];
    if (task === undefined) return;
    this.spans(task, placed.start, placed.end).forEach(({ from, until, amount }, d) => {
      this.occupied.take(placed.pools[d] ?? -1, from, until, sign * amount);
    });
  }

  private remove(task: number): void {
    const placed = this.placed.get(task);
    if (placed === undefined) return;
    this.occupy(placed, -1);
    if (placed.chamber >= 0) this.occupied.removeStay(placed.chamber, task);
    this.placed.delete(task);
  }

  /** What has been placed; moves of the decks are not its business. */
  schedule(): Omit<Schedule, 'moves'> {
    const { tasks } = this.compiled.problem;
    const read = (value: (placed: Placed) => number): number[] =>
      tasks.map((_, i) => {
        const placed = this.placed.get(i);
        return placed === undefined ? -1 : value(placed);
      });
    return {
      start: read((placed) => placed.start),
      end: read((placed) => placed.end),
      pools: tasks.map((task, i) => task.demands.map((_, d) => this.placed.get(i)?.pools[d] ?? -1)),
      chamber: read((placed) => placed.chamber),
    };
  }
}
