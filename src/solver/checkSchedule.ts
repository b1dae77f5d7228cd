// Checks a schedule against a problem, slowly and obviously, sharing nothing with the builder. Used by the tests on
// problems that are not bakeries, and by debug runs.
import type { Chamber, Demand, Edge, Schedule, ShopProblem, ShopTask } from './problem.ts';

function edgeTime(schedule: Schedule, task: number, edge: Edge): number {
  return (edge === 'start' ? schedule.start : schedule.end)[task] as number;
}

function isPlanned(schedule: Schedule, task: number): boolean {
  return (schedule.start[task] as number) >= 0;
}

function taskFaults(problem: ShopProblem, schedule: Schedule): string[] {
  const faults: string[] = [];
  problem.tasks.forEach((task, i) => {
    if (!isPlanned(schedule, i)) return;
    const start = schedule.start[i] as number;
    const end = schedule.end[i] as number;
    if (end - start < task.minDuration || end - start > task.maxDuration) faults.push(`${task.id}: lasts ${end - start}`);
    if (start < task.earliestStart || start > (task.latestStart ?? start) || end > Math.min(task.latestEnd, problem.horizon))
      faults.push(`${task.id}: outside its window`);
  });
  for (const link of problem.links) {
    if (!isPlanned(schedule, link.from) || !isPlanned(schedule, link.to)) continue;
    const lag = edgeTime(schedule, link.to, link.toEdge) - edgeTime(schedule, link.from, link.fromEdge);
    if (lag < link.min || lag > link.max)
      faults.push(`${problem.tasks[link.from]?.id} to ${problem.tasks[link.to]?.id}: lag ${lag}`);
  }
  for (const burst of problem.bursts) {
    const starts = burst.members
      .filter(({ task }) => isPlanned(schedule, task))
      .map(({ task, lead }) => (schedule.start[task] as number) - lead);
    if (starts.length === 0) continue;
    const first = Math.min(...starts);
    const wait = first - (schedule.end[burst.after] as number);
    if (wait < 0 || wait > burst.wait) faults.push(`${problem.tasks[burst.after]?.id}: its burst waits ${wait}`);
    if (Math.max(...starts) - first > burst.within) faults.push(`${problem.tasks[burst.after]?.id}: its burst is spread too far`);
  }
  return faults;
}

function unitFaults(problem: ShopProblem, schedule: Schedule): string[] {
  const faults: string[] = [];
  const unitOf = new Map<number, number>();
  problem.units.forEach((unit, u) => {
    for (const task of unit.tasks) unitOf.set(task, u);
    const planned = unit.tasks.filter((task) => isPlanned(schedule, task)).length;
    if (planned !== 0 && planned !== unit.tasks.length) faults.push(`${unit.id}: planned in part`);
    if (planned === 0 && unit.ready !== null && unit.omissionPrice === Number.POSITIVE_INFINITY)
      faults.push(`${unit.id}: omitted`);
    const parent = unit.parent === null ? undefined : problem.units[unit.parent];
    if (planned > 0 && parent?.tasks.some((task) => !isPlanned(schedule, task))) faults.push(`${unit.id}: without its parent`);
  });
  problem.tasks.forEach((task, i) => {
    if (!unitOf.has(i) && !isPlanned(schedule, i)) faults.push(`${task.id}: not planned`);
  });
  return faults;
}

function spanOf(schedule: Schedule, task: number, demand: Demand): readonly [number, number] {
  return [
    edgeTime(schedule, task, demand.from.edge) + demand.from.offset,
    edgeTime(schedule, task, demand.until.edge) + demand.until.offset,
  ];
}

function poolFaults(problem: ShopProblem, schedule: Schedule): string[] {
  const faults: string[] = [];
  const used = problem.pools.map(() => new Int32Array(problem.horizon));
  const isOpen = problem.pools.map((pool) => {
    const open = new Int32Array(problem.horizon);
    for (const [from, until] of pool.open) open.fill(pool.capacity, Math.max(0, from), until);
    return open;
  });
  problem.tasks.forEach((task, i) => {
    if (!isPlanned(schedule, i)) return;
    task.demands.forEach((demand, d) => {
      const [from, until] = spanOf(schedule, i, demand);
      const pool = schedule.pools[i]?.[d] ?? -1;
      if (until <= from) return;
      if (pool < 0) {
        if (!isServedByLoad(problem, schedule, i, demand)) faults.push(`${task.id}: demand ${d} is not served`);
        return;
      }
      if (!demand.pools.includes(pool)) faults.push(`${task.id}: demand ${d} in the wrong pool`);
      const lasts = (schedule.end[i] as number) - (schedule.start[i] as number);
      const duration = demand.durations?.[demand.pools.indexOf(pool)];
      if (duration !== undefined && duration !== lasts) faults.push(`${task.id}: lasts ${lasts} in ${problem.pools[pool]?.id}`);
      if (from < 0 || until > problem.horizon) faults.push(`${task.id}: demand ${d} outside the day`);
      const line = used[pool] as Int32Array;
      for (let t = from; t < until; t++) line[t] = (line[t] ?? 0) + demand.amount;
    });
  });
  used.forEach((line, p) => {
    const at = line.findIndex((amount, t) => amount > (isOpen[p]?.[t] as number));
    if (at >= 0) faults.push(`${problem.pools[p]?.id}: over capacity at ${at}`);
  });
  return faults;
}

/** Whether another stay of the same load serves an equal demand. */
function isServedByLoad(problem: ShopProblem, schedule: Schedule, task: number, demand: Demand): boolean {
  const chamber = problem.chambers[schedule.chamber[task] as number];
  if (!demand.oncePerLoad || chamber?.together !== true) return false;
  return problem.tasks.some((other: ShopTask, o) => {
    const sharesLoad = o !== task && schedule.chamber[o] === schedule.chamber[task] && schedule.start[o] === schedule.start[task];
    if (!sharesLoad) return false;
    return other.demands.some(
      (theirs, d) =>
        (schedule.pools[o]?.[d] ?? -1) >= 0 && String(spanOf(schedule, o, theirs)) === String(spanOf(schedule, task, demand)),
    );
  });
}

function chamberFaults(problem: ShopProblem, schedule: Schedule, chamber: Chamber, c: number): string[] {
  const faults: string[] = [];
  const held = problem.tasks.flatMap((task, i) =>
    task.stay !== undefined && schedule.chamber[i] === c && isPlanned(schedule, i) ? [{ task, i }] : [],
  );
  const moves = schedule.moves[c] ?? [];
  const stateAt = (t: number): number => {
    let state = chamber.initial;
    for (const move of moves) {
      if (move.start >= t) break;
      state = t >= move.end ? move.to : move.from + ((move.to - move.from) * (t - move.start)) / (move.end - move.start);
    }
    return state;
  };
  for (const move of moves) {
    const rate = (move.to - move.from) / (move.end - move.start);
    if (rate > chamber.riseRate + 1e-6 || rate < -chamber.fallRate - 1e-6)
      faults.push(`${chamber.id}: moves too fast at ${move.start}`);
  }
  for (let t = 0; t < problem.horizon; t++) {
    const now = held.filter(({ i }) => (schedule.start[i] as number) <= t && t < (schedule.end[i] as number));
    const room = now.reduce((sum, { task }) => sum + (task.stay?.room ?? 0), 0);
    if (room > chamber.room) faults.push(`${chamber.id}: over its room at ${t}`);
    for (const { task } of now) {
      const states = [stateAt(t), stateAt(t + 1)];
      const isOut = states.some((state) => state < (task.stay?.low ?? 0) - 1e-6 || state > (task.stay?.high ?? 0) + 1e-6);
      if (isOut) faults.push(`${task.id}: outside its range at ${t}`);
    }
    const loads = new Set(now.map(({ i }) => `${schedule.start[i]}-${schedule.end[i]}`));
    if (chamber.together && loads.size > 1) faults.push(`${chamber.id}: two loads at ${t}`);
  }
  for (const { task } of held) if (!task.stay?.chambers.includes(c)) faults.push(`${task.id}: in the wrong chamber`);
  return faults;
}

/** What is wrong with a schedule, in words; empty when nothing is. */
export function checkSchedule(problem: ShopProblem, schedule: Schedule): readonly string[] {
  const homeless = problem.tasks.flatMap((task, i) =>
    task.stay !== undefined && isPlanned(schedule, i) && (schedule.chamber[i] as number) < 0 ? [`${task.id}: in no chamber`] : [],
  );
  return [
    ...taskFaults(problem, schedule),
    ...unitFaults(problem, schedule),
    ...poolFaults(problem, schedule),
    ...homeless,
    ...problem.chambers.flatMap((chamber, c) => chamberFaults(problem, schedule, chamber, c)),
  ];
}
