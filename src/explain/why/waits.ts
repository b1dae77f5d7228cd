// What a late tray waited for, backward from its ready minute: each link a task that could not have been done a minute sooner with the
// rest of the plan as it stands, and what stood in its way. Used by why.
import type { BatchRun, JudgedDay, StepRun, TrayRun } from '../../check/judgedDay.ts';
import { sayMinute } from '../../check/sayMinute.ts';
import type { Wait } from '../../model/why.ts';
import type { Condition } from './option.ts';
import { firstInTheWay, minutesIn, type Stuck } from './tried.ts';
import { type Again, batchAgain, trayAgain } from './tryAgain.ts';
import { shortest } from './walk.ts';
import { capital, nameOfTask, sayLength } from './words.ts';

/** Links told at most. */
const MOST_LINKS = 12;

const KEPT = ['shelf', 'retarder', 'rack'];

/** The first `count` steps of a tray or batch, to be done sooner. */
type Target = { readonly of: TrayRun | BatchRun; readonly count: number };

const isTray = (of: Target['of']): of is TrayRun => 'product' in of;

function lastRun({ of, count }: Target): StepRun | undefined {
  return of.runs[count - 1];
}

/** The task of a step of what was walked: batch steps first where the batch was taken out. */
function taskAt(day: JudgedDay, { of }: Target, again: Again, at: number): StepRun | undefined {
  if (!isTray(of) || again.out === 'tray') return of.runs[at];
  const batch = day.batches.find(({ id }) => id === of.batch);
  const before = batch?.runs.length ?? 0;
  return at < before ? batch?.runs[at] : of.runs[at - before];
}

/** Whose task it is; with the step after it when it keeps its place until then. */
function targetOf(day: JudgedDay, taskId: string): Target | undefined {
  for (const of of [...day.trays, ...day.batches]) {
    const at = of.runs.findIndex((run) => run?.named.id === taskId);
    if (at < 0) continue;
    const kind = of.runs[at]?.named.task.place?.kind;
    const isKept = kind !== undefined && KEPT.includes(kind) && at + 1 < of.runs.length;
    return { of, count: at + 1 + (isKept ? 1 : 0) };
  }
  return undefined;
}

/** At the place the plan has it, else the first place tried. */
function conditionAt(stuck: Stuck, run: StepRun | undefined, arrivals: readonly number[]): Condition | undefined {
  const placeId = run?.named.task.place?.id;
  const option = stuck.options.find(({ conditions }) => conditions.some(({ id }) => id === placeId)) ?? stuck.options[0];
  return option === undefined ? undefined : firstInTheWay(option, arrivals);
}

function sayEnd(day: JudgedDay, target: Target, again: Again, taskId: string): string {
  const name = nameOfTask(taskId);
  if (again.walk.is === 'no-begin') {
    const lasts = again.steps.reduce((sum, step) => sum + shortest(step), 0);
    return `${name} could not be done sooner: from the start of the day (${sayMinute(day.clock, 0)}) its own steps take ${sayLength(lasts)}`;
  }
  const rest =
    again.out === 'whole-batch' && isTray(target.of)
      ? `${name} waited for the other trays of its batch ${target.of.batch}: without them it could have been done sooner`
      : `${name} could have been done sooner by itself; nothing in the plan was in its way`;
  return rest;
}

function sooner(wanted: string, stuck: string): string {
  if (wanted === stuck) return `${nameOfTask(stuck)} could not begin a minute sooner`;
  return `${nameOfTask(wanted)} could not be done a minute sooner, for ${nameOfTask(stuck)} could not begin sooner`;
}

/** The next link, and what to follow on from it; undefined when the chain ends. */
function link(day: JudgedDay, target: Target): { readonly wait: Wait; readonly onward?: string } | undefined {
  const last = lastRun(target);
  if (last === undefined) return undefined;
  const { of, count } = target;
  const by = last.done - 1;
  const again = isTray(of) ? trayAgain(day, of, count, by) : batchAgain(day, of, count, by);
  if (again.walk.is !== 'stuck') {
    const taskId = last.named.id;
    return { wait: { taskId, forTaskId: null, says: capital(`${sayEnd(day, target, again, taskId)}.`) } };
  }
  const run = taskAt(day, target, again, again.walk.at) ?? last;
  const arrivals = minutesIn(again.walk.arrivals);
  const condition = conditionAt(again.walk, run, arrivals);
  const inVain = arrivals.filter((minute) => condition?.holds(minute) === false);
  const latest = inVain[inVain.length - 1];
  if (condition === undefined || latest === undefined) return undefined;
  const { says, byTasks, sinceTask } = condition.hinders(latest);
  const other = byTasks.find((one) => one !== run.named.id) ?? null;
  const even = again.out === 'whole-batch' ? ', even with the rest of its batch out of the way' : '';
  const wait = {
    taskId: run.named.id,
    forTaskId: other,
    says: capital(`${sooner(last.named.id, run.named.id)}${even}: ${says}.`),
  };
  return other === null ? { wait } : { wait, onward: sinceTask ?? other };
}

/** Chains of waits of one plan; links that several chains share are found once. */
export class Waits {
  private readonly day: JudgedDay;
  private readonly links = new Map<string, ReturnType<typeof link>>();

  constructor(day: JudgedDay) {
    this.day = day;
  }

  private linkOf(target: Target): ReturnType<typeof link> {
    const key = `${target.of.id} ${target.count}`;
    const found = this.links.has(key) ? this.links.get(key) : link(this.day, target);
    this.links.set(key, found);
    return found;
  }

  of(tray: TrayRun): Wait[] {
    const waits: Wait[] = [];
    const seen = new Set<string>();
    let target: Target | undefined = { of: tray, count: tray.runs.length };
    while (target !== undefined && waits.length < MOST_LINKS) {
      const found = this.linkOf(target);
      if (found === undefined) break;
      waits.push(found.wait);
      if (found.onward === undefined || seen.has(found.onward)) break;
      seen.add(found.onward);
      target = targetOf(this.day, found.onward);
    }
    return waits;
  }
}
