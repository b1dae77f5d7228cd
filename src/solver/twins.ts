// Units that are alike in everything: which of them goes first does not matter, so one order is asked for and the others are
// never looked at. Of alike children each time point up to the first choice of a place is in order, because a difference
// between two of them stays within its limits when both are sorted; of alike parents the first starts are.
import type { Layout } from './layout.ts';
import type { Burst, FirstMark, Home, ShopProblem, ShopTask } from './problem.ts';
import type { Shop } from './shop.ts';

export type Twins = {
  /** Alike units of one parent, each group in order. */
  readonly children: readonly (readonly number[])[];
  /** Alike parents with, in matching order, their children. */
  readonly parents: readonly (readonly { readonly unit: number; readonly children: readonly number[] }[])[];
};

/** How many tasks of a unit are ordered: those before the first that has a choice of place, and that one's start. */
export function orderedTasks(problem: ShopProblem, unit: number): number {
  const tasks = problem.units[unit]?.tasks ?? [];
  const at = tasks.findIndex((task) => hasChoice(problem.tasks[task] as ShopTask));
  return at < 0 ? tasks.length : at;
}

function hasChoice(task: ShopTask): boolean {
  return task.demands.some((demand) => demand.pools.length > 1) || (task.stay?.chambers.length ?? 0) > 1;
}

function taskLooks(task: ShopTask): unknown {
  const { minDuration, maxDuration, earliestStart, latestEnd, latestStart, demands, stay } = task;
  return [minDuration, maxDuration, earliestStart, latestEnd, latestStart ?? null, demands, stay ?? null];
}

class Looks {
  private readonly problem: ShopProblem;
  private readonly unitOf: Int32Array;
  private readonly linksOf: number[][];
  private readonly burstsOf: { readonly burst: Burst; readonly task: number; readonly lead: number }[][];
  private readonly marksOf: FirstMark[][];
  private readonly homeOf: ReadonlyMap<number, Omit<Home, 'task'>>;

  constructor(problem: ShopProblem, unitOf: Int32Array) {
    this.problem = problem;
    this.unitOf = unitOf;
    this.homeOf = new Map((problem.homes ?? []).map(({ task, ...home }) => [task, home]));
    this.linksOf = problem.units.map(() => []);
    problem.links.forEach((link, l) => {
      for (const unit of new Set([unitOf[link.from] as number, unitOf[link.to] as number])) this.linksOf[unit]?.push(l);
    });
    this.burstsOf = problem.units.map(() => []);
    for (const burst of problem.bursts)
      for (const { task, lead } of burst.members) this.burstsOf[unitOf[task] as number]?.push({ burst, task, lead });
    this.marksOf = problem.units.map(() => []);
    for (const mark of problem.firstMarks) this.marksOf[unitOf[mark.task] as number]?.push(mark);
  }

  /** A task as its unit sees it: its place in it, its place in the parent, or itself when it belongs to neither. */
  private name(task: number, unit: number): string {
    const own = this.problem.units[unit];
    const inOwn = own?.tasks.indexOf(task) ?? -1;
    if (inOwn >= 0) return `own ${inOwn}`;
    const parent = own?.parent == null ? undefined : this.problem.units[own.parent];
    const inParent = parent?.tasks.indexOf(task) ?? -1;
    return inParent >= 0 ? `parent ${inParent}` : `task ${task}`;
  }

  /** What a unit looks like, but for its numbers; null when its links are no chain and sorting would not be safe. */
  of(unit: number): string | null {
    const { problem } = this;
    const { tasks, ready, family, omissionPrice, parent } = problem.units[unit] as ShopProblem['units'][number];
    const links = (this.linksOf[unit] as number[]).map((l) => problem.links[l] as ShopProblem['links'][number]);
    for (const { from, to } of links) {
      const isOwn = this.unitOf[from] === unit && this.unitOf[to] === unit;
      if (isOwn && Math.abs(tasks.indexOf(from) - tasks.indexOf(to)) !== 1) return null;
    }
    const bursts = (this.burstsOf[unit] ?? []).map(({ burst, task, lead }) => [
      this.name(burst.after, unit),
      this.name(task, unit),
      lead,
      burst.within,
      burst.wait,
    ]);
    return JSON.stringify([
      tasks.map((task) => taskLooks(problem.tasks[task] as ShopTask)),
      tasks.map((task) => this.homeOf.get(task) ?? null),
      links
        .map(({ from, to, ...link }) => [this.name(from, unit), this.name(to, unit), link])
        .map((x) => JSON.stringify(x))
        .sort(),
      bursts,
      ready === null ? null : [this.name(ready.task, unit), ready.edge, ready.offset],
      family,
      omissionPrice,
      parent === null,
      (this.marksOf[unit] ?? []).map(({ task, ...mark }) => [this.name(task, unit), mark]),
    ]);
  }
}

/** What the units of a shop look like, worked out once; null for one without tasks as well. */
function looksOf(shop: Shop): readonly (string | null)[] {
  const known = LOOKS.get(shop);
  if (known !== undefined) return known;
  const looks = new Looks(shop.problem, shop.unitOfTask);
  const all = shop.problem.units.map((unit, u) => (unit.tasks.length > 0 ? looks.of(u) : null));
  LOOKS.set(shop, all);
  return all;
}
const LOOKS = new WeakMap<Shop, readonly (string | null)[]>();

/** Finds the twins among the planned units of a shop without loads that come and go together. */
export function twinsOf(shop: Shop, isPlanned: (unit: number) => boolean): Twins {
  const { problem } = shop;
  const looks = looksOf(shop);
  const childrenOf = new Map<number, number[]>();
  const lookOf = problem.units.map((_, u) => (isPlanned(u) ? (looks[u] ?? null) : null));
  problem.units.forEach((unit, u) => {
    if (unit.parent !== null && isPlanned(u)) childrenOf.set(unit.parent, [...(childrenOf.get(unit.parent) ?? []), u]);
  });
  const children = [...childrenOf.values()].flatMap((list) => grouped(list, (u) => lookOf[u] ?? null));
  const inLookOrder = (parent: number): number[] =>
    [...(childrenOf.get(parent) ?? [])].sort((a, b) => compareText(lookOf[a] ?? '', lookOf[b] ?? '') || a - b);
  const parentLook = (parent: number): string | null => {
    const list = inLookOrder(parent);
    if (lookOf[parent] === null || list.some((u) => lookOf[u] === null)) return null;
    return `${lookOf[parent]} ${list.map((u) => lookOf[u]).join(' ')}`;
  };
  const parents = grouped([...childrenOf.keys()], parentLook).map((group) =>
    group.map((unit) => ({ unit, children: inLookOrder(unit) })),
  );
  return { children, parents };
}

function compareText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

function grouped(list: readonly number[], look: (unit: number) => string | null): number[][] {
  const groups = new Map<string, number[]>();
  for (const unit of [...list].sort((a, b) => a - b)) {
    const key = look(unit);
    if (key !== null) groups.set(key, [...(groups.get(key) ?? []), unit]);
  }
  return [...groups.values()].filter((group) => group.length > 1);
}

/** Puts twins in order in a layout, those it leaves out last: the same schedule by another name. */
export function inTwinOrder(shop: Shop, twins: Twins, layout: Layout): Layout {
  const sorted = {
    start: layout.start.slice(),
    end: layout.end.slice(),
    pool: layout.pool.slice(),
    chamber: layout.chamber.slice(),
  };
  const mover = new Mover(shop, sorted);
  for (const group of twins.parents) mover.sortParents(group);
  for (const group of twins.children) mover.sortChildren(group);
  return sorted;
}

type TaskTimes = {
  readonly start: number;
  readonly end: number;
  readonly pools: readonly number[];
  readonly chambers: readonly number[];
};

/** Start of a task; what is left out comes last. */
function rankOf(times: TaskTimes | undefined): number {
  const start = times?.start ?? 0;
  return start < 0 ? Number.MAX_SAFE_INTEGER : start;
}

class Mover {
  private readonly shop: Shop;
  private readonly layout: Layout;
  private readonly usesOf: number[][];
  private readonly staysOf: number[][];

  constructor(shop: Shop, layout: Layout) {
    this.shop = shop;
    this.layout = layout;
    this.usesOf = shop.problem.tasks.map(() => []);
    this.staysOf = shop.problem.tasks.map(() => []);
    shop.uses.forEach((use, u) => {
      this.usesOf[use.task]?.push(u);
    });
    shop.stays.forEach((stay, s) => {
      this.staysOf[stay.task]?.push(s);
    });
  }

  private take(task: number): TaskTimes {
    const { layout } = this;
    return {
      start: layout.start[task] as number,
      end: layout.end[task] as number,
      pools: (this.usesOf[task] as number[]).map((u) => layout.pool[u] as number),
      chambers: (this.staysOf[task] as number[]).map((s) => layout.chamber[s] as number),
    };
  }

  private put(task: number, times: TaskTimes): void {
    const { layout } = this;
    layout.start[task] = times.start;
    layout.end[task] = times.end;
    (this.usesOf[task] as number[]).forEach((u, i) => {
      layout.pool[u] = times.pools[i] as number;
    });
    (this.staysOf[task] as number[]).forEach((s, i) => {
      layout.chamber[s] = times.chambers[i] as number;
    });
  }

  sortParents(group: Twins['parents'][number]): void {
    const { units } = this.shop.problem;
    const whole = group.map(({ unit, children }) => {
      const tasks = [unit, ...children].flatMap((u) => units[u]?.tasks ?? []);
      return { tasks, times: tasks.map((task) => this.take(task)) };
    });
    const byStart = whole.map((one) => one.times).sort((a, b) => rankOf(a[0]) - rankOf(b[0]));
    whole.forEach(({ tasks }, i) => {
      tasks.forEach((task, k) => {
        this.put(task, byStart[i]?.[k] as TaskTimes);
      });
    });
  }

  /** Moves what is left out to the end of a group. Returns those that are planned. */
  private parted(group: readonly number[]): readonly number[] {
    const { units } = this.shop.problem;
    const whole = group.map((unit) => (units[unit]?.tasks ?? []).map((task) => this.take(task)));
    const isIn = (times: readonly TaskTimes[]): boolean => (times[0]?.start ?? 0) >= 0;
    const inside = whole.filter(isIn);
    if (inside.length === group.length) return group;
    [...inside, ...whole.filter((times) => !isIn(times))].forEach((times, i) => {
      (units[group[i] as number]?.tasks ?? []).forEach((task, k) => {
        this.put(task, times[k] as TaskTimes);
      });
    });
    return group.slice(0, inside.length);
  }

  /** Sorts starts and ends of each task apart, as long as no place is chosen; from there on the rest goes with its start. */
  sortChildren(alike: readonly number[]): void {
    const group = this.parted(alike);
    if (group.length < 2) return;
    const { problem } = this.shop;
    const ordered = orderedTasks(problem, group[0] as number);
    const tasksOf = group.map((unit) => problem.units[unit]?.tasks ?? []);
    const count = tasksOf[0]?.length ?? 0;
    for (let k = 0; k < ordered; k++) {
      const times = tasksOf.map((tasks) => this.take(tasks[k] as number));
      const starts = times.map((one) => one.start).sort((a, b) => a - b);
      const ends = times.map((one) => one.end).sort((a, b) => a - b);
      tasksOf.forEach((tasks, i) => {
        this.put(tasks[k] as number, { ...(times[i] as TaskTimes), start: starts[i] as number, end: ends[i] as number });
      });
    }
    if (ordered >= count) return;
    const rests = tasksOf.map((tasks) => tasks.slice(ordered).map((task) => this.take(task)));
    rests.sort((a, b) => (a[0]?.start ?? 0) - (b[0]?.start ?? 0));
    tasksOf.forEach((tasks, i) => {
      tasks.slice(ordered).forEach((task, k) => {
        this.put(task, rests[i]?.[k] as TaskTimes);
      });
    });
  }
}
