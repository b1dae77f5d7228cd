// A schedule of what is left of a day, read as part of the whole day: times, first hands-on work, moved steps, the floor under its
// price. Of a day that is not under way all of it is left. Used by planOf.ts.
import type { Task } from '../model/plan.ts';
import type { Scenario } from '../model/scenario.ts';
import type { Underway, UnderwayTask } from '../model/underway.ts';
import type { Schedule } from '../solver/problem.ts';
import { type Compiled, hasWorked } from './shopProblem.ts';
import { handMarks } from './shopTasks.ts';
import type { Names } from './traySlots.ts';

/** The schedule with its times counted from the start of the day. */
export function scheduleOfDay(compiled: Compiled, schedule: Schedule): Schedule {
  const { origin } = compiled;
  if (origin === 0) return schedule;
  const later = (at: number): number => (at < 0 ? at : at + origin);
  return { ...schedule, start: schedule.start.map(later), end: schedule.end.map(later) };
}

/** First minute of hands-on work of a step that is over or at work. */
function firstWorkOf(step: Parameters<typeof handMarks>[0], old: UnderwayTask): number[] {
  return handMarks(step).map(({ edge, offset }) => (edge === 'start' ? old.start : old.end) + offset);
}

/** First minute of hands-on work of the planned trays, read off the steps whether or not people are named. */
export function firstHandsOn(compiled: Compiled, schedule: Schedule, names: Names): number {
  const { origin, stepOfTask, over, trays } = compiled;
  const isPlanned = (batch: number, tray: number | null): boolean =>
    trays.some((one, t) => (tray === null ? one.batch === batch : t === tray) && names.trays[t]?.readyMinute !== null);
  const minutes = [
    ...over.flatMap(({ step, old, batch, tray }) => (isPlanned(batch, tray) ? firstWorkOf(step, old) : [])),
    ...stepOfTask.flatMap((stands, i) =>
      stands?.old?.state === 'begun' && (schedule.start[i] as number) >= 0 ? firstWorkOf(stands.step, stands.old) : [],
    ),
    ...compiled.problem.firstMarks.flatMap((mark) => {
      const at = (mark.edge === 'start' ? schedule.start : schedule.end)[mark.task] as number;
      return at < 0 ? [] : [at + mark.offset + origin];
    }),
  ];
  return minutes.length === 0 ? 0 : Math.min(...minutes);
}

function peopleOf(handsOn: readonly { readonly person: string; readonly for: string }[]): string {
  return handsOn
    .map((work) => `${work.for} ${work.person}`)
    .sort()
    .join();
}

/** How many steps of planned trays that were still to come begin at another minute, in another place or by other people. */
export function movedTasks(scenario: Scenario, underway: Underway, tasks: readonly Task[]): number {
  const together = new Set(scenario.equipment.ovens.filter(({ loading }) => loading === 'together').map(({ id }) => id));
  const key = (task: Pick<Task, 'batch' | 'tray' | 'step'>, ordinal: number): string =>
    `${task.tray ?? ''} ${task.batch} ${task.step} ${ordinal}`;
  const seen = new Map<string, number>();
  const byKey = new Map<string, Task>();
  for (const task of [...tasks].sort((a, b) => a.start - b.start)) {
    const ordinal = (seen.get(key(task, 0)) ?? 0) + 1;
    seen.set(key(task, 0), ordinal);
    byKey.set(key(task, ordinal), task);
  }
  return underway.tasks.filter((old) => {
    const task = byKey.get(
      key({ batch: old.batch, step: old.step, ...(old.tray === undefined ? {} : { tray: old.tray }) }, old.ordinal),
    );
    if (old.state !== 'planned' || task === undefined) return false;
    const isElsewhere = task.place?.kind !== old.place?.kind || task.place?.id !== old.place?.id;
    const isInLoad = task.place?.kind === 'deck' && together.has(task.place.id.split('/')[0] ?? '');
    const isByOthers = !isInLoad && peopleOf(task.handsOn) !== peopleOf(old.handsOn);
    return task.start !== old.start || isElsewhere || isByOthers;
  }).length;
}

/** What the floor under the price of the rest of the day says of the whole day's. */
export function floorOf(scenario: Scenario, compiled: Compiled, floor: number): number {
  const { underway, goals } = scenario;
  if (underway === undefined) return floor;
  const done = compiled.products.map(({ product, dues }) => {
    const ready = compiled.trays.flatMap((tray) =>
      tray.product.id === product.id && tray.doneMinute !== null ? [tray.doneMinute] : [],
    );
    return ready.sort((a, b) => a - b).reduce((late, minute, k) => late + Math.max(0, minute - (dues[k] as number)), 0);
  });
  const late = goals.lateTrayMinute * done.reduce((sum, minutes) => sum + minutes, 0);
  const changes = goals.temperatureChange * changesBefore(underway);
  const lastDone = Math.max(0, ...compiled.trays.map(({ doneMinute }) => doneMinute ?? 0));
  // The rest of the day counts its makespan from now; where all of the rest is left out, the last tray was ready before.
  const left = compiled.problem.units.filter(({ ready }) => ready !== null).length;
  const rest = compiled.isNarrowed ? 0 : floor;
  const withoutRest = goals.leftOutTray * left;
  const { finishMinute } = goals;
  if (goals.aim !== 'start-late')
    return late + changes + Math.min(finishMinute * compiled.origin + rest, finishMinute * lastDone + withoutRest);
  if (!hasWorked(compiled)) return late + changes + Math.min(rest, withoutRest);
  // The first work may be that of a tray at work that is left out in the end.
  const sinceFirst = Math.max(0, compiled.origin - firstWork(compiled));
  return late + changes + Math.min(finishMinute * sinceFirst + rest, goals.leftOutTray, withoutRest);
}

/** First minute of hands-on work before now. */
function firstWork(compiled: Compiled): number {
  return Math.min(
    ...compiled.over.flatMap(({ step, old }) => firstWorkOf(step, old)),
    ...compiled.stepOfTask.flatMap((stands) => (stands?.old?.state === 'begun' ? firstWorkOf(stands.step, stands.old) : [])),
  );
}

/** Changes of temperature that are over: moves that ended before now, less one first heat-up a deck. */
function changesBefore(underway: Underway): number {
  return underway.decks.reduce((sum, { setPoints }) => {
    const over = setPoints.filter(({ fromC, toC, end }) => fromC !== toC && end < underway.now).length;
    return sum + Math.max(0, over - 1);
  }, 0);
}
