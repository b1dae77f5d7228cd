// Trays that have begun and find no place any more within their minutes: by how much they must be let go on longer so that they can
// be baked after all. Used by replan.ts.
import type { Plan } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';
import type { Underway, UnderwayTask } from '../../model/underway.ts';
import { type Asking, type AskLimits, ask, secondsLeft } from '../asking.ts';

export type DayUnderway = Scenario & { readonly underway: Underway };

/** Minutes more that are tried, the fewest first. */
const MORE_MINUTES = [5, 10, 20, 30, 45, 60, 90, 120, 180];

/** Share of the time that is left which one try may take. */
const TRY_SHARE = 0.06;

/** Seconds below which no try is begun: it would end later than it should. So it is when less is left than tries took before, with half more. */
const LEAST_SECONDS = 0.3;
const SPARE = 1.5;

export type Saved = { readonly tray: string; readonly minutes: number };

export type Saving = {
  readonly scenario: DayUnderway;
  /** The plan of it, if one was tried. */
  readonly plan: Plan;
  /** Trays that are baked after all, and how much longer than they should something of theirs lasts, at most. */
  readonly saved: readonly Saved[];
};

const hasBegun = ({ state }: UnderwayTask): boolean => state !== 'planned';

/** Trays whose dough is at work and that the plan leaves out. */
function begunAndLeftOut({ underway }: DayUnderway, plan: Plan): readonly string[] {
  const planned = new Set(plan.tasks.flatMap(({ tray }) => tray ?? []));
  return underway.batches.flatMap(({ id, trays }) => {
    const mine = underway.tasks.filter(({ batch }) => batch === id);
    const isMixed = mine.some((task) => task.tray === undefined && hasBegun(task));
    return trays.flatMap((tray) => {
      const isAtWork = isMixed || mine.some((task) => task.tray === tray.id && hasBegun(task));
      return isAtWork && !planned.has(tray.id) ? [tray.id] : [];
    });
  });
}

/** The day with so many minutes more for the steps of some trays, and the last of their batches, that are not over. */
function withMore(scenario: DayUnderway, trays: ReadonlySet<string>, minutes: number): DayUnderway {
  const { underway } = scenario;
  const batches = new Set(underway.batches.filter((batch) => batch.trays.some(({ id }) => trays.has(id))).map(({ id }) => id));
  const lastOf = new Map<string, UnderwayTask>();
  for (const task of underway.tasks) {
    const owner = task.tray ?? `batch ${task.batch}`;
    const isIn = task.tray === undefined ? batches.has(task.batch) : trays.has(task.tray);
    const last = lastOf.get(owner);
    if (isIn && hasBegun(task) && (last === undefined || task.start >= last.start)) lastOf.set(owner, task);
  }
  const longer = new Set(lastOf.values());
  const firsts = new Set(underway.tasks.filter((task) => task.tray !== undefined && isFirst(task, underway.tasks)));
  const tasks = underway.tasks.map((task) => {
    const isLateFirst = task.tray !== undefined && trays.has(task.tray) && !hasBegun(task) && firsts.has(task);
    if (!longer.has(task) && !isLateFirst) return task;
    return { ...task, overrunMinutes: task.overrunMinutes + minutes };
  });
  return { ...scenario, underway: { ...underway, tasks } };
}

function isFirst(task: UnderwayTask, tasks: readonly UnderwayTask[]): boolean {
  return !tasks.some((other) => other.tray === task.tray && other.start < task.start);
}

function withinTry(asking: Asking, limits: AskLimits): AskLimits {
  const seconds = TRY_SHARE * secondsLeft(asking);
  return seconds === Number.POSITIVE_INFINITY ? limits : { ...limits, seconds };
}

/** Whether the most minutes there are give a place to any tray that has begun and that `plan` leaves out. */
export async function wouldMoreHelp(scenario: DayUnderway, plan: Plan, asking: Asking, limits: AskLimits): Promise<boolean> {
  const missing = begunAndLeftOut(scenario, plan);
  const most = MORE_MINUTES.at(-1) ?? 0;
  if (missing.length === 0 || secondsLeft(asking) < LEAST_SECONDS) return false;
  const longest = withMore(scenario, new Set(missing), most);
  const found = await ask(longest, { ...asking, workers: 1 }, { ...withinTry(asking, limits), startFrom: plan });
  return begunAndLeftOut(longest, found).length < missing.length;
}

/**
 * Plans again with more and more minutes for begun trays that are left out, until none is or nothing helps. `plan` is a plan of
 * `scenario`; so is the one that comes back of the scenario with it.
 */
export async function saveBegunTrays(scenario: DayUnderway, plan: Plan, asking: Asking, limits: AskLimits): Promise<Saving> {
  // A try is over before a second thread would be of use.
  const alone = { ...asking, workers: 1 };
  let best: Saving = { scenario, plan, saved: [] };
  let longestTry = 0;
  for (const minutes of MORE_MINUTES) {
    const missing = new Set(begunAndLeftOut(best.scenario, best.plan));
    if (missing.size === 0 || secondsLeft(asking) < Math.max(LEAST_SECONDS, SPARE * longestTry)) break;
    const begunMs = asking.now();
    const longer = withMore(best.scenario, missing, minutes);
    const within = withinTry(asking, limits);
    const found = await ask(longer, alone, { ...within, startFrom: best.plan });
    const still = new Set(begunAndLeftOut(longer, found));
    const saved = [...missing].filter((tray) => !still.has(tray)).map((tray) => ({ tray, minutes }));
    // Who is not helped by so many minutes keeps none of them: the next try gives more.
    const kept = withMore(best.scenario, new Set(saved.map(({ tray }) => tray)), minutes);
    best =
      saved.length === 0
        ? best
        : {
            scenario: kept,
            // Where all were helped it is the same day.
            plan: still.size === 0 ? found : await ask(kept, alone, { ...within, startFrom: found }),
            saved: [...best.saved.filter(({ tray }) => !missing.has(tray)), ...saved],
          };
    longestTry = Math.max(longestTry, (asking.now() - begunMs) / 1000);
  }
  return best;
}
