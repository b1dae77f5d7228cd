// ELECTRICAL_LOAD: the stated kW that the plan runs at once, in simple form. A licensed electrician decides.
import { sayMinute } from '../../check/sayMinute.ts';
import { clockOf } from '../../model/clock.ts';
import type { Caution, PlaceKind, Task } from '../../model/plan.ts';
import type { Scenario } from '../../model/scenario.ts';

/** What runs this long or longer, in minutes, is continuous (NEC definition: three hours or more). */
const CONTINUOUS_MINUTES = 3 * 60;
/** Share at which continuous load counts for the overcurrent device (NEC 210.20(A)). */
const CONTINUOUS_SHARE = 1.25;

/** A machine drawing its stated load; start included, end excluded. */
type Run = { readonly kW: number; readonly start: number; readonly end: number };

function spanOf(tasks: readonly Task[]): { start: number; end: number } | undefined {
  if (tasks.length === 0) return undefined;
  return { start: Math.min(...tasks.map((task) => task.start)), end: Math.max(...tasks.map((task) => task.end)) };
}

function tasksAt(tasks: readonly Task[], kind: PlaceKind, isOne: (placeId: string) => boolean): readonly Task[] {
  return tasks.filter((task) => task.place?.kind === kind && isOne(task.place.id));
}

/** An oven and a retarder are on from the start of the day to their last tray, a proofer from its first, a bowl per mix. */
function runsOf(scenario: Scenario, tasks: readonly Task[]): readonly Run[] {
  const { ovens, proofers, retarders, mixers = [] } = scenario.equipment;
  const cabinetRun = (kW: number, used: readonly Task[], fromStartOfDay: boolean): readonly Run[] => {
    const span = spanOf(used);
    return span === undefined ? [] : [{ kW, start: fromStartOfDay ? 0 : span.start, end: span.end }];
  };
  return [
    ...ovens.flatMap(({ id, powerKw = 0 }) =>
      cabinetRun(
        powerKw,
        tasksAt(tasks, 'deck', (at) => at.startsWith(`${id}/`)),
        true,
      ),
    ),
    ...retarders.flatMap(({ id, powerKw = 0 }) =>
      cabinetRun(
        powerKw,
        tasksAt(tasks, 'retarder', (at) => at === id),
        true,
      ),
    ),
    ...proofers.flatMap(({ id, powerKw = 0 }) =>
      cabinetRun(
        powerKw,
        tasksAt(tasks, 'shelf', (at) => at === id),
        false,
      ),
    ),
    ...mixers.flatMap(({ id, powerKw = 0 }) =>
      tasksAt(tasks, 'bowl', (at) => at === id).map(({ start, end }) => ({ kW: powerKw, start, end })),
    ),
  ].filter((run) => run.kW > 0);
}

/** kW counted for a circuit: what runs three hours or more at 125 percent, the rest as it is (NEC 210.20(A)). */
function countedKw(runs: readonly Run[]): number {
  return runs.reduce((sum, { kW, start, end }) => sum + (end - start >= CONTINUOUS_MINUTES ? CONTINUOUS_SHARE * kW : kW), 0);
}

function sayKw(kW: number): string {
  return String(Math.round(kW * 10) / 10);
}

export function electricalLoad(scenario: Scenario, tasks: readonly Task[]): readonly Caution[] {
  const runs = runsOf(scenario, tasks);
  const moments = runs
    .map(({ start }) => ({ minute: start, on: runs.filter((run) => run.start <= start && start < run.end) }))
    .map(({ minute, on }) => ({ minute, kW: on.reduce((sum, run) => sum + run.kW, 0), countedKw: countedKw(on) }))
    .sort((a, b) => b.kW - a.kW || b.countedKw - a.countedKw || a.minute - b.minute);
  const busiest = moments[0];
  if (busiest === undefined) return [];
  return [
    {
      code: 'ELECTRICAL_LOAD',
      says:
        `Stated loads reach ${sayKw(busiest.kW)} kW at ${sayMinute(clockOf(scenario), busiest.minute)}, ` +
        `${sayKw(busiest.countedKw)} kW with long-running ones at 125 %. Ask a licensed electrician.`,
      source: 'NEC 210.20(A), as a sum only; your local code decides.',
    },
  ];
}
