// A schedule as the tasks of a plan: steps told from waits, places with positions, people by name.
import { instantAt } from '../model/clock.ts';
import type { HandsOn, Place, Task } from '../model/plan.ts';
import type { UnderwayTask } from '../model/underway.ts';
import type { Demand, Schedule, ShopTask } from '../solver/problem.ts';
import { type Hold, positionsOf } from './positions.ts';
import type { PoolRole } from './shopPools.ts';
import type { Compiled, OverStep, StepTask } from './shopProblem.ts';
import { mixHandsOn, type Step, stepMinutes } from './shopTasks.ts';
import type { Names } from './traySlots.ts';

type PlacedDemand = {
  readonly task: number;
  readonly index: number;
  readonly pool: number;
  readonly from: number;
  readonly until: number;
};

function placedDemands(compiled: Compiled, schedule: Schedule): PlacedDemand[] {
  const edge = (task: number, mark: Demand['from']): number =>
    ((mark.edge === 'start' ? schedule.start : schedule.end)[task] as number) + mark.offset;
  return compiled.problem.tasks.flatMap((task, i) =>
    task.demands.flatMap((demand, index) => {
      const pool = schedule.pools[i]?.[index] ?? -1;
      return pool < 0 ? [] : [{ task: i, index, pool, from: edge(i, demand.from), until: edge(i, demand.until) }];
    }),
  );
}

const keyOf = (task: number, index: number): string => `${String(task).padStart(6, '0')} ${index}`;

/** The position of a task at work already. */
function heldPosition(compiled: Compiled, task: number): { readonly position?: number } {
  const old = compiled.stepOfTask[task]?.old;
  return old?.state === 'begun' && old.place !== undefined ? { position: old.place.position } : {};
}

/** Position of every use of a place or person, pool by pool, and of every stay, deck by deck. */
function positionsIn(compiled: Compiled, schedule: Schedule, placed: readonly PlacedDemand[]): ReadonlyMap<string, number> {
  const positions = new Map<string, number>();
  const settle = (holds: readonly Hold[]): void => {
    for (const [key, position] of positionsOf(holds)) positions.set(key, position);
  };
  compiled.problem.pools.forEach((_, p) => {
    settle(
      placed
        .filter((use) => use.pool === p)
        .map((use) => ({
          key: keyOf(use.task, use.index),
          start: use.from,
          end: use.until,
          rank: 0,
          ...(compiled.shop.roles[p]?.kind === 'people' ? {} : heldPosition(compiled, use.task)),
        })),
    );
  });
  // Of a load that goes in together the tray whose hands-on work serves all takes the lowest position.
  const carries = new Set(placed.map((use) => use.task));
  compiled.problem.chambers.forEach((_, c) => {
    settle(
      schedule.chamber.flatMap((chamber, task) =>
        chamber === c && compiled.stepOfTask[task] !== null
          ? [
              {
                key: keyOf(task, -1),
                start: schedule.start[task] as number,
                end: schedule.end[task] as number,
                rank: carries.has(task) ? 0 : 1,
                ...heldPosition(compiled, task),
              },
            ]
          : [],
      ),
    );
  });
  return positions;
}

function placeOf(role: PoolRole, position: number): Place | null {
  switch (role.kind) {
    case 'bowl':
      return { kind: 'bowl', id: role.id, position };
    case 'bench':
      return { kind: 'bench', id: 'bench', position };
    case 'shelf':
      return { kind: 'shelf', id: role.id, position };
    case 'retarder':
      return { kind: 'retarder', id: role.id, position };
    case 'rack':
      return { kind: 'rack', id: 'cooling-rack', position };
    case 'people':
      return null;
  }
}

function handsOnFor(step: Step, from: number, start: number): HandsOn['for'] | null {
  switch (step.do) {
    case 'bake':
      return from < start ? 'load' : 'unload';
    case 'mix':
      return mixHandsOn(step) > 0 ? 'mix' : null;
    case 'fold':
    case 'divide':
    case 'shape':
    case 'finish':
      return step.do;
    default:
      return null;
  }
}

/** End of the step itself: what the task lasts beyond the step's longest time is a wait in its place. */
function stepEnd(step: Step, old: UnderwayTask | null, start: number, taskEnd: number): number {
  return Math.min(taskEnd, start + stepMinutes(step).max + (old?.moreMinutes ?? 0) + (old?.overrunMinutes ?? 0));
}

/** Tasks of a plan, those that are over included, sorted by start, then id. Times of the schedule count from the start of the day. */
export function planTasks(compiled: Compiled, schedule: Schedule, names: Names): Task[] {
  const placed = placedDemands(compiled, schedule);
  const positions = positionsIn(compiled, schedule, placed);
  const usesOfTask = new Map<number, PlacedDemand[]>();
  for (const use of placed) usesOfTask.set(use.task, [...(usesOfTask.get(use.task) ?? []), use]);
  const tasks = compiled.problem.tasks.flatMap((_: ShopTask, i) => {
    const start = schedule.start[i] as number;
    if (start < 0 || compiled.stepOfTask[i] === null) return [];
    return [planTask(compiled, schedule, names, i, usesOfTask.get(i) ?? [], positions)];
  });
  const all = [...overTasks(compiled, names), ...carried(compiled, tasks)];
  return all.sort((a, b) => a.start - b.start || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
}

/** The work of a load that goes in together stands on its tray in the lowest position, also when the load is at work already. */
function carried(compiled: Compiled, tasks: readonly Task[]): readonly Task[] {
  const together = new Set(compiled.problem.chambers.filter((chamber) => chamber.together).map(({ id }) => id));
  const loadOf = ({ step, place, start }: Task): string | null =>
    step === 'bake' && place !== undefined && together.has(place.id) ? `${place.id} ${start}` : null;
  const loads = new Map<string, Task[]>();
  for (const task of tasks) {
    const load = loadOf(task);
    if (load !== null) loads.set(load, [...(loads.get(load) ?? []), task]);
  }
  return tasks.map((task) => {
    const load = loads.get(loadOf(task) ?? '');
    if (load === undefined || load.length === 1) return task;
    const lowest = load.reduce((low, other) => ((other.place?.position ?? 0) < (low.place?.position ?? 0) ? other : low));
    const work = new Map(load.flatMap(({ handsOn }) => handsOn.map((hands) => [hands.for, hands])));
    return { ...task, handsOn: task === lowest ? [...work.values()].sort((a, b) => a.start - b.start) : [] };
  });
}

/** A step of no minutes holds its place for no time, in nobody's way: the first place that would serve it. */
function momentaryPlace(compiled: Compiled, task: number): Place | null {
  const pools = compiled.problem.tasks[task]?.demands.flatMap((demand) => demand.pools) ?? [];
  const roles = pools.flatMap((pool) => compiled.shop.roles[pool] ?? []);
  return roles.map((role) => placeOf(role, 1)).find((found) => found !== null) ?? null;
}

function planTask(
  compiled: Compiled,
  schedule: Schedule,
  names: Names,
  i: number,
  uses: readonly PlacedDemand[],
  positions: ReadonlyMap<string, number>,
): Task {
  const { step, batch, tray, ordinal, old } = compiled.stepOfTask[i] as StepTask;
  const isAtWork = old?.state === 'begun';
  const start = isAtWork ? old.start : (schedule.start[i] as number);
  const end = stepEnd(step, old, start, schedule.end[i] as number);
  // Whoever is at work goes on; a tray at work on its deck may be unloaded by others than was planned.
  const handsOn: HandsOn[] = isAtWork ? old.handsOn.filter((work) => work.for !== 'unload' || work.start < compiled.origin) : [];
  let place: Place | null = isAtWork ? (old.place ?? null) : null;
  for (const use of uses) {
    const role = compiled.shop.roles[use.pool] as PoolRole;
    const position = positions.get(keyOf(use.task, use.index)) as number;
    if (role.kind === 'people') {
      const doing = handsOnFor(step, use.from, start);
      if (doing !== null && !handsOn.some((work) => work.for === doing))
        handsOn.push({ person: role.ids[position - 1] as string, start: use.from, end: use.until, for: doing });
    } else if (!isAtWork) place = placeOf(role, position);
  }
  if (place === null) place = momentaryPlace(compiled, i);
  const chamber = schedule.chamber[i] as number;
  if (chamber >= 0 && !isAtWork) {
    place = {
      kind: 'deck',
      id: compiled.problem.chambers[chamber]?.id as string,
      position: positions.get(keyOf(i, -1)) as number,
    };
  }
  return namedTask(compiled, names, { step, batch, tray, ordinal }, { start, end, place, handsOn });
}

type WhoseStep = Pick<StepTask, 'step' | 'batch' | 'tray' | 'ordinal'>;

function namedTask(
  compiled: Compiled,
  names: Names,
  { step, batch, tray, ordinal }: WhoseStep,
  { start, end, place, handsOn }: Pick<Task, 'start' | 'end'> & { readonly place: Place | null; readonly handsOn: HandsOn[] },
): Task {
  const owner = tray === null ? names.batchIds[batch] : names.trays[tray]?.id;
  return {
    id: `${owner}/${step.do}${ordinal > 1 ? `-${ordinal}` : ''}`,
    step: step.do,
    ...(tray === null ? {} : { product: compiled.trays[tray]?.product.id as string }),
    batch: names.batchIds[batch] as string,
    ...(tray === null ? {} : { tray: names.trays[tray]?.id as string }),
    start,
    end,
    startsAt: instantAt(compiled.clock, start),
    endsAt: instantAt(compiled.clock, end),
    ...(place === null ? {} : { place }),
    handsOn: handsOn.sort((a, b) => a.start - b.start),
  };
}

/** Steps that are over, of trays that are planned and of batches with such a tray. */
function overTasks(compiled: Compiled, names: Names): Task[] {
  const isPlanned = (t: number): boolean => names.trays[t]?.readyMinute !== null;
  return compiled.over
    .filter(({ batch, tray }) =>
      tray === null ? compiled.trays.some((one, t) => one.batch === batch && isPlanned(t)) : isPlanned(tray),
    )
    .map(({ step, batch, tray, old }: OverStep) => {
      const { ordinal, start, end, place, handsOn } = old;
      return namedTask(
        compiled,
        names,
        { step, batch, tray, ordinal },
        { start, end, place: place ?? null, handsOn: [...handsOn] },
      );
    });
}
