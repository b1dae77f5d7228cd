// A problem laid out for the builder: typed arrays of demands and stays by time variable, and blocks of variables that
// maximum lags tie together. Built once a solve; read-only afterwards.
import { type Network, NO_PATH, networkOf } from './network.ts';
import type { ShopProblem } from './problem.ts';

/** One use of a pool, between two time variables. */
export type UseOfPool = {
  readonly task: number;
  readonly indexInTask: number;
  readonly pools: readonly number[];
  readonly amount: number;
  readonly fromVar: number;
  readonly fromOff: number;
  readonly untilVar: number;
  readonly untilOff: number;
  /** Shortest length it can have. */
  readonly minLength: number;
  readonly oncePerLoad: boolean;
  /** Per pool: how long the task lasts when that pool serves; null: that does not depend on it. */
  readonly durations: readonly number[] | null;
};

export type StayUse = {
  readonly task: number;
  readonly chambers: readonly number[];
  readonly low: number;
  readonly high: number;
  readonly room: number;
  readonly startVar: number;
  readonly startOff: number;
  readonly endVar: number;
  readonly endOff: number;
  readonly minLength: number;
  readonly maxLength: number;
  /** Work just before and after it: the same for all stays of a load. */
  readonly before: number;
  readonly after: number;
};

/** Variables that maximum lags tie together: placed, removed and moved as one. */
export type Block = {
  readonly id: number;
  /** Variables of no child unit, in placing order. */
  readonly trunk: readonly number[];
  /** Child units, each with its variables in placing order. */
  readonly children: readonly { readonly unit: number; readonly variables: readonly number[] }[];
  /** Blocks that must be placed before and may be placed only after this one (minimum lags only). */
  readonly before: readonly number[];
  readonly after: readonly number[];
  readonly earliest: number;
  /** Longest path from its first variable to the last. */
  readonly length: number;
};

/** The burst a variable starts a member of, with the offset of that member's start. */
export type BurstEntry = { readonly burst: number; readonly offset: number };

export type Shop = {
  readonly problem: ShopProblem;
  readonly network: Network;
  readonly uses: readonly UseOfPool[];
  readonly usesOfVar: readonly (readonly number[])[];
  readonly stays: readonly StayUse[];
  readonly staysOfVar: readonly (readonly number[])[];
  readonly blocks: readonly Block[];
  readonly blockOfVar: Int32Array;
  readonly unitOfTask: Int32Array;
  readonly blockOfUnit: Int32Array;
  /** Per variable: the burst it opens or joins, or null. */
  readonly burstOfVar: readonly (BurstEntry | null)[];
  /** Per burst: variable and offset of the end it comes after. */
  readonly burstAfter: readonly { readonly variable: number; readonly offset: number; readonly isOwn: boolean }[];
};

function usesOf(problem: ShopProblem, network: Network): UseOfPool[] {
  const uses: UseOfPool[] = [];
  problem.tasks.forEach((task, i) => {
    task.demands.forEach((demand, indexInTask) => {
      const varOf = (edge: 'start' | 'end') => (edge === 'start' ? network.startVar : network.endVar)[i] as number;
      const offOf = (edge: 'start' | 'end') => (edge === 'start' ? network.startOff : network.endOff)[i] as number;
      const use = {
        task: i,
        indexInTask,
        pools: demand.pools,
        amount: demand.amount,
        fromVar: varOf(demand.from.edge),
        fromOff: offOf(demand.from.edge) + demand.from.offset,
        untilVar: varOf(demand.until.edge),
        untilOff: offOf(demand.until.edge) + demand.until.offset,
        oncePerLoad: demand.oncePerLoad,
        durations: demand.durations ?? null,
      };
      const minLength = shortest(network, use.fromVar, use.untilVar) + use.untilOff - use.fromOff;
      const isFixed = use.fromVar === use.untilVar;
      if (!(isFixed && minLength <= 0)) uses.push({ ...use, minLength: Math.max(0, minLength) });
    });
  });
  return uses;
}

/** Least time from one variable to another. */
export function shortest(network: Network, from: number, to: number): number {
  if (from === to) return 0;
  const c = network.component[from] as number;
  if (c !== network.component[to]) return NO_PATH;
  const n = (network.members[c] as Int32Array).length;
  const matrix = network.lag[c] as Int32Array;
  return matrix[(network.indexInComponent[from] as number) * n + (network.indexInComponent[to] as number)] as number;
}

function staysOf(problem: ShopProblem, network: Network): StayUse[] {
  const stays: StayUse[] = [];
  problem.tasks.forEach((task, i) => {
    if (task.stay === undefined) return;
    stays.push({
      task: i,
      ...task.stay,
      startVar: network.startVar[i] as number,
      startOff: network.startOff[i] as number,
      endVar: network.endVar[i] as number,
      endOff: network.endOff[i] as number,
      minLength: task.minDuration,
      maxLength: task.maxDuration,
    });
  });
  return stays;
}

/** Groups of variables with paths both ways between them, by component. */
function tiedGroups(network: Network): number[][] {
  const groups: number[][] = [];
  network.members.forEach((members, c) => {
    const n = members.length;
    const matrix = network.lag[c] as Int32Array;
    const taken = new Uint8Array(n);
    for (let i = 0; i < n; i++) {
      if (taken[i]) continue;
      const group: number[] = [];
      for (let j = i; j < n; j++) {
        if (taken[j] || matrix[i * n + j] === NO_PATH || matrix[j * n + i] === NO_PATH) continue;
        taken[j] = 1;
        group.push(members[j] as number);
      }
      groups.push(group);
    }
  });
  return groups;
}

function unitOfVar(problem: ShopProblem, network: Network, unitOfTask: Int32Array): Int32Array {
  const unitOf = new Int32Array(network.variableCount).fill(-1);
  problem.tasks.forEach((_, i) => {
    const unit = unitOfTask[i] as number;
    const isChild = unit >= 0 && problem.units[unit]?.parent !== null;
    if (!isChild) return;
    unitOf[network.startVar[i] as number] = unit;
    unitOf[network.endVar[i] as number] = unit;
  });
  // A variable shared with a task of the trunk belongs to the trunk.
  problem.tasks.forEach((_, i) => {
    const unit = unitOfTask[i] as number;
    if (unit >= 0 && problem.units[unit]?.parent !== null) return;
    unitOf[network.startVar[i] as number] = -1;
    unitOf[network.endVar[i] as number] = -1;
  });
  return unitOf;
}

function blocksOf(network: Network, unitOf: Int32Array): { blocks: Block[]; blockOfVar: Int32Array } {
  const groups = tiedGroups(network);
  const blockOfVar = new Int32Array(network.variableCount);
  groups.forEach((group, id) => {
    for (const v of group) blockOfVar[v] = id;
  });
  const byEarliest = (a: number, b: number): number => (network.earliest[a] as number) - (network.earliest[b] as number) || a - b;
  const blocks = groups.map((group, id) => {
    const children = new Map<number, number[]>();
    const trunk: number[] = [];
    for (const v of [...group].sort(byEarliest)) {
      const unit = unitOf[v] as number;
      if (unit < 0) trunk.push(v);
      else children.set(unit, [...(children.get(unit) ?? []), v]);
    }
    const related = relatedBlocks(network, group, blockOfVar);
    const first = Math.min(...group.map((v) => network.earliest[v] as number));
    const last = Math.max(...group.map((v) => network.earliest[v] as number));
    const childList = [...children].map(([unit, variables]) => ({ unit, variables }));
    return { id, trunk, children: childList, ...related, earliest: first, length: last - first };
  });
  return { blocks, blockOfVar };
}

function relatedBlocks(
  network: Network,
  group: readonly number[],
  blockOfVar: Int32Array,
): { before: number[]; after: number[] } {
  const v = group[0] as number;
  const c = network.component[v] as number;
  const before = new Set<number>();
  const after = new Set<number>();
  for (const other of network.members[c] as Int32Array) {
    const block = blockOfVar[other] as number;
    if (block === blockOfVar[v]) continue;
    if (shortest(network, other, v) !== NO_PATH) before.add(block);
    else if (shortest(network, v, other) !== NO_PATH) after.add(block);
  }
  return { before: [...before], after: [...after] };
}

/** Lays a problem out. RangeError when its lags contradict each other. */
export function shopOf(problem: ShopProblem): Shop {
  const network = networkOf(problem);
  if (network.isContradictory) throw new RangeError('the lags of the problem contradict each other');
  const uses = usesOf(problem, network);
  const stays = staysOf(problem, network);
  const byVar = (pick: (at: number) => readonly number[], count: number): number[][] => {
    const lists: number[][] = Array.from({ length: network.variableCount }, () => []);
    for (let i = 0; i < count; i++) for (const v of new Set(pick(i))) lists[v]?.push(i);
    return lists;
  };
  const unitOfTask = new Int32Array(problem.tasks.length).fill(-1);
  problem.units.forEach((unit, u) => {
    for (const task of unit.tasks) unitOfTask[task] = u;
  });
  const { blocks, blockOfVar } = blocksOf(network, unitOfVar(problem, network, unitOfTask));
  const burstOfVar: (BurstEntry | null)[] = new Array(network.variableCount).fill(null);
  problem.bursts.forEach((burst, b) => {
    for (const { task, lead } of burst.members) {
      burstOfVar[network.startVar[task] as number] = { burst: b, offset: (network.startOff[task] as number) - lead };
    }
  });
  return {
    problem,
    network,
    uses,
    usesOfVar: byVar((i) => [uses[i]?.fromVar ?? 0, uses[i]?.untilVar ?? 0], uses.length),
    stays,
    staysOfVar: byVar((i) => [stays[i]?.startVar ?? 0, stays[i]?.endVar ?? 0], stays.length),
    blocks,
    blockOfVar,
    unitOfTask,
    blockOfUnit: Int32Array.from(
      problem.units,
      (unit) => blockOfVar[network.startVar[unit.tasks[0] as number] as number] as number,
    ),
    burstOfVar,
    burstAfter: problem.bursts.map((burst) => {
      const variable = network.endVar[burst.after] as number;
      const isOwn =
        variable !== network.startVar[burst.after] &&
        !problem.tasks.some((_, i) => i !== burst.after && (network.startVar[i] === variable || network.endVar[i] === variable));
      return { variable, offset: network.endOff[burst.after] as number, isOwn };
    }),
  };
}
