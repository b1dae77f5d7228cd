// Tasks of a shop problem in time: start, duration and end of each, whether it is planned, windows, links and bursts.
import type { Burst, Edge, ShopProblem } from '../../src/solver/problem.ts';
import { constant, type ModelDraft, plus } from './modelDraft.ts';
import type { Affine } from './proto.ts';

export type TaskTimes = {
  readonly start: Affine;
  readonly size: Affine;
  readonly end: Affine;
  /** Literals that hold exactly when the task is planned; none: it always is. */
  readonly present: readonly number[];
};

export type ShopTimes = {
  readonly tasks: readonly TaskTimes[];
  /** Per unit the same. */
  readonly unitPresent: readonly (readonly number[])[];
};

export const edgeOf = (times: TaskTimes, edge: Edge): Affine => (edge === 'start' ? times.start : times.end);

/** A literal a unit when units may be omitted. A child needs its parent, a parent without children is omitted. */
function unitLiterals(draft: ModelDraft, problem: ShopProblem, mayOmit: boolean): number[][] {
  const parents = new Set(problem.units.map((unit) => unit.parent));
  const literals = problem.units.map((unit, u) => {
    const isNeeded = !parents.has(u) && unit.omissionPrice === Number.POSITIVE_INFINITY;
    return mayOmit && !isNeeded ? [draft.literal()] : [];
  });
  if (!mayOmit) return literals;
  problem.units.forEach((unit, u) => {
    const parent = unit.parent === null ? undefined : literals[unit.parent];
    for (const literal of parent ?? []) draft.anyOf([literal], literals[u]);
    if (!parents.has(u)) return;
    const children = problem.units.flatMap((child, c) => (child.parent === u ? [literals[c] ?? []] : []));
    if (children.every((child) => child.length > 0)) draft.anyOf(children.flat(), literals[u]);
  });
  return literals;
}

function timesOf(
  draft: ModelDraft,
  problem: ShopProblem,
  task: ShopProblem['tasks'][number],
  present: readonly number[],
): TaskTimes {
  const latest = Math.min(task.latestEnd, problem.horizon);
  const earliest = Math.max(0, task.earliestStart);
  const start = draft.variable(earliest, Math.max(earliest, latest - task.minDuration));
  if (task.minDuration === task.maxDuration) {
    const end = plus(start, task.minDuration);
    draft.between([[end, 1]], 0, latest, present);
    return { start, size: constant(task.minDuration), end, present };
  }
  const size = draft.variable(task.minDuration, task.maxDuration);
  const end = draft.variable(0, latest);
  draft.interval(start, size, end, present);
  return { start, size, end, present };
}

/** Begin of the first member that is planned: as long after the burst's task as may be; the others follow within. */
function addBurst(draft: ModelDraft, burst: Burst, times: readonly TaskTimes[], horizon: number): void {
  const after = times[burst.after];
  if (after === undefined) return;
  const members = burst.members.flatMap(({ task, lead }) => {
    const member = times[task];
    return member === undefined ? [] : [{ begin: plus(member.start, -lead), present: member.present }];
  });
  const first = burst.wait === 0 ? after.end : draft.variable(0, horizon);
  if (burst.wait > 0) draft.lag(after.end, first, 0, burst.wait, after.present);
  for (const { begin, present } of members) draft.lag(first, begin, 0, burst.within, [...after.present, ...present]);
  const [only] = members;
  if (members.length === 1 && only !== undefined) {
    draft.lag(first, only.begin, 0, 0, [...after.present, ...only.present]);
    return;
  }
  const firsts = members.map(({ begin, present }) => {
    const isFirst = draft.literal();
    for (const literal of present) draft.anyOf([literal], [isFirst]);
    draft.lag(first, begin, 0, 0, [isFirst]);
    return isFirst;
  });
  draft.anyOf(firsts, after.present);
}

/** Every task in time. `mayOmit`: units may be left out at their price; else every task is planned. */
export function shopTimes(draft: ModelDraft, problem: ShopProblem, mayOmit: boolean): ShopTimes {
  const unitPresent = unitLiterals(draft, problem, mayOmit);
  const unitOf = new Map(problem.units.flatMap((unit, u) => unit.tasks.map((task) => [task, u] as const)));
  const tasks = problem.tasks.map((task, i) => timesOf(draft, problem, task, unitPresent[unitOf.get(i) ?? -1] ?? []));
  for (const link of problem.links) {
    const from = tasks[link.from];
    const to = tasks[link.to];
    if (from === undefined || to === undefined) continue;
    const least = Math.max(link.min, -2 * problem.horizon);
    const most = Math.min(link.max, 2 * problem.horizon);
    const when = [...new Set([...from.present, ...to.present])];
    draft.lag(edgeOf(from, link.fromEdge), edgeOf(to, link.toEdge), least, most, when);
  }
  for (const burst of problem.bursts) addBurst(draft, burst, tasks, problem.horizon);
  return { tasks, unitPresent };
}
