// What was taken for granted about the day so far, in sentences, so that people can object. Used by dayAt.ts.

import { trayNames } from '../../explain/moved/trayNames.ts';
import type { Plan } from '../../model/plan.ts';
import type { OutOfUse, UnderwayTask } from '../../model/underway.ts';
import type { Fact } from './facts.ts';
import { loadsOf, restsByItself } from './runs.ts';
import type { SoFar } from './soFar.ts';
import type { Standing } from './trayStates.ts';
import type { TrayGone } from './traysGone.ts';

/** Most steps told one by one. */
const MOST_STEPS = 12;

type Told = {
  readonly plan: Plan;
  readonly now: number;
  readonly says: (minute: number) => string;
  readonly standings: ReadonlyMap<string, Standing>;
  readonly facts: ReadonlyMap<string, Fact>;
  readonly soFar: SoFar;
  readonly gone: readonly TrayGone[];
  readonly later: ReadonlyMap<string, OutOfUse>;
  readonly cutShort: readonly { readonly person: string; readonly taskId: string; readonly until: number }[];
  readonly timePast: readonly string[];
  /** Steps that may run over by more than was known before. */
  readonly longer: readonly UnderwayTask[];
};

function isTold(facts: ReadonlyMap<string, Fact>, loads: ReturnType<typeof loadsOf>, id: string): boolean {
  return facts.has(id) || (loads.get(id) ?? []).some((task) => facts.has(task.id));
}

/** The first step of each tray and batch that did not go as planned, unless it was told. */
function otherwise({ plan, now, says, standings, facts }: Told): readonly string[] {
  const loads = loadsOf(plan);
  const seen = new Set<string>();
  const lines: string[] = [];
  for (const { job, state, begin } of standings.values()) {
    const { id, tray, batch } = job.task;
    const owner = tray ?? batch;
    if (seen.has(owner)) continue;
    const isHeldUp = state === 'planned' && job.plannedBegin < now;
    const isLate = state !== 'planned' && begin !== job.plannedBegin;
    if (!isHeldUp && !isLate) continue;
    seen.add(owner);
    if (isTold(facts, loads, id)) continue;
    const planned = says(job.task.start);
    lines.push(
      isHeldUp
        ? `${id} has not begun; it was to at ${planned}.`
        : `${id} began at ${says(begin + job.load)} instead of ${planned}.`,
    );
  }
  const more = lines.length - MOST_STEPS;
  return more > 0 ? [...lines.slice(0, MOST_STEPS), `And ${more} more trays or batches are behind in the same way.`] : lines;
}

/** Work that was done sooner than planned because what is told to have begun came after it. */
function doneSooner({ says, standings, facts }: Told): readonly string[] {
  return [...standings.values()].flatMap(({ job, state, start, end }) => {
    const { task, step } = job;
    const isWork = step.do !== 'bake' && !restsByItself(step);
    const isShort = state === 'ended' && end - start < task.end - task.start;
    if (!isWork || !isShort || facts.get(task.id)?.end !== undefined) return [];
    return [`${task.id} was done by ${says(end)}: something that followed it is told to have begun then.`];
  });
}

function nameOfTask({ tray, batch, step, ordinal }: UnderwayTask): string {
  return `${tray ?? batch}/${step}${ordinal > 1 ? `-${ordinal}` : ''}`;
}

/** What may take longer, or begin later, than the scenario allows. */
function beyondSays(task: UnderwayTask): string {
  const what =
    task.state === 'planned'
      ? `may begin up to ${task.overrunMinutes} minutes later than its batch allows`
      : `may go on up to ${task.overrunMinutes} minutes longer than it should`;
  return `${nameOfTask(task)} ${what}: it cannot be helped any more.`;
}

export function toldOf(told: Told): readonly string[] {
  const { soFar, gone, later, says, now, plan, timePast, cutShort, longer } = told;
  const { tray: trayOf, place, batch, person: personOf } = trayNames(plan);
  const batchOf = (taskId: string): string => batch(plan.tasks.find(({ id }) => id === taskId)?.batch ?? taskId);
  const down = ({ id, from }: OutOfUse): string => `${place(id)} went out of use at ${says(from)}`;
  return [
    `All that the plan has before ${says(now)} is taken as done as planned, but for what is told and what had to wait for it.`,
    ...otherwise(told),
    ...doneSooner(told),
    ...soFar.heat
      .heldUp(now)
      .map(
        ({ deck, planned }) => `${place(deck)} has not been turned to ${planned.toC} °C; it was to be at ${says(planned.start)}.`,
      ),
    ...[...soFar.lostInOven].map(([tray, out]) => `${trayOf(tray)} was in when ${down(out)}, and counts as lost.`),
    ...[...later].map(
      ([tray, { id, from }]) =>
        `${trayOf(tray)} cannot be out of ${place(id)} before it goes out of use at ${says(from)}, and counts as lost.`,
    ),
    ...[...soFar.mixedAgain].map(([id, out]) => `${batchOf(id)} was being mixed when ${down(out)}; it is mixed again.`),
    ...gone.map(({ id, stepsBegun }) =>
      stepsBegun === 0
        ? `${trayOf(id)} is no longer wanted; it had not begun.`
        : `${trayOf(id)} is no longer wanted, and it has begun: sell it or give it away.`,
    ),
    ...longer.map((one) => beyondSays(one)),
    ...cutShort.map(
      ({ person, taskId, until }) => `${personOf(person)} is taken to finish ${taskId} first, until ${says(until)}.`,
    ),
    ...timePast.map((id) => `${id} cannot keep its time: it is past.`),
  ];
}
